package outline

import (
	"math"

	"brimline/plane"
)

// joint is how one piece goes over into the next.
type joint struct {
	kind  string // tangent, kink, fillet (an arc between); "" beside a fair curve
	loose int
	cost  float64
}

// Where the joint of two pieces lies.
const (
	atMark   = iota // on the mark that both end at
	nearMark        // the mark lies on the edge, the joint somewhere near
	turned          // beside an arc that rounds an unreached corner
	between         // between the last mark of one piece and the first of the next
)

// meet gives the ways in which piece q may follow piece p, by their prices and by what of the
// marks' noise they need. The pieces share a mark, or q begins one mark later.
func (t *trail) meet(p, q *primitive, c prices) []joint {
	shared := t.index(p.to) == t.index(q.from)
	if p.kind == "curve" || q.kind == "curve" {
		switch {
		case !shared:
			return nil
		case p.kind == q.kind:
			return []joint{{cost: 0}}
		}
		return []joint{{cost: c.kink}}
	}
	if !shared {
		out := t.smooth(p, q, c, between)
		if cost, ok := t.corner(p, q, c); ok {
			out = append(out, joint{"kink", between, cost})
		}
		return out
	}
	if p.kind == "straight" && q.kind == "straight" {
		return []joint{{"kink", atMark, c.kink}}
	}
	return append(t.smooth(p, q, c, nearMark), joint{"kink", atMark, c.bent(p, q)})
}

// The most that the misfit of a tangent joint may add, and the most turn at a mark beside one.
const (
	mostMisfit = 40
	mostTurn   = 0.5
)

// smooth is the tangent joint. With D the gap from p to q across and φ the turn at the mark, the
// curves stand D + φs + Δκs²/2 apart at s further on, and touch where φ + Δκs = 0.
func (t *trail) smooth(p, q *primitive, c prices, loose int) []joint {
	if p.kind == q.kind && p.kind == "straight" || p.kind == q.kind && math.Abs(p.k-q.k)*t.step < 1e-4 {
		return nil
	}
	a, b := t.point(p.to), t.point(q.from)
	lo, hi := -0.5*t.gap(p.to-1), 0.5*t.gap(q.from)
	if loose == between {
		lo, hi = -0.2*a.Dist(b), 1.2*a.Dist(b)
	}
	foot := a.Sub(p.along(a).Left().Mul(p.left(a)))
	d, turn := -q.left(foot), plane.Between(p.along(a), q.along(a))
	reach := mostTurn / math.Max(math.Abs(p.k), math.Abs(q.k))
	if math.Abs(turn) > mostTurn || loose == between && a.Dist(b) > 2*reach {
		return nil
	}
	lo, hi = math.Max(lo, -reach), math.Min(hi, 2*reach)
	s := math.Max(lo, math.Min(hi, -turn/(q.k-p.k)))
	off, rest := d+turn*s+(q.k-p.k)*s*s/2, turn+(q.k-p.k)*s
	po, pt, qo, qt := p.shifts(a), p.turns(a), q.shifts(a), q.turns(a)
	vo, vt := p.spread(po, po)+q.spread(qo, qo), p.spread(pt, pt)+q.spread(qt, qt)
	if loose == nearMark {
		n := p.along(a).Left()
		w := 1 / t.variance(p.to, n)
		vo -= 2 * p.spread(po, po) * q.spread(qo, qo) * w
		vt -= 2 * p.spread(pt, po) * q.spread(qt, qo) * w
	}
	least := t.sd * t.sd / 100
	vt = math.Max(vt, 1e-8)
	misfit := off * off / (math.Max(vo, least) + s*s*vt)
	if math.Abs(rest) > 1e-9 {
		misfit += rest * rest / vt
	}
	if misfit > mostMisfit {
		return nil
	}
	return []joint{{"tangent", loose, c.tangent + misfit}}
}

// corner is a kink that nobody touched: the ends drawn on must meet between the marks.
func (t *trail) corner(p, q *primitive, c prices) (cost float64, ok bool) {
	a, b := t.point(p.to), t.point(q.from)
	u, v := p.along(a), q.along(b)
	cross := u.Cross(v)
	if math.Abs(cross) < 0.05 || p.to-p.from < 1 || q.to-q.from < 1 {
		return 0, false
	}
	d := b.Sub(a)
	on, back := d.Cross(v)/cross, d.Cross(u)/cross // from a along u, and from b along v
	gap := d.Len()
	if on < -0.1*gap || on > 1.5*gap || back > 0.1*gap || back < -1.5*gap || gap*math.Max(math.Abs(p.k), math.Abs(q.k)) > mostTurn {
		return 0, false
	}
	return c.open, true
}
