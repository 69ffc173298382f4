package survey

import (
	"math"
	"slices"

	"brimline/outline"
	"brimline/plane"
)

// between refuses pairs that have nothing between them.
func between(a, b end) error {
	switch {
	case a.label == b.label:
		return &Misplaced{b.label, "same-place", a.label + " is both ends", "name two places"}
	case a.whole && b.whole:
		return &Misplaced{b.label, "two-lines", a.label + " and " + b.label + " are two lines", "name a mark or a point of one: " + a.label + "@3.20"}
	case (a.whole || b.whole) && (a.spot != nil || b.spot != nil):
		return &Misplaced{b.label, "mark-to-line", "the shortest way to a line begins at a mark, not at a point of a line", "name a mark, or a point of the other line"}
	}
	return nil
}

// across puts the foot of the mark in the place of the whole line; the way runs from the mark.
func (r *Ruler) across(a, b end, m *Measured) (end, end, error) {
	if a.whole {
		a, b = b, a
		m.From, m.To = a.label, b.label
	}
	h, err := r.line(b.label, b.line)
	if err != nil {
		return a, b, err
	}
	b.spot, _ = h.Nearest(a.mark)
	b.at = b.spot.At
	l := r.g.lines[b.line]
	d := a.at.Sub(b.at)
	m.Across = &Across{Line: l.Name, Along: b.spot.Along, Square: math.Abs(d.Dot(b.spot.Way)) <= 1e-6*math.Max(1, d.Len())}
	switch {
	case d.Len() < touching:
		m.Across.Side = "on"
	case l.Closed && l.Path.Distance(a.at) < 0:
		m.Across.Side = "inside"
	case l.Closed:
		m.Across.Side = "outside"
	case l.Path.Foot(a.at).Right > 0:
		m.Across.Side = "right"
	default:
		m.Across.Side = "left"
	}
	return a, b, nil
}

// along fills the ways along the lines that have both ends.
func (r *Ruler) along(a, b end, m *Measured) {
	if m.Across != nil {
		return
	}
	for i := range r.g.lines {
		from, to := r.onto(a, i), r.onto(b, i)
		if from != nil && to != nil {
			m.Along = append(m.Along, r.way(i, from, to))
		}
	}
}

// onto is the spot of an end on a line; nil where it is neither a point nor a mark of that line.
func (r *Ruler) onto(e end, line int) *outline.Spot {
	if e.spot != nil {
		if e.line != line {
			return nil
		}
		return e.spot
	}
	if !slices.Contains(r.g.lines[line].Marks, e.mark) {
		return nil
	}
	h, err := r.line(e.label, line)
	if err != nil {
		return nil
	}
	spot, _ := h.Foot(e.mark)
	return spot
}

// way is the length along a line between two spots of it.
func (r *Ruler) way(line int, from, to *outline.Spot) Along {
	l := r.g.lines[line]
	sign, whole := 1.0, 0.0
	d := to.Along - from.Along
	if d < 0 && l.Closed {
		whole = 1
	} else if d < 0 {
		sign = -1
	}
	d = sign*d + whole*to.Whole
	out := Along{Line: l.Name, Length: d, LengthSD: r.alongSD(from, to, sign, whole, d)}
	if l.Closed {
		rest := to.Whole - d
		out.Opposite, out.OppositeSD = &rest, some(r.alongSD(from, to, -sign, 1-whole, rest))
	}
	return out
}

// alongSD is the standard deviation of sign·(to − from) + whole·(length of the line).
func (r *Ruler) alongSD(from, to *outline.Spot, sign, whole, metres float64) float64 {
	f := outline.NewMeasure(r.g.sol)
	f.Along(to, sign, whole)
	f.Along(from, -sign, 0)
	f.Way(to, metres)
	sd, _, _ := f.Ask()
	return r.g.factor * sd
}

// spun is how the turn of the whole figure in the book's frame follows its marks.
type spun struct {
	marks []int
	by    []plane.Point
}

// spun of a figure that is laid on two or more places wanted: Σ d×δ/Σ d² for moves δ of these marks
// at d from their middle, as in adjust.FitFrame. With fewer the direction of the base holds still.
func (g *gather) spun() spun {
	var out spun
	var at []plane.Point
	var middle plane.Point
	for _, w := range g.net.Wanted {
		if p := g.sol.X.Point(w.Mark); p.Finite() {
			out.marks, at, middle = append(out.marks, w.Mark), append(at, p), middle.Add(p)
		}
	}
	if len(at) < 2 {
		return spun{}
	}
	size := 0.0
	for i := range at {
		at[i] = at[i].Sub(middle.Mul(1 / float64(len(at))))
		size += at[i].Dot(at[i])
	}
	for _, d := range at {
		out.by = append(out.by, d.Left().Mul(1/size))
	}
	return out
}

// takeOff measures an angle against the turn of the figure.
func (s spun) takeOff(f *outline.Measure) {
	for i, m := range s.marks {
		f.Mark(m, s.by[i].Mul(-1))
	}
}
