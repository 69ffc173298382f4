// Package svg writes one sheet as an SVG 1.1 drawing: millimetres, text as text, arcs as arcs, one
// group a layer, the font embedded. The same sheet gives the same bytes. Source of the format:
// W3C, Scalable Vector Graphics (SVG) 1.1, second edition, 2011.
package svg
