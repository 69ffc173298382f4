package plane

import "math"

// Lengths in metres below which the parallel does not tell places apart: least is the shortest
// piece kept and the arc below which a corner is smooth, hairline the depth below which one disc
// does not cover another's edge. Rounding about the middle of a pool is below 10⁻¹⁴ m.
const (
	least    = 1e-7
	hairline = 1e-12
)

// strand is a piece of what may become the parallel, with the segment that it runs beside: −1 for
// what goes round a corner, whose two segments are then at and at+1.
type strand struct {
	Segment
	of, at int
}

// strands are the parallels on the right of the single segments, and between them the ways round
// the corners that turn away from it. The concave side of an arc has none at its radius or beyond.
func (p Path) strands(d float64, c Corners) (out []strand, kites []kite) {
	n := len(p.Segs)
	for i, s := range p.Segs {
		if stretch := 1 + s.Curvature()*d; stretch*s.Length() > least {
			out = append(out, strand{s.rightBy(d), i, i})
		}
		if i+1 == n && !p.Closed {
			break
		}
		corner, k := p.corner(i, (i+1)%n, d, c)
		for _, s := range corner {
			out = append(out, strand{s, -1, i})
		}
		kites = append(kites, k...)
	}
	return out, kites
}

// rightBy is the parallel piece of the same sweep.
func (s Segment) rightBy(d float64) Segment {
	return Segment{s.A.Sub(s.Tangent(0).Left().Mul(d)), s.B.Sub(s.Tangent(1).Left().Mul(d)), s.Bulge}
}

// corner goes round the joint of segments i and j on the right: nothing where the path turns to the
// right, an arc, or two straights to a point.
func (p Path) corner(i, j int, d float64, c Corners) ([]Segment, []kite) {
	u, v := p.Segs[i].Tangent(1), p.Segs[j].Tangent(0)
	turn := Between(u, v)
	if math.Abs(turn) > math.Pi-1e-9 {
		turn = math.Copysign(math.Pi, turn)
		if p.spike(j, u) != (turn > 0) {
			turn = -turn
		}
	}
	if turn*d <= least {
		return nil, nil
	}
	at := p.Segs[j].A
	a, b := at.Sub(u.Left().Mul(d)), at.Sub(v.Left().Mul(d))
	if c == MitredCorners && math.Cos(turn/2)*mitreMost > 1 {
		m := a.Add(u.Mul(d * math.Tan(turn/2)))
		return []Segment{{A: a, B: m}, {A: m, B: b}}, []kite{{i, [4]Point{at, a, m, b}}}
	}
	return []Segment{{a, b, math.Tan(turn / 4)}}, nil
}

// spike says of a corner that goes straight back that the way round it is on the right: it is the
// tip of something, not the end of a slit. Of a closed path what lies just before it tells.
func (p Path) spike(at int, ahead Point) bool {
	return !p.Closed || !p.Contains(p.Segs[at].A.Add(ahead.Mul(1e-6))) == (p.Area() > 0)
}
