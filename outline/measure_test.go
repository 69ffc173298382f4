package outline_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"brimline/adjust"
	"brimline/internal/simulate"
	"brimline/outline"
	"brimline/plane"
)

// sketch is a scene with unreached corners.
type sketch struct {
	*scene
	corners func(number func(string) int) []outline.Corner
}

// unreached is a rectangle of 8 × 4 of which one corner is rounded and one sharp, and neither reached.
func unreached() sketch {
	s := newScene(true)
	s.points(0, 0, 0, 4, 3, 4, 6, 4, 8, 3, 8, 1.4, 6, 0, 3, 0)
	s.run("straight", "", "r1", "r2")
	s.run("straight", "", "r2", "r3", "r4", "c1")
	s.run("straight", "", "c1", "r5", "r6", "c2")
	s.run("straight", "", "c2", "r7", "r8", "r1")
	return sketch{s, func(n func(string) int) []outline.Corner {
		return []outline.Corner{
			{Name: "c1", Meet: [2][2]int{{n("r3"), n("r4")}, {n("r5"), n("r6")}}, MeetNames: [2][2]string{{"r3", "r4"}, {"r5", "r6"}}, Sigma: 0.01},
			{Name: "c2", Meet: [2][2]int{{n("r5"), n("r6")}, {n("r7"), n("r8")}}, MeetNames: [2][2]string{{"r5", "r6"}, {"r7", "r8"}}, Round: 0.4, Sigma: 0.004},
		}
	}}
}

// lines of every kind of run, with open edges.
func measured() map[string]sketch {
	bowed := newScene(true)
	bowed.points(0, 0, 0, 4, 8, 4, 8, 0)
	bowed.run("straight", "", "r1", "r2")
	bowed.run("arc", "", "r2", "r3")
	bowed.run("straight", "", "r3", "r4")
	bowed.run("straight", "", "r4", "r1")
	bowed.bow("r2", "r3", 0.6, 0.003, "deck")
	curve := newScene(true)
	var ring []string
	for k := range 14 {
		a := 2 * math.Pi * float64(k) / 14
		n := string(rune('a' + k))
		curve.mark(n, plane.Point{X: 4 * math.Cos(a), Y: 2.5*math.Sin(a) + 0.3*math.Cos(2*a)}, usual)
		ring = append(ring, n)
	}
	curve.run("curve", "", append(ring, "a")...)
	loose := figure(simulate.Stadium(10, 5), 5)
	var names []string
	for _, r := range loose.runs {
		names = append(names, r.Names[:len(r.Names)-1]...)
	}
	loose.runs = nil
	loose.run("any", "", append(names, names[0])...)
	all := map[string]sketch{"open": {open(), nil}, "kidney": {figure(simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 3), nil},
		"L": {figure(bend(), 2), nil}, "bow": {bowed, nil}, "curve": {curve, nil}, "any": {loose, nil}, "unreached": unreached()}
	for _, s := range all { // order-free: each is given the same mark
		s.mark("P", plane.Point{X: 3.1, Y: -1.7}, usual)
	}
	return all
}

// fitted is the line of a scene with its solution. The edge at each mark stays open by 2 mm, but not at
// corners, where a mark counts to whichever side it falls on.
func (s sketch) fitted(t testing.TB) (*adjust.Solution, *outline.Line, *outline.Held) {
	t.Helper()
	sol := s.solution(t)
	l := s.through(sol)
	h := outline.Hold(l)
	if h == nil {
		t.Fatal("the line keeps no fit")
	}
	return sol, l, h
}

func (s sketch) through(sol *adjust.Solution) *outline.Line {
	edge := make([]float64, len(sol.Net.Marks))
	kinked := s.corners != nil || slices.ContainsFunc(s.runs, func(r outline.SpecRun) bool { return r.Joint == "kink" })
	for m := range edge {
		if !kinked {
			edge[m] = 0.002
		}
	}
	return s.fitWith(sol, edge)
}

func (s sketch) fitWith(sol *adjust.Solution, edge []float64) *outline.Line {
	spec := s.spec()
	if s.corners != nil {
		spec.Corners = s.corners(s.number)
	}
	l, _ := outline.Fit(sol, spec, edge)
	return l
}

// What the marks do to a line, put together mark by mark, is what its own covariance says.
func TestMarksAndLineAgree(t *testing.T) {
	for name, s := range measured() { // order-free: each line is judged alone
		_, l, _ := s.fitted(t)
		outline.MeasureAgrees(t, name, l)
	}
}

// asked are the figures of some points of a line: the distance between two, the length along, the
// distance of a peg. Points are told by shares of a whole length that is given.
func asked(sol *adjust.Solution, h *outline.Held, whole float64) (value [3]float64, m [3]*outline.Measure) {
	peg := slices.Index(sol.Net.Marks, "P")
	p, _ := h.Along(0.21 * whole)
	q, _ := h.Along(0.64 * whole)
	foot, _ := h.Foot(peg)
	last, _ := h.Foot(h.Line().Marks[len(h.Line().Marks)-2])
	for i := range m {
		m[i] = outline.NewMeasure(sol)
	}
	d := q.At.Sub(p.At)
	value[0] = d.Len()
	m[0].Spot(q, d.Unit())
	m[0].Spot(p, d.Unit().Mul(-1))
	value[1] = last.Along
	m[1].Along(last, 1, 0)
	away := sol.X.Point(peg).Sub(foot.At)
	value[2] = away.Len()
	m[2].Mark(peg, away.Unit())
	m[2].Spot(foot, away.Unit().Mul(-1))
	return value, m
}

// The derivatives by the marks are those of the line fitted anew through moved marks.
func TestMeasureAgainstRefit(t *testing.T) {
	for name, s := range measured() { // order-free: each line is judged alone
		sol, l, h := s.fitted(t)
		whole := l.Path.Length()
		_, m := asked(sol, h, whole)
		for _, mark := range append([]int{slices.Index(sol.Net.Marks, "P")}, h.Line().Marks...) {
			for axis, d := range []plane.Point{{X: 1e-4}, {Y: 1e-4}} {
				var both [2][3]float64
				for i, sign := range []float64{1, -1} {
					moved := *sol
					moved.X = append(moved.X[:0:0], sol.X...)
					moved.X.SetPoint(mark, sol.X.Point(mark).Add(d.Mul(sign)))
					both[i], _ = asked(&moved, outline.Hold(s.through(&moved)), whole)
				}
				for k := range m {
					got := m[k].Slope(mark)[axis]
					near(t, fmt.Sprint(name, ": slope of figure ", k, " by ", sol.Net.Marks[mark]), got, (both[0][k]-both[1][k])/2e-4, 0.01)
				}
			}
		}
	}
}

// In 95 of 100 noisy books a measure lies within 1.96 sd of the truth.
func TestMeasureCoverage(t *testing.T) {
	const n, seed = 1000, 20260515
	for _, c := range []string{"open", "kidney", "bow"} {
		s := measured()[c]
		sol, l, h := s.fitted(t)
		whole := l.Path.Length()
		want, _ := asked(sol, h, whole)
		r := rand.New(rand.NewPCG(seed, 2))
		in := [3]int{}
		for range n {
			sol := s.noisy(r).solution(t)
			l := s.fitWith(sol, make([]float64, len(sol.Net.Marks)))
			v, m := asked(sol, outline.Hold(l), whole)
			for i := range v {
				if sd, _, _ := m[i].Ask(); math.Abs(v[i]-want[i]) <= 1.959964*sd {
					in[i]++
				}
			}
		}
		for i, what := range []string{"level length", "along", "across"} {
			if share := float64(in[i]) / n; share < 0.93 || share > 0.97 {
				t.Errorf("%s: %s: %.1f %% of the truths within 95 %% (seed %d)", c, what, 100*share, seed)
			}
		}
	}
}

// Points of a rectangle lie where a rule would put them.
func TestSpots(t *testing.T) {
	_, l, h := sketch{figure(rect(8, 4), 1), nil}.fitted(t)
	near(t, "length", l.Path.Length(), 24, fine)
	a, _ := h.Along(0)
	b, _ := h.Along(24)
	near(t, "once round", a.At.Dist(b.At), 0, fine)
	c, _ := h.Along(12)
	near(t, "half way round", a.At.Dist(c.At), math.Hypot(8, 4), fine)
	near(t, "its length", c.Along, 12, fine)
	for _, m := range []float64{-0.001, 24.001, math.NaN(), math.Inf(1)} {
		if _, ok := h.Along(m); ok {
			t.Errorf("there is no point at %g", m)
		}
	}
	f, _ := h.Foot(l.Marks[3])
	near(t, "along to a middle", math.Mod(f.Along, 2), 0, fine)
	if _, ok := h.Foot(-1); ok {
		t.Error("no mark has a foot")
	}
}

// An unreached corner that is sharp is a point of the line; of one that is rounded there is none.
func TestMeasureCorner(t *testing.T) {
	sol, _, h := unreached().fitted(t)
	c, ok := h.Corner("c1")
	if !ok {
		t.Fatal("no corner c1")
	}
	near(t, "its place", c.At.Dist(plane.Point{X: 8, Y: 4}), 0, fine)
	m := outline.NewMeasure(sol)
	m.Spot(c, plane.Point{X: 1})
	if sd, _, _ := m.Ask(); !(sd > 0.008) {
		t.Errorf("sd %g of a corner that itself has 10 mm", sd)
	}
	for _, name := range []string{"c2", "c3"} {
		if _, ok := h.Corner(name); ok {
			t.Errorf("%s is a point", name)
		}
	}
}
