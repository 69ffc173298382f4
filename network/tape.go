package network

import (
	"math"

	"brimline/plane"
)

// taped is the length of the stretch, along the line or along its parallel, and leaves the
// derivatives in the runs. A parallel at d on the right is longer by d times the turn to the left
// (J. Steiner, Über parallele Flächen, 1840); about a corner it turns on an arc on the outside and
// is cut at the meeting on the inside.
func (tr *trace) taped() float64 {
	d := tr.t.Outward * tr.hand
	sum := 0.0
	before := -1
	first := -1
	for i := range tr.runs {
		r := &tr.runs[i]
		if !r.In {
			continue
		}
		switch r.Kind {
		case "straight":
			sum += r.straightLength()
		case "arc":
			sum += r.arcLength(d)
		default:
			sum += r.curveLength(d)
		}
		if before >= 0 {
			sum += tr.joint(before, i, d)
		} else {
			first = i
		}
		before = i
	}
	if tr.t.Whole && first >= 0 && !tr.runs[first].Loop {
		sum += tr.joint(before, first, d)
	}
	return sum
}

// straightLength is from mark to mark.
func (r *traced) straightLength() float64 {
	sum := 0.0
	n := len(r.pts)
	for k := r.First; k < r.Last; k++ {
		p, q := k%n, (k+1)%n
		v := r.pts[q].Sub(r.pts[p])
		sum += v.Len()
		r.dPts[p], r.dPts[q] = r.dPts[p].Sub(v.Unit()), r.dPts[q].Add(v.Unit())
	}
	return sum
}

// curveLength is that of the fair curve's spans, and of their parallel.
func (r *traced) curveLength(d float64) float64 {
	if r.bend == nil {
		return 0
	}
	sum := 0.0
	n := len(r.pts)
	for k := r.First; k < r.Last; k++ {
		p, q := k%n, (k+1)%n
		l, in, out := r.bend.SpanLength(p)
		v := r.pts[q].Sub(r.pts[p])
		c := v.Len()
		if c == 0 {
			continue
		}
		sum += l + d*plane.Between(r.bend.Tangent(p), r.bend.Tangent(q))
		r.dTurn[p] += in - d
		r.dTurn[q] += out + d
		g := v.Mul(l / (c * c)).Sub(v.Left().Mul((in + out) / (c * c)))
		r.dPts[p], r.dPts[q] = r.dPts[p].Sub(g), r.dPts[q].Add(g)
	}
	return sum
}

// arcLength is the length of an arc between two of its marks, and of its parallel.
func (r *traced) arcLength(d float64) float64 {
	return r.arcTo(r.Last, d, 1) + r.arcTo(r.First, d, -1)
}

// arcTo is sign times the way from the start of an arc to the foot of one of its marks. The chord to
// the nearer end tells how far it is: a = 2R·sin of half the sweep.
func (r *traced) arcTo(place int, d, sign float64) float64 {
	last := len(r.pts) - 1
	switch place {
	case 0:
		return 0
	case last:
		return r.arcWhole(d, sign)
	}
	a, b := r.pts[place].Dist(r.pts[0]), r.pts[last].Dist(r.pts[place])
	if a <= b {
		return r.arcPart(0, place, d, sign)
	}
	return r.arcWhole(d, sign) + r.arcPart(place, last, d, -sign)
}

// arcWhole is sign times the length c·ψ/sin ψ of the arc, and d times its turn 2ψ.
func (r *traced) arcWhole(d, sign float64) float64 {
	last := len(r.pts) - 1
	v := r.pts[last].Sub(r.pts[0])
	c := v.Len()
	ratio, slope := overSine(r.psi)
	u := v.Unit().Mul(sign * ratio)
	r.dPts[0], r.dPts[last] = r.dPts[0].Sub(u), r.dPts[last].Add(u)
	r.dPsi += sign * (c*slope + 2*d)
	return sign * (c*ratio + 2*d*r.psi)
}

// arcPart is the same between two marks on one circle with the arc: over the chord a the sweep is
// 2·asin(aκ/2) with the curvature κ = 2·sin ψ/c.
func (r *traced) arcPart(p, q int, d, sign float64) float64 {
	last := len(r.pts) - 1
	v, w := r.pts[q].Sub(r.pts[p]), r.pts[last].Sub(r.pts[0])
	a, c := v.Len(), w.Len()
	if a == 0 || c == 0 {
		return 0
	}
	sin, cos := math.Sincos(r.psi)
	s := math.Max(-0.999, math.Min(0.999, a/c*sin))
	half := math.Asin(s)
	ratio, slope := overSine(half)
	slope += 2 * d / a                      // length and turn together, by half
	by := sign * a * slope / math.Cos(half) // by s
	va, wc := v.Mul(sign*ratio/a).Add(v.Mul(by*sin/(c*a))), w.Mul(-by*a*sin/(c*c*c))
	r.dPts[p], r.dPts[q] = r.dPts[p].Sub(va), r.dPts[q].Add(va)
	r.dPts[0], r.dPts[last] = r.dPts[0].Sub(wc), r.dPts[last].Add(wc)
	r.dPsi += by * a / c * cos
	return sign * (a*ratio + 2*d*half)
}

// overSine is x/sin x and its derivative, held short of a full turn.
func overSine(x float64) (v, slope float64) {
	if math.Abs(x) < 1e-4 {
		return 1 + x*x/6, x / 3
	}
	x = math.Max(-3, math.Min(3, x))
	s, c := math.Sincos(x)
	return x / s, (s - x*c) / (s * s)
}

// mostTurn keeps the parallel of a hairpin finite.
const mostTurn = 2.9

// leastMitre is the cosine of half the turn from which a sharp corner is rounded all the same, as
// plane's parallels are: a limit of 4.
const leastMitre = 1.0 / 4

// lost says that a curve has all its marks on one place and no direction.
func (r *traced) lost() bool { return r.Kind == "curve" && r.bend == nil }

// joint is what the turn from run i to run j adds to the length of a parallel at d, and what the
// rounding of an unreached corner takes off the line: an arc of radius ρ instead of the corner is
// shorter by ρ(2·tan(φ/2) − φ).
func (tr *trace) joint(i, j int, d float64) float64 {
	p, q := &tr.runs[i], &tr.runs[j]
	if p.lost() || q.lost() {
		return 0
	}
	phi := math.Remainder(q.in-p.out, 2*math.Pi)
	phi = math.Max(-mostTurn, math.Min(mostTurn, phi))
	round := 0.0
	if at := q.At[0]; at < 0 {
		round = tr.t.Corners[-1-at].Round
	}
	sign := math.Copysign(1, phi)
	t := math.Tan(phi / 2)
	inside := d*phi < 0
	add, slope := 0.0, 0.0
	switch {
	case d == 0, round > 0 && !(inside && math.Abs(d) > round):
		add, slope = d*phi, d
	case inside || tr.t.Mitre && math.Cos(phi/2) > leastMitre:
		add, slope = 2*d*t, d*(1+t*t)
		round = 0
	default:
		add, slope = d*phi, d
		round = 0
	}
	add -= round * (2*math.Abs(t) - math.Abs(phi))
	slope -= round * sign * t * t
	q.dIn += slope
	p.dOut -= slope
	return add
}
