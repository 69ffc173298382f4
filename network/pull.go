package network

import "brimline/plane"

// pull brings all derivatives back to the marks and the rises and adds them to jac.
func (tr *trace) pull(jac []float64) {
	for i := range tr.runs {
		r := &tr.runs[i]
		if r.bend == nil {
			continue
		}
		n := len(r.pts)
		r.dTurn[0] += r.dIn
		if r.Loop {
			r.dTurn[0] += r.dOut
		} else {
			r.dTurn[n-1] += r.dOut
		}
		grad, start, end := r.bend.Pull(r.dPts, r.dTurn)
		r.dPts = grad
		if r.start >= 0 {
			tr.runs[r.start].dOut += start
		}
		if r.end >= 0 {
			tr.runs[r.end].dIn += end
		}
	}
	for i := range tr.runs {
		r := &tr.runs[i]
		if r.Kind != "curve" {
			tr.unbend(r, jac)
		}
		for k, g := range r.dPts {
			tr.release(r.At[k], g, jac)
		}
	}
}

// unbend takes the directions of a straight or an arc to its points.
func (tr *trace) unbend(r *traced, jac []float64) {
	last := len(r.pts) - 1
	v := r.pts[last].Sub(r.pts[0])
	if l := v.Dot(v); l > 0 {
		g := v.Left().Mul((r.dIn + r.dOut) / l)
		r.dPts[0], r.dPts[last] = r.dPts[0].Sub(g), r.dPts[last].Add(g)
	}
	if r.Kind == "arc" {
		r.dPsi += r.dOut - r.dIn
		tr.halfSweep(r, func(by float64) { jac[2*len(tr.t.Marks)+r.Rise] += by })
	}
}

// release adds the derivative by one vertex to those of its marks. A corner moves with the point of
// each straight at it, across that straight.
func (tr *trace) release(at int, g plane.Point, jac []float64) {
	add := func(place int, g plane.Point) {
		jac[2*place] += g.X
		jac[2*place+1] += g.Y
	}
	if at >= 0 {
		add(at, g)
		return
	}
	m := tr.t.Corners[-1-at].Meet
	a, b, c, d := tr.point(m[0]), tr.point(m[1]), tr.point(m[2]), tr.point(m[3])
	x, ok := plane.MeetLines(a, b, c, d)
	if !ok {
		add(m[1], g.Mul(0.5))
		add(m[2], g.Mul(0.5))
		return
	}
	u, v := b.Sub(a), d.Sub(c)
	s, t := x.Sub(a).Dot(u)/u.Dot(u), x.Sub(c).Dot(v)/v.Dot(v)
	nu, nv := u.Left(), v.Left()
	det := nu.Cross(nv)
	fu, fv := nu.Mul(g.Cross(nv)/det), nv.Mul(nu.Cross(g)/det)
	add(m[0], fu.Mul(1-s))
	add(m[1], fu.Mul(s))
	add(m[2], fv.Mul(1-t))
	add(m[3], fv.Mul(t))
}
