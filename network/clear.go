package network

import (
	"math"

	"brimline/fieldbook"
	"brimline/plane"
)

// Clear is the shortest level distance from a mark to a line, or to one derived from it: scale·
// distance + zero. The line is drawn as for Along; the rounding of an unreached corner counts as
// its point. Marks: the mark.
type Clear struct{}

// Name of the kind.
func (Clear) Name() string { return "clear" }

// Parts of its value.
func (Clear) Parts(*Obs) []string { return []string{"is"} }

// Touches the mark and those of the line, rises of arcs without inner marks, and the tool where it
// is solved.
func (Clear) Touches(o *Obs) []Unknown { return o.tracks() }

// Predict gives the distance.
func (Clear) Predict(x State, o *Obs, value, jac []float64) {
	clear(jac)
	tr := newTrace(o, x)
	d := tr.clearance(jac)
	tr.pull(jac)
	o.gauged(x, d, value, jac)
}

// Sigma from the book's table of defaults.
func (Clear) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("clear", "is", "", 0, 0) }

// piece is where a segment of the drawn line comes from: of a run the span, of a curve one of its
// two arcs.
type piece struct{ run, span, arc int }

// drawn is the line as a path, with where each segment comes from.
func (tr *trace) drawn() (plane.Path, []piece) {
	p := plane.Path{Closed: tr.t.Whole}
	var from []piece
	add := func(s plane.Segment, at piece) {
		if s.A != s.B {
			p.Segs, from = append(p.Segs, s), append(from, at)
		}
	}
	for i := range tr.runs {
		r := &tr.runs[i]
		n := len(r.pts)
		switch {
		case r.Kind == "arc":
			add(plane.Segment{A: r.pts[0], B: r.pts[n-1], Bulge: math.Tan(r.psi / 2)}, piece{run: i})
		case r.Kind == "straight":
			for k := r.First; k < r.Last; k++ {
				add(plane.Segment{A: r.pts[k%n], B: r.pts[(k+1)%n]}, piece{i, k % n, 0})
			}
		case r.bend != nil:
			for k := r.First; k < r.Last; k++ {
				if a, b, ok := r.bend.Span(k % n); ok {
					add(a, piece{i, k % n, 0})
					add(b, piece{i, k % n, 1})
				}
			}
		}
	}
	return p, from
}

// clearance is the distance of the reading's first mark, and leaves the derivatives by the line in
// the runs and those by the mark in jac. At the foot of the shortest way only moves along that way
// count.
func (tr *trace) clearance(jac []float64) float64 {
	path, from := tr.drawn()
	h := tr.point(0)
	f := path.Foot(h)
	if f.Seg < 0 {
		return 0
	}
	off := f.Right - tr.t.Outward*tr.hand
	sign := math.Copysign(1, off)
	n := h.Sub(f.At).Mul(1 / f.Right)
	if math.Abs(f.Right) < 1e-9 {
		n = path.Segs[f.Seg].Tangent(f.Share).Left().Mul(-1)
	}
	n = n.Mul(sign)
	jac[0] += n.X
	jac[1] += n.Y
	at := from[f.Seg]
	tr.footMoves(&tr.runs[at.run], at, f.Share, n.Mul(-1))
	return math.Abs(off)
}

// footMoves leaves the derivatives of a foot at share t of a piece, times g.
func (tr *trace) footMoves(r *traced, at piece, t float64, g plane.Point) {
	n := len(r.pts)
	p, q := at.span, (at.span+1)%n
	if r.Kind == "arc" {
		q = n - 1
	}
	v := r.pts[q].Sub(r.pts[p])
	var m, by plane.Point // the foot is p + m·v as complex numbers; how it moves with psi
	switch {
	case r.Kind == "straight":
		m = plane.Point{X: t}
	case r.Kind == "arc":
		m = alongArc(r.psi, t)
		by = alongArc(r.psi+1e-5, t).Sub(alongArc(r.psi-1e-5, t)).Mul(0.5e5)
		r.dPsi += g.Dot(times(by, v))
	default:
		foot, in, out := r.bend.SpanPlace(p, at.arc, t)
		m = over(foot.Sub(r.pts[p]), v)
		r.dTurn[p] += g.Dot(in)
		r.dTurn[q] += g.Dot(out)
		r.turnChord(p, q, -g.Dot(in)-g.Dot(out))
	}
	w := times(plane.Point{X: m.X, Y: -m.Y}, g)
	r.dPts[q] = r.dPts[q].Add(w)
	r.dPts[p] = r.dPts[p].Add(g).Sub(w)
}

// turnChord adds the derivative by the direction from one point of a run to another.
func (r *traced) turnChord(p, q int, by float64) {
	v := r.pts[q].Sub(r.pts[p])
	g := v.Left().Mul(by / v.Dot(v))
	r.dPts[p], r.dPts[q] = r.dPts[p].Sub(g), r.dPts[q].Add(g)
}

// alongArc is the place at share t of an arc of half sweep psi over the chord from 0 to 1.
func alongArc(psi, t float64) plane.Point {
	return plane.Segment{B: plane.Point{X: 1}, Bulge: math.Tan(psi / 2)}.At(t)
}

// times and over are the product and the quotient of points as complex numbers.
func times(a, b plane.Point) plane.Point {
	return plane.Point{X: a.X*b.X - a.Y*b.Y, Y: a.X*b.Y + a.Y*b.X}
}

func over(a, b plane.Point) plane.Point {
	return times(a, plane.Point{X: b.X, Y: -b.Y}).Mul(1 / b.Dot(b))
}
