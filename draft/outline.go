package draft

import (
	"math"

	"brimline/plane"
	"brimline/survey"
)

// outline is a line of the result as geometry in metres.
type outline struct {
	name string
	line *survey.Line
	path plane.Path
	runs []run
	ring float64 // +1 closed and counter-clockwise, −1 closed and clockwise, 0 open

	derived bool // drawn beside another line by a stated step, and not measured itself
}

// run is a stretch of an outline with its pieces of the path.
type run struct {
	survey.LineRun
	segs []plane.Segment
}

// outlines gives the lines that have vertices.
func (j *job) outlines() []outline {
	var out []outline
	for _, n := range j.lines {
		l := j.result.Lines[n]
		path := pathOf(l)
		if len(path.Segs) == 0 {
			continue
		}
		o := outline{name: n, line: l, path: path, runs: runsOf(l, path), derived: l.From != ""}
		if l.Closed {
			o.ring = math.Copysign(1, path.Area())
		}
		out = append(out, o)
	}
	return out
}

// pathOf joins the vertices; the last vertex of an open line is its end.
func pathOf(l *survey.Line) plane.Path {
	n := len(l.Vertices)
	p := plane.Path{Closed: l.Closed}
	for i, v := range l.Vertices {
		if i+1 == n && !l.Closed {
			break
		}
		w := l.Vertices[(i+1)%n]
		s := plane.Segment{A: plane.Point{X: v.X, Y: v.Y}, B: plane.Point{X: w.X, Y: w.Y}, Bulge: v.Bulge}
		if s.A.Finite() && s.B.Finite() && s.A != s.B {
			p.Segs = append(p.Segs, s)
		}
	}
	return p
}

// runsOf deals the pieces of the path out to the runs; runs without pieces keep none.
func runsOf(l *survey.Line, p plane.Path) []run {
	var out []run
	at := 0
	for _, r := range l.Runs {
		n := min(max(r.Pieces, 0), len(p.Segs)-at)
		out = append(out, run{r, p.Segs[at : at+n]})
		at += n
	}
	return out
}

// outward is the unit vector that points out of the pool at a place of the path: to the right of
// a counter-clockwise ring; for an open line to its right.
func (o outline) outward(seg int, t float64) plane.Point {
	out := o.path.Segs[seg].Tangent(t).Left().Mul(-1)
	if o.ring < 0 {
		out = out.Mul(-1)
	}
	return out
}

// arc gives a run as one arc: false for other kinds, for arcs of nothing and for nearly whole
// circles, which no bulge can say.
func (r run) arc() (plane.Segment, bool) {
	if r.Kind != "arc" || len(r.segs) == 0 {
		return plane.Segment{}, false
	}
	sweep := 0.0
	for _, s := range r.segs {
		sweep += s.Sweep()
	}
	if math.Abs(sweep) < 1e-6 || math.Abs(sweep) > 350*math.Pi/180 {
		return plane.Segment{}, false
	}
	return plane.Segment{A: r.segs[0].A, B: r.segs[len(r.segs)-1].B, Bulge: math.Tan(sweep / 4)}, true
}

// middle is the place half-way along a run, with the direction of the run there.
func (r run) middle() (at, along plane.Point) {
	half := plane.Path{Segs: r.segs}.Length() / 2
	for _, s := range r.segs {
		if l := s.Length(); half > l {
			half -= l
		} else {
			t := half / l
			return s.At(t), s.Tangent(t)
		}
	}
	last := r.segs[len(r.segs)-1]
	return last.B, last.Tangent(1)
}

// place of a mark in metres; false where the readings do not fix it.
func (j *job) place(mark string) (plane.Point, bool) {
	m := j.result.Marks[mark]
	if m == nil || m.X == nil || m.Y == nil {
		return plane.Point{}, false
	}
	p := plane.Point{X: *m.X, Y: *m.Y}
	return p, p.Finite()
}

// kind of a mark as the result says, else as the book says.
func (j *job) kind(mark string) string {
	if m := j.result.Marks[mark]; m != nil && m.Kind != "" {
		return m.Kind
	}
	return j.book.Mark(mark).Kind
}

// pegs with a place, in order.
func (j *job) pegs() []string {
	var out []string
	for _, n := range j.marks {
		if _, ok := j.place(n); ok && j.kind(n) == "peg" {
			out = append(out, n)
		}
	}
	return out
}
