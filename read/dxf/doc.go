// Package dxf reads back the outlines of ASCII DXF files that this program wrote: polylines with
// bulges, in either release, in millimetres or inches, as paths in metres. Files of other programs
// may use more of the format than is understood here; what is not a polyline is passed over.
//
// Source of the format: the format owner's published DXF reference for releases 12 and 2000.
package dxf
