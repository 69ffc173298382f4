package mesh

import "brimline/plane"

// Kind says what an Issue is about.
type Kind string

// The kinds of issues. None of them stops the triangulation; where nothing can be made, the
// surface has no triangles.
const (
	Unusable  Kind = "unusable"  // Points: not finite, or beyond 1e50 m; left out
	Duplicate Kind = "duplicate" // Points: the one kept and the one left out for it; Gap: height of the second less the first
	BadEdge   Kind = "bad-edge"  // Edges: an end is no usable point; left out
	BadRing   Kind = "bad-ring"  // Points: the ring or hole as given, with fewer than three different usable corners; left out
	Flat      Kind = "flat"      // all points lie in one straight line, or fewer than three are different: no triangles
	Through   Kind = "through"   // Edges: runs through Points[0], which it does not name, and is split there; Gap: height of the point less that on the edge
	Crossing  Kind = "crossing"  // Edges: two that cross; both are split At a new point, Points[0], or an end that is as near as rounding; Gap: height on the first less that on the second, a new point has the mean
	Abandoned Kind = "abandoned" // Edges: crosses so many others, or so narrowly, that it was given up
	Apart     Kind = "apart"     // Points: in no triangle, beyond the ring or in a hole
)

// Issue is what a caller should know about the points and edges given. Points are numbers into
// Surface.Points, Edges pairs of such numbers as they were given; At is a place in plan where
// there is one, Gap a difference in height in metres.
type Issue struct {
	Kind   Kind
	Points []int
	Edges  [][2]int
	At     plane.Point
	Gap    float64
}
