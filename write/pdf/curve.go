package pdf

import (
	"math"
	"strings"

	"brimline/plane"
	"brimline/sheet"
)

// bezierError is the largest distance allowed between a true arc and its Bézier pieces, in mm.
const bezierError = 0.0005

// path gives the operators of a run of straights and arcs.
func (p *page) path(q plane.Path) string {
	var b strings.Builder
	for i, s := range q.Segs {
		if i == 0 {
			b.WriteString(p.at(s.A) + " m ")
		}
		if s.Straight() {
			b.WriteString(p.at(s.B) + " l ")
			continue
		}
		c, sweep := s.Centre(), s.Sweep()
		b.WriteString(p.arc(s.A.Sub(c), sweep, math.Abs(s.Radius()), func(v plane.Point) plane.Point { return c.Add(v) }))
	}
	if q.Closed && len(q.Segs) > 0 {
		b.WriteString("h ")
	}
	return b.String()
}

// ellipse gives the operators of a whole ellipse: a unit circle stretched, turned and moved.
func (p *page) ellipse(e sheet.Ellipse) string {
	place := func(v plane.Point) plane.Point {
		return e.Centre.Add(plane.Point{X: e.A * v.X, Y: e.B * v.Y}.Turn(e.Turn))
	}
	start := plane.Point{X: 1}
	return p.at(place(start)) + " m " + p.arc(start, 2*math.Pi, math.Max(e.A, e.B), place) + "h "
}

// arc turns the vector from by sweep in cubic pieces. The control points stand 4/3·tan(sweep/4) of
// the radius along the tangents (Goldapp, Approximation of circular arcs by cubic polynomials,
// Computer Aided Geometric Design 8, 1991, gives the error: about 2.7e-4 of the radius for a quarter,
// falling with the sixth power of the piece). r is the radius on paper, for the number of pieces.
func (p *page) arc(from plane.Point, sweep, r float64, place func(plane.Point) plane.Point) string {
	n := pieces(sweep, r)
	step := sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	var b strings.Builder
	for i := 0; i < n; i++ {
		u, v := from.Turn(float64(i)*step), from.Turn(float64(i+1)*step)
		b.WriteString(p.at(place(u.Add(u.Left().Mul(k)))) + " " + p.at(place(v.Sub(v.Left().Mul(k)))) + " " + p.at(place(v)) + " c ")
	}
	return b.String()
}

// pieces is the number of cubics that keep an arc within bezierError.
func pieces(sweep, r float64) int {
	const quarter = 2.8e-4 // error of a quarter of a unit circle, rounded up
	most := math.Pi / 2 * math.Min(1, math.Pow(bezierError/(quarter*math.Max(r, 1e-9)), 1.0/6))
	return max(1, int(math.Ceil(math.Abs(sweep)/most-1e-9)))
}
