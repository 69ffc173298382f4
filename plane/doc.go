// Package plane holds points, straights, true arcs, paths of them, circles and areas in plan.
//
// Metres and radians; x right, y up; angles counter-clockwise from +x, bearings clockwise from
// +y; rings counter-clockwise. Arcs stay arcs: lengths, areas, feet and crossings are those of
// the arc itself, and every formula stays exact as an arc flattens into a straight. A parallel of a
// path is made of straights and arcs again. Unions of paths are not done here.
package plane
