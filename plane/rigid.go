package plane

import "math"

// Rigid turns by the angle with cosine C and sine S, then shifts by T. The zero value is no
// movement at all but collapses the plane: use Still.
type Rigid struct {
	C, S float64
	T    Point
}

// Still moves nothing.
func Still() Rigid { return Rigid{C: 1} }

// Turned turns by angle about the origin, then shifts by t.
func Turned(angle float64, t Point) Rigid {
	s, c := math.Sincos(angle)
	return Rigid{c, s, t}
}

// Apply moves a place.
func (r Rigid) Apply(p Point) Point { return r.ApplyVec(p).Add(r.T) }

// ApplyVec turns a direction.
func (r Rigid) ApplyVec(v Point) Point {
	return Point{r.C*v.X - r.S*v.Y, r.S*v.X + r.C*v.Y}
}

// Inverse undoes r.
func (r Rigid) Inverse() Rigid {
	back := Rigid{C: r.C, S: -r.S}
	back.T = back.ApplyVec(r.T).Mul(-1)
	return back
}

// Then is r followed by next.
func (r Rigid) Then(next Rigid) Rigid {
	turn := next.ApplyVec(Point{r.C, r.S})
	return Rigid{turn.X, turn.Y, next.Apply(r.T)}
}

// Angle is the turn, counter-clockwise, in (−π, π].
func (r Rigid) Angle() float64 { return math.Atan2(r.S, r.C) }

// Similarity multiplies by Scale, turns, then shifts.
type Similarity struct {
	Scale float64
	Rigid Rigid
}

// Apply moves a place.
func (s Similarity) Apply(p Point) Point { return s.Rigid.Apply(p.Mul(s.Scale)) }

// FitRigid is the movement without scale or mirror that brings from nearest to to, the sum of
// w·distance² being least; w nil means equal weights. ok is false where the turn is not
// determined (fewer than two distinct points of weight, or lists of unequal length); the
// result is then the shift between the weighted means, or Still without any weight.
// Closed form: the turn is the angle of Σ w·(dot, cross) of the centred pairs (plane case of
// B. K. P. Horn, Closed-form solution of absolute orientation, J. Opt. Soc. Am. A 4, 1987).
func FitRigid(from, to []Point, w []float64) (Rigid, bool) {
	m, ok := momentsOf(from, to, w)
	if !ok {
		return Rigid{C: 1, T: m.to.Sub(m.from)}, false
	}
	h := math.Hypot(m.dot, m.cross)
	r := Rigid{C: m.dot / h, S: m.cross / h}
	r.T = m.to.Sub(r.ApplyVec(m.from))
	return r, true
}

// FitSimilarity is FitRigid with a scale, the distances being taken in the frame of to.
func FitSimilarity(from, to []Point, w []float64) (Similarity, bool) {
	m, ok := momentsOf(from, to, w)
	if !ok {
		return Similarity{1, Rigid{C: 1, T: m.to.Sub(m.from)}}, false
	}
	h := math.Hypot(m.dot, m.cross)
	s := Similarity{h / m.spread, Rigid{C: m.dot / h, S: m.cross / h}}
	s.Rigid.T = m.to.Sub(s.Rigid.ApplyVec(m.from.Mul(s.Scale)))
	return s, true
}

// moments of two lists of points about their weighted means.
type moments struct {
	from, to           Point   // means
	dot, cross, spread float64 // Σ w·(f·t), Σ w·(f×t), Σ w·|f|²
}

func momentsOf(from, to []Point, w []float64) (m moments, ok bool) {
	if len(from) != len(to) || (w != nil && len(w) != len(from)) || len(from) == 0 {
		return m, false
	}
	weight := func(i int) float64 {
		if w == nil {
			return 1
		}
		return w[i]
	}
	sum := 0.0
	for i := range from { // differences from the first pair keep the figures of far coordinates
		sum += weight(i)
		m.from = m.from.Add(from[i].Sub(from[0]).Mul(weight(i)))
		m.to = m.to.Add(to[i].Sub(to[0]).Mul(weight(i)))
	}
	if !(sum > 0) {
		return moments{}, false
	}
	m.from = m.from.Mul(1 / sum).Add(from[0])
	m.to = m.to.Mul(1 / sum).Add(to[0])
	far := 0.0
	for i := range from {
		f, t := from[i].Sub(m.from), to[i].Sub(m.to)
		m.dot += weight(i) * f.Dot(t)
		m.cross += weight(i) * f.Cross(t)
		m.spread += weight(i) * f.Dot(f)
		far += weight(i) * t.Dot(t)
	}
	// Cauchy–Schwarz bounds the moment by √(spread·far); far below that no turn is told.
	return m, math.Hypot(m.dot, m.cross) > 1e-12*math.Sqrt(m.spread*far) && m.spread > 0 && far > 0
}
