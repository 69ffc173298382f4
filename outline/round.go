package outline

import (
	"math"
	"slices"

	"brimline/finding"
	"brimline/plane"
)

// apex is where the tangents at the ends of an arc of less than a half circle meet.
func apex(s plane.Segment) plane.Point {
	rise := s.Bulge / (1 - s.Bulge*s.Bulge) // of the chord, to the right of A→B
	return plane.Lerp(s.A, s.B, 0.5).Sub(s.B.Sub(s.A).Left().Mul(rise))
}

// radii says by what radius each corner is rounded: as the book states it (known as its sigma
// says), else as the corners that it is like. A corner that is like none of a radius stays sharp.
func (b *block) radii(m model, edge []float64) []finding.Finding {
	var found []finding.Finding
	var sharp *chain
	for i := range b.corner {
		x := &b.corner[i]
		switch {
		case !x.used:
		case x.Round > 0:
			x.radius, x.radiusSD = x.Round, math.Max(x.Sigma, leastSD)
		case len(x.Like) > 0:
			if sharp == nil {
				sharp, _ = m.chain(b)
				sharp.settle(edge)
			}
			if r, sd := sharp.alike(x.Like, []string{x.Name}); r > 0 {
				x.radius, x.radiusSD = r, sd
				continue
			}
			found = append(found, finding.Finding{Code: "corner-like", Lines: []string{m.spec.Name}, Marks: x.Like, Words: map[string]string{"name": x.Name}})
		}
	}
	return found
}

// alike is the radius of the next corner like those named, each the arc of a mark or another
// unreached corner: their weighted mean, its sd and the scatter of the radii together.
func (c *chain) alike(names, seen []string) (radius, sd float64) {
	var r, v []float64
	for len(names) > 0 {
		name := names[0]
		names = names[1:]
		if slices.Contains(seen, name) {
			continue
		}
		seen = append(seen, name)
		if i := slices.IndexFunc(c.block.corner, func(x corner) bool { return x.Name == name }); i >= 0 {
			x := &c.block.corner[i]
			if x.Round > 0 {
				r, v = append(r, x.Round), append(v, math.Max(x.Sigma*x.Sigma, leastSD*leastSD))
			}
			names = slices.Concat(names, x.Like)
			continue
		}
		if p := c.arcOf(name); p != nil {
			of := func(q []float64) float64 { return math.Abs(c.segment(q, p).Radius()) }
			s := math.Max(c.sdOf(of), leastSD)
			r, v = append(r, of(c.q)), append(v, s*s)
		}
	}
	return pooled(r, v)
}

// pooled is the mean of values weighted by their variances, and the sd of one more of their kind.
func pooled(value, variance []float64) (mean, sd float64) {
	weight, sum, scatter := 0.0, 0.0, 0.0
	for i, x := range value {
		weight += 1 / variance[i]
		sum += x / variance[i]
	}
	if weight == 0 {
		return 0, 0
	}
	mean = sum / weight
	for i, x := range value {
		scatter += (x - mean) * (x - mean) / variance[i] / weight
	}
	if n := float64(len(value)); n > 1 {
		scatter *= n / (n - 1)
	}
	return mean, math.Sqrt(1/weight + scatter)
}

// arcOf is the arc that a mark lies inside, else the tighter one that it ends; nil of none.
func (c *chain) arcOf(name string) *piece {
	var best *piece
	for i := range c.pieces {
		p := &c.pieces[i]
		if p.bulge < 0 {
			continue
		}
		names := c.l.Runs[p.run].Names
		k := slices.Index(names, name)
		if k > 0 && k < len(names)-1 {
			return p
		}
		if k >= 0 && (best == nil || math.Abs(c.segment(c.q, p).Radius()) < math.Abs(c.segment(c.q, best).Radius())) {
			best = p
		}
	}
	return best
}

// rounded puts an arc, tangent to both sides, in the place of every corner that has a radius and
// no curve beside it.
func (b *block) rounded(l Spec) Spec {
	runs := slices.Clone(l.Runs)
	first := len(b.s.Net.Marks)
	var out []SpecRun
	var last []SpecRun // the arc before the first run, at the end of the list
	for i := range runs {
		q := &runs[i]
		k := q.Marks[0] - first
		if k < 0 || b.corner[k].radius == 0 || i == 0 && !l.Closed {
			out = append(out, *q)
			continue
		}
		p := &l.Runs[(i+len(runs)-1)%len(runs)]
		x := &b.corner[k]
		in := x.at.Sub(b.point(p.Marks[len(p.Marks)-2])).Unit()
		on := b.point(q.Marks[1]).Sub(x.at).Unit()
		turn := plane.Between(in, on)
		if p.Kind == "curve" || q.Kind == "curve" || math.Abs(turn) < leastMeet {
			out = append(out, *q)
			continue
		}
		t := x.radius * math.Tan(math.Abs(turn)/2)
		arc := SpecRun{Kind: "arc", Marks: []int{q.Marks[0], q.Marks[0]}, Names: []string{x.Name, x.Name}, Joint: "tangent",
			loose: turned, about: x.at.Sub(in.Mul(t)), corner: k + 1, bulge: math.Tan(turn / 4), found: true}
		q.Joint, q.loose, q.about = "tangent", turned, x.at.Add(on.Mul(t))
		if i == 0 {
			last = []SpecRun{arc}
		} else {
			out = append(out, arc)
		}
		out = append(out, *q)
	}
	l.Runs = append(out, last...)
	return l
}
