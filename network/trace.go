package network

import (
	"math"

	"brimline/plane"
)

// trace is a track drawn at a state, and the derivatives of a figure of it on their way back to the
// marks: first by points, turns and directions of the runs, then (pull) by the marks.
type trace struct {
	t    *Track
	x    State
	o    *Obs
	hand float64 // +1 where the ring runs counter-clockwise, and along an open line
	runs []traced
}

// traced is one run drawn. Of an arc psi is half the sweep, positive to the left; in and out are
// the directions of travel at its ends, radians. Fields with d are derivatives by the others.
type traced struct {
	*TrackRun
	pts        []plane.Point
	bend       *plane.Bend
	psi        float64
	in, out    float64
	dIn, dOut  float64
	dPts       []plane.Point
	dPsi       float64
	dTurn      []float64 // curve: by the direction at each mark
	start, end int       // runs whose direction the curve takes over there, −1 none
}

func newTrace(o *Obs, x State) *trace {
	tr := &trace{t: o.Track, x: x, o: o, hand: handOf(o.Track.Ring, x), runs: make([]traced, len(o.Track.Runs))}
	for i := range tr.runs {
		r := &tr.runs[i]
		*r = traced{TrackRun: &o.Track.Runs[i], start: -1, end: -1}
		for _, at := range r.At {
			r.pts = append(r.pts, tr.vertex(at))
		}
		r.dPts = make([]plane.Point, len(r.pts))
		if r.Kind != "curve" {
			tr.stiff(r)
		}
	}
	for i := range tr.runs {
		if tr.runs[i].Kind == "curve" {
			tr.fair(i)
		}
	}
	return tr
}

// handOf is +1 where the marks of a ring run counter-clockwise, and where there is no ring.
func handOf(ring []int, x State) float64 {
	var pts []plane.Point
	for _, m := range ring {
		if p := x.Point(m); !math.IsNaN(p.X) {
			pts = append(pts, p)
		}
	}
	if plane.PolygonArea(pts) < 0 {
		return -1
	}
	return 1
}

// point of a place in the track's list of marks.
func (tr *trace) point(place int) plane.Point {
	at := tr.o.At[place]
	return plane.Point{X: tr.x[at], Y: tr.x[at+1]}
}

// vertex is a mark, or the corner where two straights meet; where they do not, midway between them.
func (tr *trace) vertex(at int) plane.Point {
	if at >= 0 {
		return tr.point(at)
	}
	m := tr.t.Corners[-1-at].Meet
	a, b, c, d := tr.point(m[0]), tr.point(m[1]), tr.point(m[2]), tr.point(m[3])
	if p, ok := plane.MeetLines(a, b, c, d); ok {
		return p
	}
	return plane.Lerp(b, c, 0.5)
}

// stiff draws a straight or an arc.
func (tr *trace) stiff(r *traced) {
	last := len(r.pts) - 1
	chord := plane.Angle(r.pts[last].Sub(r.pts[0]))
	if r.Kind == "arc" {
		r.psi, _ = tr.halfSweep(r, nil)
	}
	r.in, r.out = chord-r.psi, chord+r.psi
}

// fair draws a curve, tangent to its neighbours where the book says so.
func (tr *trace) fair(i int) {
	r := &tr.runs[i]
	r.dTurn = make([]float64, len(r.pts))
	var from, to *plane.Point
	if b := tr.beside(i, -1); !r.Loop && r.Tangent && b >= 0 && tr.runs[b].Kind != "curve" {
		d := plane.Point{X: 1}.Turn(tr.runs[b].out)
		r.start, from = b, &d
	}
	if a := tr.beside(i, 1); !r.Loop && a >= 0 && tr.runs[a].Tangent && tr.runs[a].Kind != "curve" {
		d := plane.Point{X: 1}.Turn(tr.runs[a].in)
		r.end, to = a, &d
	}
	b, ok := plane.FairBend(r.pts, r.Loop, from, to)
	if !ok {
		return
	}
	r.bend = b
	r.in, r.out = plane.Angle(b.Tangent(0)), plane.Angle(b.Tangent(len(r.pts)-1))
	if r.Loop {
		r.out = r.in
	}
}

// beside is the run before (−1) or after (+1) one in the track, −1 none.
func (tr *trace) beside(i, step int) int {
	n := len(tr.runs)
	switch j := i + step; {
	case j >= 0 && j < n:
		return j
	case tr.t.Whole && n > 1:
		return (j + n) % n
	}
	return -1
}

// halfSweep is half the sweep of an arc, in which its chord is seen from its marks: the mean of the
// turns at the inner marks (Euclid III.20), each with the weight of how exactly it tells it,
// (distance to one end × distance to the other)², or twice the angle of the rise read. For a run
// and a derivative dPsi by it, back adds the derivatives by the points and by the rise.
func (tr *trace) halfSweep(r *traced, back func(by float64)) (psi, rise float64) {
	a, b := r.pts[0], r.pts[len(r.pts)-1]
	if r.Rise >= 0 {
		return tr.risen(r, back)
	}
	sum, all := 0.0, 0.0
	for _, p := range r.pts[1 : len(r.pts)-1] {
		u, v := p.Sub(a), b.Sub(p)
		w := u.Dot(u) * v.Dot(v)
		sum, all = sum+w*plane.Between(u, v), all+w
	}
	if all == 0 {
		return 0, 0
	}
	psi = sum / all
	if back == nil {
		return psi, 0
	}
	last := len(r.pts) - 1
	for k, p := range r.pts[1:last] {
		u, v := p.Sub(a), b.Sub(p)
		uu, vv := u.Dot(u), v.Dot(v)
		if uu == 0 || vv == 0 {
			continue
		}
		w, off := uu*vv*r.dPsi/all, r.dPsi*(plane.Between(u, v)-psi)/all
		du := u.Left().Mul(-w / uu).Add(u.Mul(2 * vv * off))
		dv := v.Left().Mul(w / vv).Add(v.Mul(2 * uu * off))
		r.dPts[0] = r.dPts[0].Sub(du)
		r.dPts[last] = r.dPts[last].Add(dv)
		r.dPts[k+1] = r.dPts[k+1].Add(du).Sub(dv)
	}
	return psi, 0
}

// risen is half the sweep over a chord c with the rise h: 2·atan(2h/c), to the left where the arc
// bulges to the deck of a ring that runs counter-clockwise.
func (tr *trace) risen(r *traced, back func(by float64)) (psi, rise float64) {
	last := len(r.pts) - 1
	v := r.pts[last].Sub(r.pts[0])
	c := v.Len()
	h := tr.x[tr.o.At[len(tr.t.Marks)+r.Rise]]
	hand := tr.hand
	if r.Water {
		hand = -hand
	}
	if c == 0 {
		return 0, 0
	}
	if back != nil {
		s := r.dPsi * hand * 4 / (c*c + 4*h*h) // dψ/dh = 4c/(c² + 4h²), dψ/dc = −4h/(c² + 4h²)
		back(s * c)
		g := v.Mul(-s * h / c)
		r.dPts[0], r.dPts[last] = r.dPts[0].Sub(g), r.dPts[last].Add(g)
	}
	return hand * 2 * math.Atan(2*h/c), h
}
