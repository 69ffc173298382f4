// Package outline fits the lines of a book through their adjusted marks: straights, true arcs and
// fair curves as stated; where the book says any, the fewest straights and arcs that explain the
// marks, else a fair curve; lengths, areas, radii and sweeps, each with the standard deviation that
// the readings and the spacing of the marks give it; and the family of shapes that a closed line
// belongs to.
//
// What a stretch is made of is found by dynamic programming over the joints (graph, search) with
// prices for pieces and joints (pieces) and approximate fits of single pieces (primitive); the best few
// are then fitted as a line with the full covariance, and ranked by that (found).
//
// A line is a chain of joints. The unknowns are the joints, the bulge of every arc and the inner
// marks of curves; joints and inner curve marks are held by their marks, inner marks of straights
// and arcs by their distance across the run. All marks of the line enter together with their full
// covariance. Metres, radians; sweeps positive to the left along the line.
package outline

import (
	"math"

	"brimline/adjust"
	"brimline/finding"
	"brimline/plane"
)

// Spec is a line as the book states it, its marks numbered as in the network; −1 stands for a
// mark that no reading names.
type Spec struct {
	Name, Edge string
	Closed     bool
	Runs       []SpecRun
}

// SpecRun is one stated run: straight, arc, curve or any, which is found out. Joint speaks of its
// first mark: tangent, kink or not said.
type SpecRun struct {
	Kind  string
	Marks []int
	Names []string
	Joint string

	loose int  // where a joint that was found lies
	found bool // the book says any
}

// Line is a fitted line in the inner datum of the solution. Path and Runs are the description that
// explains the marks best. Length and Area are the means over all descriptions that explain them
// nearly as well, by their evidence, less what noise of the marks adds to the length of a fair
// curve; what these differ by, and what a fair curve leaves open between its marks, stands in LengthSD
// and AreaSD.
type Line struct {
	Name      string
	Closed    bool
	Edge      string
	Waits     []string // marks that no reading in the solution places; then the line has no path
	Marks     []int    // in the order of the line
	Names     []string
	Normals   []plane.Point // at each mark, to the left of the line
	Path      plane.Path
	Runs      []Run
	Length    float64
	LengthSD  float64
	Area      float64 // positive; closed lines only
	AreaSD    float64
	Inferred  float64 // length in spans that nobody stated and nobody touched
	Gaps      []Gap
	Family    *Family // nil where it has none
	Clockwise bool
}

// Run is one stretch. Figures that a kind does not have are zero.
type Run struct {
	Kind               string
	From, To           string
	Joint              string
	Found              bool    // the book leaves its kind to be found
	Turn               float64 // at its start against the run before; NaN where there is none
	First, Pieces      int     // its pieces of Path.Segs
	Length, LengthSD   float64
	Bearing, BearingSD float64
	Radius, RadiusSD   float64
	Centre             plane.Point
	Sweep, SweepSD     float64
}

// Fit fits one line. edge is the standard deviation of what stays open about the edge at each
// mark of the network, across the line.
func Fit(s *adjust.Solution, l Spec, edge []float64) (*Line, []finding.Finding) {
	out := &Line{Name: l.Name, Closed: l.Closed, Edge: l.Edge}
	for i, r := range l.Runs {
		for k, m := range r.Marks {
			if joint := i > 0 && k == 0; joint || i > 0 && l.Closed && i == len(l.Runs)-1 && k == len(r.Marks)-1 || i == 0 && k > 0 && r.Names[k] == r.Names[0] {
				continue // named already
			}
			if m < 0 || s.Rows == 0 || math.IsNaN(s.X.Point(m).X) {
				out.Waits = append(out.Waits, r.Names[k])
				continue
			}
			out.Marks = append(out.Marks, m)
			out.Names = append(out.Names, r.Names[k])
		}
	}
	if len(out.Waits) > 0 {
		return out, []finding.Finding{{Code: "line-unread", Lines: []string{l.Name}, Marks: out.Waits}}
	}
	b := newBlock(s, l)
	models := resolve(b, l, edge)
	c, found := models[0].chain(b)
	c.settle(edge)
	found = append(found, c.tests()...)
	c.describe(out)
	out.Family = c.recognise(out, edge)
	out.mix(c, models, edge)
	if out.Clockwise {
		found = append(found, finding.Finding{Code: "clockwise", Lines: []string{l.Name}})
	}
	return out, append(found, out.crossing(s)...)
}
