package survey

import (
	"context"
	"encoding/hex"
	"math"
	"slices"
	"sort"
	"strconv"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/finding"
	"brimline/locate"
	"brimline/mistake"
	"brimline/network"
	"brimline/outline"
	"brimline/plane"
	"brimline/unit"
)

// gather collects the stages' answers into a Result.
type gather struct {
	ctx     context.Context
	book    *fieldbook.Book
	net     *network.Network
	start   locate.Start
	sol     *adjust.Solution // without what is mistaken
	first   *adjust.Solution // of all readings
	rep     *mistake.Report
	lines   []*outline.Line // those with runs of their own
	derived map[string]*derived
	found   []finding.Finding
	datum   *adjust.Frame
	place   plane.Rigid  // inner datum → the book's frame
	factor  float64      // on standard deviations
	count   int          // readings proposed
	held    map[int]bool // marks that only a corrected length holds
	heldUp  map[int]bool // marks whose height only a corrected length holds
	upAt    float64      // what is added to heights in the book's frame
	upFrom  []network.Unknown
}

func (g *gather) result() *Result {
	r := &Result{Marks: map[string]*Mark{}, Lines: map[string]*Line{}, Setups: map[string]*Setup{}, Tools: map[string]Tool{},
		Walks: []struct{}{}, Next: []Next{}, Orders: []Order{}, Mistakes: []Mistake{}, Readings: []Reading{}, Findings: []Finding{}}
	r.Book.Name = g.book.Name
	if g.book.Hash != (fieldbook.Hash{}) {
		r.Book.SHA256 = hex.EncodeToString(g.book.Hash[:])
	}
	g.scaleless()
	g.settle()
	g.statistics(r)
	g.frame()
	g.heldMarks()
	g.marks(r)
	g.readings(r)
	g.mistakes(r)
	g.early(r)
	g.fitted(r)
	g.insideNose()
	g.beyond()
	g.otherWay(r)
	g.setups(r)
	g.levels(r)
	g.basin(r)
	g.shape(r)
	g.findings(r)
	return r
}

// scaleless: without a tie or an instrument that knows its scale the figure has no size.
func (g *gather) scaleless() {
	any := false
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if o.Use && !o.Upright && !o.Solve && !o.SolveScale && hasLength(o.Kind.Name()) {
			return
		}
		any = any || o.Use && !o.Upright
	}
	if any {
		g.found = append(g.found, finding.Finding{Code: "no-scale"})
	}
}

// hasLength says whether a kind of reading gives the figure a size.
func hasLength(kind string) bool { return !fieldbook.Angular(kind) && !fieldbook.Asserted(kind) }

func (g *gather) solved() bool { return g.sol.Rows > 0 }

// settle says by what the standard deviations are widened: only by a failed test on at least
// leastToScale redundant readings with nothing suspect or doubtful.
func (g *gather) settle() {
	const leastToScale = 20
	g.factor = 1
	s := g.sol
	if g.solved() && s.Redundancy >= leastToScale && s.Cost > s.ChiHigh && len(g.rep.Mistakes) == 0 {
		g.factor = s.ReferenceSD
	}
}

// statistics: standard deviations are widened only by a failed test on at least leastToScale
// redundant readings.
func (g *gather) statistics(r *Result) {
	s := g.sol
	st := &r.Statistics
	st.Readings, st.Unknowns, st.Redundancy, st.Iterations = s.Rows, s.Unknowns, s.Redundancy, s.Iterations
	st.ChiSquare = ChiSquare{Value: s.Cost, Pass: true}
	if s.Redundancy <= 0 || !g.solved() {
		return
	}
	st.ReferenceSD = some(s.ReferenceSD)
	st.ChiSquare.Low, st.ChiSquare.High = some(s.ChiLow), some(s.ChiHigh)
	st.ChiSquare.Pass = s.Cost >= s.ChiLow && s.Cost <= s.ChiHigh
	st.Scaled = g.factor > 1
}

func some(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// frame lays the figure on the places wanted: one sets the place, a second the direction, more
// are met by a rigid fit whose misfit is reported.
func (g *gather) frame() {
	g.place = plane.Still()
	if !g.solved() {
		return
	}
	g.datum = g.sol.InnerFrame()
	var marks []int
	var from, to []plane.Point
	for _, w := range g.net.Wanted {
		if p := g.sol.X.Point(w.Mark); !math.IsNaN(p.X) {
			marks, from, to = append(marks, w.Mark), append(from, p), append(to, w.At)
		}
	}
	switch {
	case len(marks) == 0:
		return
	case len(marks) == 1:
		g.datum = g.sol.HoldFrame(marks[0], -1)
		g.place = plane.Turned(0, to[0].Sub(from[0]))
		return
	case len(marks) == 2:
		g.datum = g.sol.HoldFrame(marks[0], marks[1])
		turn := plane.Angle(to[1].Sub(to[0])) - plane.Angle(from[1].Sub(from[0]))
		g.place = plane.Turned(turn, to[0].Sub(from[0].Turn(turn)))
	default:
		g.datum = g.sol.FitFrame(marks)
		if fit, ok := plane.FitRigid(from, to, nil); ok {
			g.place = fit
		}
	}
	worst, at, firm := 0.0, 0, 0.001
	for i := range from {
		c := g.datum.MarkCov(marks[i])
		major, _, _ := adjust.Axes(c[0], c[1], c[2])
		firm = math.Max(firm, adjust.WLimit*major)
		if d := g.place.Apply(from[i]).Dist(to[i]); d > worst {
			worst, at = d, i
		}
	}
	if worst > firm {
		g.found = append(g.found, finding.Finding{Code: "datum-misfit", Marks: []string{g.net.Marks[marks[at]]}, Figures: map[string]float64{"misfit": worst}})
	}
}

func (g *gather) marks(r *Result) {
	var h adjust.Hidden
	if g.solved() {
		h = g.datum.Hidden()
	}
	onLine := map[int]bool{}
	for _, l := range g.lines {
		for _, m := range l.Marks {
			onLine[m] = true
		}
	}
	for i, name := range g.net.Marks {
		m := &Mark{Alternatives: []Place{}, Kind: g.kindOf(i, name, onLine[i])}
		r.Marks[name] = m
		r.MarkOrder = append(r.MarkOrder, name)
		p := g.sol.X.Point(i)
		if math.IsNaN(p.X) || !g.solved() {
			continue
		}
		q := g.place.Apply(p)
		m.X, m.Y = some(still(q.X)), some(still(q.Y))
		g.trust(m, i)
		m.Controlled = h.Controlled[i] && len(g.rep.Other[i]) == 0 && !g.held[i]
		if m.Controlled {
			m.Hidden = some(still(h.Move[i]))
		}
		for _, o := range g.rep.Other[i] {
			q := g.place.Apply(o)
			m.Alternatives = append(m.Alternatives, Place{q.X, q.Y})
		}
		for _, o := range g.start.Other[i] {
			if a, ok := g.otherPlace(o); ok {
				m.Alternatives = append(m.Alternatives, a)
			}
		}
	}
	sort.SliceStable(r.MarkOrder, func(a, b int) bool {
		return (r.Marks[r.MarkOrder[a]].Kind == "peg") && (r.Marks[r.MarkOrder[b]].Kind != "peg")
	})
}

func (g *gather) kindOf(i int, name string, onLine bool) string {
	if k := g.book.Mark(name).Kind; k != "" {
		return k
	}
	switch {
	case onLine:
		return "rim"
	case g.net.Pegs[i]:
		return "peg"
	}
	return ""
}

// trust fills standard deviations and the 95 % ellipse in the book's frame.
func (g *gather) trust(m *Mark, i int) {
	c := g.datum.MarkCov(i)
	turn := g.place.Angle()
	s, k := math.Sincos(turn)
	xx := k*k*c[0] - 2*s*k*c[1] + s*s*c[2]
	yy := s*s*c[0] + 2*s*k*c[1] + k*k*c[2]
	xy := s*k*(c[0]-c[2]) + (k*k-s*s)*c[1]
	xx, yy = clean(xx), clean(yy)
	if xx == 0 || yy == 0 {
		xy = 0
	}
	m.SX, m.SY = some(g.factor*math.Sqrt(xx)), some(g.factor*math.Sqrt(yy))
	major, minor, bearing := adjust.Axes(xx, xy, yy)
	f := g.factor * adjust.Radius95
	deg := bearing * 180 / math.Pi
	if major > 0 { // the mark that holds the datum has none
		m.Ellipse95 = &Ellipse{Major: f * major, Minor: f * minor, Bearing: deg}
	}
}

// still turns the rounding noise of a coordinate that the datum holds into nought.
func still(v float64) float64 {
	if math.Abs(v) < 1e-12 {
		return 0
	}
	return v
}

// clean turns the rounding noise of a held coordinate into nought: below a nanometre.
func clean(variance float64) float64 {
	if variance < 1e-12 {
		return 0
	}
	return variance
}

// otherPlace brings a start coordinate's mirror image into the book's frame.
func (g *gather) otherPlace(p plane.Point) (Place, bool) {
	q, ok := g.inner(p)
	q = g.place.Apply(q)
	return Place{q.X, q.Y}, ok
}

// inner brings a start coordinate into the frame of the solution.
func (g *gather) inner(p plane.Point) (plane.Point, bool) {
	var from, to []plane.Point
	for m := range g.net.Marks {
		a, b := g.start.X.Point(m), g.sol.X.Point(m)
		if !math.IsNaN(a.X) && !math.IsNaN(b.X) {
			from, to = append(from, a), append(to, b)
		}
	}
	fit, ok := plane.FitRigid(from, to, nil)
	if !ok {
		return plane.Point{}, false
	}
	return fit.Apply(p), true
}

func (g *gather) setups(r *Result) {
	for i, name := range g.net.Setups {
		s := &Setup{Scale: 1}
		r.Setups[name] = s
		b := g.net.SetupBlock(i)
		if !g.solved() || !g.net.Placed(g.sol.X, b) {
			continue
		}
		at := g.net.Offset[b]
		p := g.place.Apply(plane.Point{X: g.sol.X[at], Y: g.sol.X[at+1]})
		turn := math.Remainder(g.sol.X[at+2]+g.place.Angle(), 2*math.Pi) * 180 / math.Pi
		s.X, s.Y, s.Turn = some(p.X), some(p.Y), some(turn)
		if g.net.Dim(b) == 4 {
			s.Scale = g.sol.X[at+3]
			s.ScaleSD = some(g.factor * g.sol.BlockSD(int(b), 3))
		}
	}
	for _, t := range g.book.Tools {
		tool := Tool{Zero: t.Zero, Scale: 1}
		if t.Scale != 0 {
			tool.Scale = t.Scale
		}
		g.tool(t.Name, &tool)
		r.Tools[t.Name] = tool
	}
}

// tool fills what was solved of a tool: sd is that of the zero where it was, else of the scale.
func (g *gather) tool(name string, t *Tool) {
	for i := range g.net.Free {
		f := &g.net.Free[i]
		b := g.net.FreeBlock(i)
		if f.Kind != "tool" || f.Name != name || !g.solved() || !g.net.Placed(g.sol.X, b) {
			continue
		}
		at := g.net.Offset[b]
		if f.Scale {
			t.Scale = g.sol.X[at+f.Size-1]
			t.SD = some(g.factor * g.sol.BlockSD(int(b), f.Size-1))
		}
		if f.Zero {
			t.Zero = g.sol.X[at]
			t.SD = some(g.factor * g.sol.BlockSD(int(b), 0))
		}
		if slices.Contains(g.sol.Held, i) {
			t.SD = nil
		}
	}
}

func (g *gather) feet() bool { return g.book.Units.Length == unit.FT || g.book.Units.Length == unit.IN }

func (g *gather) listed() []mistake.Hypothesis { return mistake.Listed(g.sol, g.book) }

// show prints a length in the book's unit, small ones in millimetres where that is metric.
func (g *gather) show() func(float64) string {
	switch u := g.book.Units.Length; u {
	case unit.FT, unit.IN:
		return func(v float64) string {
			if math.Abs(v) < small {
				return strconv.FormatFloat(v/0.0254, 'f', 2, 64) + " in"
			}
			return unit.StyleFor(u).LengthUnit(v)
		}
	}
	return func(v float64) string {
		switch {
		case math.Abs(v) < small:
			return strconv.FormatFloat(v*1000, 'f', 1, 64) + " mm"
		case math.Abs(v) < 1:
			return unit.Style{Form: unit.Millimetres}.LengthUnit(v)
		}
		return unit.Style{Form: unit.Metres}.LengthUnit(v)
	}
}

// small lengths in sentences are uncertainties and keep a decimal (metres).
const small = 0.1

func (g *gather) findings(r *Result) {
	g.found = lastOfLine(g.found)
	for _, f := range g.found {
		if b, ok := f.Figures["bearing"]; ok { // from the inner datum, in radians
			b = math.Mod(b-g.place.Angle()+3*math.Pi, math.Pi)
			f.Words["direction"] = adjust.Compass(b)
			f.Figures["bearing"] = b * degree
		}
	}
	finding.Sort(g.found)
	show := g.show()
	for _, f := range g.found {
		out := Finding{Code: f.Code, Severity: string(f.Severity()), Text: f.Text(show), Cure: f.Cure(show),
			Marks: f.Marks, Readings: f.Readings, Figures: map[string]float64{}}
		for _, l := range [](*[]string){&out.Marks, &out.Readings} {
			if *l == nil {
				*l = []string{}
			}
		}
		for k, v := range f.Figures { // order-free: one map is copied into another
			if !math.IsInf(v, 0) && !math.IsNaN(v) {
				out.Figures[k] = v
			}
		}
		r.Findings = append(r.Findings, out)
	}
}

// lastOfLine keeps one word about each line that waits for marks: the book names those that
// nothing reads, the fit later also those that the readings do not fix.
func lastOfLine(in []finding.Finding) []finding.Finding {
	last := map[string]int{}
	for i, f := range in {
		if f.Code == "line-unread" {
			last[f.Lines[0]] = i
		}
	}
	var out []finding.Finding
	for i, f := range in {
		if f.Code != "line-unread" || last[f.Lines[0]] == i {
			out = append(out, f)
		}
	}
	return out
}
