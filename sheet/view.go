package sheet

import "brimline/plane"

// View lays the model's metres on paper: the point Model of the model stands at Paper, one metre
// is PerMetre millimetres, and nothing is turned or mirrored.
type View struct {
	Name         string
	Model, Paper plane.Point
	Scale        Scale
}

// Point takes metres of the model to millimetres of paper.
func (v View) Point(p plane.Point) plane.Point {
	return p.Sub(v.Model).Mul(v.Scale.PerMetre()).Add(v.Paper)
}

// Back takes millimetres of paper to metres of the model.
func (v View) Back(p plane.Point) plane.Point {
	return p.Sub(v.Paper).Mul(1 / v.Scale.PerMetre()).Add(v.Model)
}

// Path lays a path on paper; bulges stay as they are.
func (v View) Path(p plane.Path) plane.Path {
	out := plane.Path{Closed: p.Closed, Segs: make([]plane.Segment, len(p.Segs))}
	for i, s := range p.Segs {
		out.Segs[i] = plane.Segment{A: v.Point(s.A), B: v.Point(s.B), Bulge: s.Bulge}
	}
	return out
}
