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
// An edge said to be soft is a fair curve whose marks lie about it by its sigma. A joint marked by eye
// along the edge may slide: its mark holds the edge across. A corner that nobody reached stands where
// two straights meet (corner), sharp or rounded by an arc tangent to both sides (round).
//
// A line is a chain of joints. The unknowns are the joints, the bulge of every arc and the inner
// marks of curves; joints and inner curve marks are held by their marks, inner marks of straights
// and arcs by their distance across the run. All marks of the line enter together with their full
// covariance. Metres, radians; sweeps positive to the left along the line.
package outline

import (
	"math"
	"slices"

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
	Corners    []Corner
}

// SpecRun is one stated run: straight, arc, curve, soft (an edge that cannot be laid on one line,
// passed as a fair curve) or any, which is found out. Joint speaks of its first mark: tangent, kink
// or not said. A mark of −1 whose name is a corner's stands for that corner.
type SpecRun struct {
	Kind  string
	Marks []int
	Names []string
	Joint string
	Sigma float64 // kind soft: standard deviation of the edge across the run, metres
	Slide float64 // standard deviation of its two end marks along the edge, metres; 0: as read

	loose  int  // where a joint that was found lies
	found  bool // the book says any
	soft   bool
	open   bool        // no ring although it ends where it begins: at an unreached corner
	play   float64     // sd of the joint at its start along the edge; 0 none
	corner int         // counted from 1: the arc that rounds an unreached corner
	about  plane.Point // where a joint beside such an arc begins to be looked for
	bulge  float64     // of such an arc, to begin with
}

// Corner is a corner of a line that nobody could reach: it lies where the straight through Meet[0]
// meets that through Meet[1], with the covariance of those four marks and Sigma besides. Round is
// the radius of the arc that rounds it; else the radius measured at the corners named in Like is
// taken; without either it is sharp.
type Corner struct {
	Name         string
	Meet         [2][2]int
	MeetNames    [2][2]string
	Round, Sigma float64 // metres
	Like         []string
}

// CornerFound is where an unreached corner was found to lie: At is where the two straights meet, SD
// the larger semi-axis of its standard ellipse, Radius that of its rounding (0 sharp).
type CornerFound struct {
	Name   string
	At     plane.Point
	SD     float64
	Radius float64
}

// Line is a fitted line in the inner datum of the solution. Path and Runs are the description that
// explains the marks best; Length and Area are those of Path. LengthSD and AreaSD contain what the
// descriptions that explain the marks nearly as well differ from it by, what a fair curve leaves open
// between its marks, and by how much the marks' noise makes a fair curve too long.
type Line struct {
	Name       string
	Closed     bool
	Edge       string
	Waits      []string // marks that no reading in the solution places; then the line has no path
	Marks      []int    // in the order of the line
	Names      []string
	Normals    []plane.Point // at each mark, to the left of the line
	Path       plane.Path
	Runs       []Run
	Length     float64
	LengthSD   float64
	Area       float64 // positive; closed lines only
	AreaSD     float64
	AreaReadSD float64 // the part of AreaSD that the readings give the line as drawn
	Inferred   float64 // length in spans that nobody stated and nobody touched
	Gaps       []Gap
	Family     *Family // nil where it has none
	Corners    []CornerFound
	Clockwise  bool

	kept   *kept  // of its fit, for Hold
	beyond []bool // by mark: an unreached corner lies between it and the next
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
	Sagitta, SagittaSD float64 // rise of an arc over its own chord, positive
}

// Fit fits one line. edge is the standard deviation of what stays open about the edge at each
// mark of the network, across the line.
func Fit(s *adjust.Solution, l Spec, edge []float64) (*Line, []finding.Finding) {
	out := &Line{Name: l.Name, Closed: l.Closed, Edge: l.Edge}
	corners, waits, found := l.corners(s)
	out.list(s, l, corners)
	if out.Waits = append(out.Waits, waits...); len(out.Waits) > 0 {
		return out, append(found, finding.Finding{Code: "line-unread", Lines: []string{l.Name}, Marks: out.Waits})
	}
	l = l.numbered(len(s.Net.Marks))
	l.beside(corners, len(s.Net.Marks))
	l, edge = l.ready(edge, len(corners))
	b := newBlock(s, l, corners)
	models := resolve(b, l, edge)
	found = append(found, b.radii(models[0], edge)...)
	for i := range models {
		models[i].spec = b.rounded(models[i].spec)
	}
	c, more := models[0].chain(b)
	found = append(found, more...)
	c.settle(edge)
	found = append(found, c.tests()...)
	c.describe(out)
	c.cornersFound(out)
	out.Family = c.recognise(out, edge)
	out.mix(c, models, edge)
	if out.Clockwise {
		found = append(found, finding.Finding{Code: "clockwise", Lines: []string{l.Name}})
	}
	return out, append(found, out.crossing(s)...)
}

// list fills in the marks of the line in their order, and what it waits for.
func (l *Line) list(s *adjust.Solution, spec Spec, corners []corner) {
	for i, r := range spec.Runs {
		for k, m := range r.Marks {
			if joint := i > 0 && k == 0; joint || i > 0 && l.Closed && i == len(spec.Runs)-1 && k == len(r.Marks)-1 || i == 0 && k > 0 && r.Names[k] == r.Names[0] {
				continue // named already
			}
			if m < 0 && slices.ContainsFunc(corners, func(c corner) bool { return c.Name == r.Names[k] }) {
				if n := len(l.beyond); n > 0 {
					l.beyond[n-1] = true
				}
				continue
			}
			if m < 0 || s.Rows == 0 || math.IsNaN(s.X.Point(m).X) {
				l.Waits = append(l.Waits, r.Names[k])
				continue
			}
			l.Marks, l.Names, l.beyond = append(l.Marks, m), append(l.Names, r.Names[k]), append(l.beyond, false)
		}
	}
	if r := spec.Runs[0]; l.Closed && r.Marks[0] < 0 && len(l.beyond) > 0 {
		l.beyond[len(l.beyond)-1] = true
	}
}
