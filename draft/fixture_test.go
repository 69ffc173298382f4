package draft_test

import (
	"fmt"
	"math"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/survey"
	"brimline/unit"
)

// pool is a made-up measured pool: its path, the marks on it, and the pegs.
type pool struct {
	path  plane.Path
	kinds []string // of each segment: straight, arc
	marks []plane.Point
	names []string
	of    []int // the segment that each mark begins or lies on
	pegs  []plane.Point

	tangent []bool // how each kind begins; nil: all tangent
}

// rounded is a rectangle w by h with corner radii r, counter-clockwise from (x, y), with so many
// marks: each segment begins with one, the others are dealt out evenly.
func rounded(x, y, w, h, r float64, marks int, pegs ...plane.Point) pool {
	corner := math.Tan(math.Pi / 8)
	at := func(dx, dy float64) plane.Point { return plane.Point{X: x + dx, Y: y + dy} }
	pts := []plane.Point{at(r, 0), at(w-r, 0), at(w, r), at(w, h-r), at(w-r, h), at(r, h), at(0, h-r), at(0, r)}
	p := pool{path: plane.Path{Closed: true}, pegs: pegs}
	for i := range pts {
		s := plane.Segment{A: pts[i], B: pts[(i+1)%8]}
		kind := "straight"
		if i%2 == 1 {
			s.Bulge, kind = corner, "arc"
		}
		p.path.Segs, p.kinds = append(p.path.Segs, s), append(p.kinds, kind)
	}
	for i, s := range p.path.Segs {
		n := marks / 8
		if i < marks%8 {
			n++
		}
		for k := 0; k < n; k++ {
			p.marks = append(p.marks, s.At(float64(k)/float64(n)))
			p.names = append(p.names, fmt.Sprintf("r%d", len(p.marks)))
			p.of = append(p.of, i)
		}
	}
	return p
}

// many is a round pool with so many marks, one fair curve.
func many(marks int, pegs ...plane.Point) pool {
	p := pool{path: plane.Path{Closed: true}, pegs: pegs}
	centre := plane.Point{X: 4, Y: 6}
	for i := 0; i < marks; i++ {
		a, b := 2*math.Pi*float64(i)/float64(marks), 2*math.Pi*float64(i+1)/float64(marks)
		p.path.Segs = append(p.path.Segs, plane.Segment{
			A: centre.Add(plane.Point{X: 3.3}.Turn(a)), B: centre.Add(plane.Point{X: 3.3}.Turn(b)), Bulge: math.Tan((b - a) / 4)})
		p.marks = append(p.marks, p.path.Segs[i].A)
		p.names = append(p.names, fmt.Sprintf("r%d", i+1))
		p.of = append(p.of, i)
	}
	p.kinds = []string{"curve"}
	return p
}

func ref(x float64) *float64 { return &x }

// measured makes the book and the result that a solution of such a pool could have.
func measured(p pool, length unit.Unit) (*fieldbook.Book, *survey.Result) {
	b := &fieldbook.Book{Name: "larch.yaml", Units: fieldbook.Units{Length: length}}
	b.Job = fieldbook.Job{Name: "Larch Court", Ref: "26-114", Measured: "2026-05-14", By: "crew 2"}
	r := &survey.Result{Marks: map[string]*survey.Mark{}, Lines: map[string]*survey.Line{}}
	for i, q := range p.pegs {
		name := string(rune('A' + i))
		r.MarkOrder = append(r.MarkOrder, name)
		r.Marks[name] = &survey.Mark{X: ref(q.X), Y: ref(q.Y), SX: ref(0.001 * float64(i)), SY: ref(0), Kind: "peg", Controlled: true, Hidden: ref(0.004)}
		if i > 0 {
			r.Marks[name].Ellipse95 = &survey.Ellipse{Major: 0.004, Minor: 0.001, Bearing: 90}
		}
	}
	for i, q := range p.marks {
		k := float64(i)
		r.MarkOrder = append(r.MarkOrder, p.names[i])
		r.Marks[p.names[i]] = &survey.Mark{X: ref(q.X), Y: ref(q.Y), SX: ref(0.003), SY: ref(0.004), Kind: "rim", Controlled: i%5 != 0,
			Hidden: ref(0.02 + 0.001*math.Mod(k, 7)), Ellipse95: &survey.Ellipse{Major: 0.008 + 0.0003*math.Mod(k, 11), Minor: 0.005, Bearing: math.Mod(17*k, 180)}}
	}
	r.LineOrder = []string{"rim"}
	r.Lines["rim"] = outlineOf(p)
	readings(p, r)
	r.Statistics = survey.Statistics{Readings: len(r.Readings) - 1, Unknowns: len(r.Readings) - 10, Redundancy: 9, ReferenceSD: ref(1.04),
		ChiSquare: survey.ChiSquare{Value: 9.7, Low: ref(2.7), High: ref(19), Pass: true}}
	r.Shape = survey.Shape{State: "unproven", Tolerance: 0.025, Worst: ref(0.011), At: "r7", Why: []string{"mistakes that people make have not been ruled out yet"}}
	return b, r
}

// outlineOf makes the line of a pool: a run a segment, or one curve.
func outlineOf(p pool) *survey.Line {
	l := &survey.Line{Closed: true, Edge: "nose", Length: ref(p.path.Length()), LengthSD: ref(0.008), Area: ref(p.path.Area()), AreaSD: ref(0.04), Inferred: ref(0)}
	for _, s := range p.path.Segs {
		l.Vertices = append(l.Vertices, survey.Vertex{X: s.A.X, Y: s.A.Y, Bulge: s.Bulge})
	}
	if len(p.kinds) == 1 {
		l.Runs = []survey.LineRun{{Kind: "curve", From: "r1", To: "r1", Length: p.path.Length(), LengthSD: 0.008, Pieces: len(p.path.Segs)}}
		return l
	}
	first := make([]string, len(p.path.Segs))
	for i := len(p.marks) - 1; i >= 0; i-- {
		first[p.of[i]] = p.names[i]
	}
	for i, s := range p.path.Segs {
		run := survey.LineRun{Kind: p.kinds[i], From: first[i], To: first[(i+1)%len(first)], Length: s.Length(), LengthSD: 0.004, Joint: "tangent", Pieces: 1}
		if run.Kind == "arc" {
			c := s.Centre()
			run.Radius, run.RadiusSD, run.Centre = ref(math.Abs(s.Radius())), ref(0.006), &[2]float64{c.X, c.Y}
			run.Sweep, run.SweepSD = ref(s.Sweep()*180/math.Pi), ref(0.3)
		}
		if p.tangent != nil && !p.tangent[i] {
			run.Joint, run.Turn = "kink", ref(turnAt(p.path, i))
		}
		l.Runs = append(l.Runs, run)
	}
	return l
}

// turnAt is the angle in degrees by which a ring turns where a segment begins.
func turnAt(p plane.Path, i int) float64 {
	before := p.Segs[(i+len(p.Segs)-1)%len(p.Segs)].Tangent(1)
	return plane.Between(before, p.Segs[i].Tangent(0)) * 180 / math.Pi
}

// readings are ties from each peg to each mark, the third one struck.
func readings(p pool, r *survey.Result) {
	n := 0
	for i, q := range p.marks {
		for k, peg := range p.pegs {
			n++
			d := peg.Dist(q)
			res := 0.0005 * float64(n%9-4)
			state := "good"
			if n%6 == 0 {
				state = "lone"
			}
			x := survey.Reading{N: fmt.Sprint(n), Kind: "tie", Marks: []string{string(rune('A' + k)), p.names[i]}, Tool: "tape", Value: d - res,
				Text: fmt.Sprintf("%.3f", d-res), Adjusted: ref(d), Residual: ref(res), SD: 0.005, W: ref(res / 0.003), Redundancy: ref(0.31), Detectable: ref(0.037), State: state}
			if n == 3 {
				x.State, x.Why = "struck", "wrong peg"
			}
			r.Readings = append(r.Readings, x)
		}
	}
}

// fixtures are the pools that the laws of the drawing are tested on.
func fixtures() []fixture {
	a, b, c := plane.Point{}, plane.Point{X: 7}, plane.Point{X: 5, Y: 9}
	out := []fixture{
		make24(rounded(1, 2.5, 9, 5, 1.2, 24, a, b, c)),
		makeOf("60 marks in feet", rounded(1, 2.5, 9.144, 4.572, 1.2, 60, a, b), unit.FT),
		makeOf("120 marks", many(120, a, b, plane.Point{X: 4, Y: 11}), unit.M),
		makeOf("small corners in millimetres", rounded(1, 2.5, 9, 5, 0.15, 16, a, b), unit.MM),
	}
	return out
}

type fixture struct {
	name   string
	book   *fieldbook.Book
	result *survey.Result

	heights draft.Heights
}

func makeOf(name string, p pool, u unit.Unit) fixture {
	b, r := measured(p, u)
	return fixture{name: name, book: b, result: r}
}

// make24 is the full one: ends, house, north, a benchmark, findings, gaps, another place of a mark,
// a mark without a place, a kink.
func make24(p pool) fixture {
	f := makeOf("24 marks", p, unit.M)
	f.book.Place = fieldbook.Place{Shallow: "r17", Deep: "r7", House: []string{"h1", "h2"}, NorthLine: [2]string{"A", "B"}, NorthBearing: 0.7}
	for i, q := range []plane.Point{{X: 11.4, Y: 3}, {X: 11.4, Y: 7}} {
		n := fmt.Sprintf("h%d", i+1)
		f.result.Marks[n] = &survey.Mark{X: ref(q.X), Y: ref(q.Y), SX: ref(0.005), SY: ref(0.005), Kind: "feature", Controlled: true}
		f.result.MarkOrder = append(f.result.MarkOrder, n)
	}
	f.result.Marks["k1"] = &survey.Mark{X: ref(3), Y: ref(8.6), Kind: "benchmark"}
	f.result.Marks["d9"] = &survey.Mark{Kind: "deck"}
	f.result.MarkOrder = append(f.result.MarkOrder, "k1", "d9")
	f.result.Marks["r4"].Alternatives = []survey.Place{{X: *f.result.Marks["r4"].X, Y: *f.result.Marks["r4"].Y - 0.8}}
	f.result.Lines["rim"].Gaps = []survey.Gap{{From: "r13", To: "r14"}, {From: "r23", To: "r1"}}
	f.result.Lines["rim"].Inferred = ref(1.4)
	f.result.Lines["rim"].Runs[2].Joint, f.result.Lines["rim"].Runs[2].Turn = "kink", ref(3.2)
	f.result.Findings = []survey.Finding{
		{Code: "mirror", Severity: "ask", Text: "the readings leave open on which side r4 lies", Cure: "tape r4 to r16"},
		{Code: "chi-low", Severity: "note", Text: "not on the plan"},
	}
	return f
}
