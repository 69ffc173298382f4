// Package dxf writes a model as an ASCII DXF file, of release R2000 (AC1015) or R12 (AC1009): true
// size in millimetres or inches, one closed polyline with bulges for each outline, every kind of
// thing on a layer of its own. The same model gives the same bytes; nothing is taken from a
// template: the tables and objects are those that the description of the format asks for.
//
// Source of the format: the format owner's published DXF reference for releases 12 and 2000. Codes
// and values of units and bulges: items D-04 and D-05 of testdata/checks.
package dxf
