package sheet

import (
	"math"
	"sort"

	"brimline/plane"
)

// Hatch fills closed paths with parallel lines: holes are simply further paths. Turn is the
// direction of the lines, Pitch their distance in millimetres, not below a tenth.
type Hatch struct {
	Rings []plane.Path
	Turn  float64
	Pitch float64
}

// finest distance of hatch lines: closer ones would be a grey ground.
const finest = 0.1

func (h Hatch) flat(it Item) []Item {
	pitch := math.Max(h.Pitch, finest)
	box := plane.EmptyBox()
	turned := make([]plane.Path, len(h.Rings))
	for i, r := range h.Rings {
		turned[i] = r.Move(plane.Turned(-h.Turn, plane.Point{}))
		box = box.Join(turned[i].Bounds())
	}
	var out []Item
	if box.Empty() {
		return nil
	}
	for y := math.Ceil(box.Min.Y/pitch) * pitch; y < box.Max.Y; y += pitch {
		xs := crossings(turned, y)
		for i := 1; i < len(xs); i += 2 {
			a, b := plane.Point{X: xs[i-1], Y: y}.Turn(h.Turn), plane.Point{X: xs[i], Y: y}.Turn(h.Turn)
			out = append(out, it.with(Line(a, b)))
		}
	}
	return out
}

// crossings are the x at which the rings cross the level line at y, in order.
func crossings(rings []plane.Path, y float64) []float64 {
	var xs []float64
	for _, r := range rings {
		for _, s := range r.Segs {
			xs = append(xs, cross(s, y)...)
		}
	}
	sort.Float64s(xs)
	return xs
}

// cross gives where one segment passes the level line at y. An arc is cut at its highest and
// lowest points, so that every piece rises or falls; a piece counts its lower end and not its upper.
func cross(s plane.Segment, y float64) []float64 {
	if s.Straight() {
		if (s.A.Y <= y) == (s.B.Y <= y) {
			return nil
		}
		return []float64{s.A.X + (s.B.X-s.A.X)*(y-s.A.Y)/(s.B.Y-s.A.Y)}
	}
	c, r := s.Centre(), s.Radius()
	cuts := []float64{0}
	a0, sweep := plane.Angle(s.A.Sub(c)), s.Sweep()
	for k := -4; k <= 4; k++ {
		if t := (math.Pi/2 + float64(k)*math.Pi - a0) / sweep; t > 0 && t < 1 {
			cuts = append(cuts, t)
		}
	}
	sort.Float64s(cuts)
	cuts = append(cuts, 1)
	var xs []float64
	for i := 1; i < len(cuts); i++ {
		p, q := s.At(cuts[i-1]), s.At(cuts[i])
		if (p.Y <= y) == (q.Y <= y) {
			continue
		}
		half := math.Sqrt(math.Max(0, r*r-(y-c.Y)*(y-c.Y)))
		mid := s.At((cuts[i-1] + cuts[i]) / 2)
		xs = append(xs, c.X+math.Copysign(half, mid.X-c.X))
	}
	return xs
}
