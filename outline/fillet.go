package outline

import (
	"math"

	"brimline/plane"
)

// mostFilled is how many marks an arc between two straights may have that nobody marked the ends
// of.
const mostFilled = 2

// The turn at a rounded corner between two straights: common practice, no source.
const leastFilled, mostFilledTurn = 15 * math.Pi / 180, 150 * math.Pi / 180

// fillet is the arc tangent to straight p and straight q on which the marks between them lie: the
// corner is rounded, and only its middle was marked. One radius is free.
func (t *trail) fillet(p, q *primitive, c prices) []joint {
	n := q.from - p.to - 1
	if q.from < p.to { // once round
		n += len(t.at)
	}
	if p.kind != "straight" || q.kind != "straight" || n < 1 || n > mostFilled {
		return nil
	}
	turn := plane.Between(p.dir, q.dir)
	if a := math.Abs(turn); a < leastFilled || a > mostFilledTurn {
		return nil
	}
	v, ok := plane.MeetLines(p.at, p.at.Add(p.dir), q.at, q.at.Add(q.dir))
	if !ok {
		return nil
	}
	in := q.dir.Sub(p.dir).Unit() // from the corner to the centre
	long := 1 / math.Cos(turn/2)  // the centre lies so many radii from the corner
	sum, weight := 0.0, 0.0
	var w []float64
	for i := p.to + 1; i <= p.to+n; i++ {
		r, ok := rounding(t.point(i).Sub(v), in, long)
		if !ok {
			return nil
		}
		k := 1 / math.Max(t.variance(i, in), leastSD*leastSD)
		w, sum, weight = append(w, r), sum+k*r, weight+k
	}
	r := sum / weight
	chi := 0.0
	for i, x := range w {
		d := (x - r) * (long - 1) // of the mark across the arc, near its middle
		chi += d * d / t.variance(p.to+1+i, in)
	}
	before, after := v.Sub(t.point(p.to)).Dot(p.dir), t.point(q.from).Sub(v).Dot(q.dir)
	way := r * math.Tan(math.Abs(turn)/2)
	if slack := 0.1 * way; chi > mostMisfit || before < way-slack || after < way-slack {
		return nil
	}
	return []joint{{"fillet", between, c.fillet + chi}}
}

// rounding is the radius of the arc that rounds a corner and passes w from it, on the side of the
// corner: |w − R·long·in| = R.
func rounding(w, in plane.Point, long float64) (radius float64, ok bool) {
	a, b := long*long-1, long*w.Dot(in)
	root := b*b - a*w.Dot(w)
	if b <= 0 || root < 0 {
		return 0, false
	}
	return (b + math.Sqrt(root)) / a, true
}

// filled gives the marks between two straights as a run.
func (g *graph) filled(p, q *primitive) SpecRun {
	r := SpecRun{Kind: "arc", Joint: "tangent", loose: between}
	for i := p.to + 1; g.t.index(i) != g.t.index(q.from); i++ {
		r.Marks, r.Names = append(r.Marks, g.t.marks[g.t.index(i)]), append(r.Names, g.t.names[g.t.index(i)])
	}
	return r
}
