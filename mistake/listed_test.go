package mistake_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/mistake"
	"brimline/plane"
)

// listedOf is what could still be wrong in a book of four pegs with an offset, an angle, a check that
// agrees and one that does not, and the answer itself.
func listedOf(t *testing.T) (answer, []mistake.Hypothesis) {
	c := newCourt(4, 6, 0.001)
	c.pegs("A B C D")
	c.rows("A B C D")
	c.read("r1", "r4", ", check: true, tool: reel")
	c.tapes[c.read("r2", "r5", ", check: true")].is += 2
	c.read("r1", "r3", ", tool: reel")
	c.read("r3", "r5", ", tool: reel")
	p := c.at["r2"]
	a := ask(t, insert(c.text(tapeOf5), fmt.Sprintf("- {offset: r2, line: B A, at: %.3f, right: %.3f}\n- {turn: B C, at: A, is: %.4f}\n",
		c.at["B"].X-p.X, p.Y, 360-180/math.Pi*math.Atan2(9.2, 9.4))))
	return a, mistake.Listed(a.Solution, a.book)
}

// Each listed size is written minus true: what it leaves is a length that the mistake turns into
// the one written, with a share of the code's odds; both hands of an offset count alike.
func TestListedSizes(t *testing.T) {
	a, all := listedOf(t)
	i := a.of(t, "A r2")
	o := &a.net.Obs[i]
	text := a.book.Readings[o.Reading].Values[0].Text
	for _, k := range mistake.Misreadings {
		var want, got []float64
		for _, w := range k.True(text, o.Values[0], a.book.Units.Length) {
			want = append(want, o.Values[0]-w.Metres)
		}
		share := 0.0
		for _, h := range all {
			if h.Code == k.Code() && len(h.Parts) == 1 && h.Parts[0] == a.first.First[i] {
				got = append(got, h.Size[0])
				share += math.Exp(h.LnPrior)
			}
		}
		same(t, text+": sizes of "+k.Code(), got, want)
		if len(want) > 0 {
			near(t, k.Code()+": odds", share, oddsOf(t, k.Code()), 1e-12)
		}
	}
	left := a.of(t, "r2 B A") // to the right of B to A: negative
	p := a.first.First[left] + 1
	if v := a.net.Obs[left].Values[1]; v >= 0 {
		t.Fatalf("the offset is %g", v)
	}
	metres := 0
	for _, h := range all {
		if h.Code == "metre" && h.Parts[0] == p {
			metres++
			if math.Abs(math.Abs(h.Size[0])-1) > 1e-9 {
				t.Errorf("an offset a metre wrong: %g", h.Size[0])
			}
		}
		if h.Code == "feet-metres" && h.Parts[0] == p {
			near(t, "an offset in feet", h.Size[0], a.net.Obs[left].Values[1]*(1-0.3048), 1e-9)
		}
	}
	if metres != 2 {
		t.Errorf("an offset can be a metre wrong in %d ways", metres)
	}
}

func oddsOf(t *testing.T, code string) float64 {
	t.Helper()
	for _, p := range mistake.Priors {
		if p.Code == code {
			return p.Odds
		}
	}
	t.Fatalf("no prior of %s", code)
	return 0
}

// What speaks for the solution is listed, and nothing else: no angle, no check that disagrees, no
// reading left out.
func TestListedReadings(t *testing.T) {
	a, all := listedOf(t)
	has := map[string]bool{}
	for _, h := range all {
		if len(h.Parts) != len(h.Size) || math.IsNaN(h.LnPrior) || h.LnPrior >= 0 || h.Cause == "" {
			t.Errorf("%+v", h)
		}
		for k, p := range h.Parts {
			has[a.name(a.first.ObsOf(p))] = true
			if h.Size[k] == 0 {
				t.Errorf("%s of no size in %s", h.Code, a.name(a.first.ObsOf(p)))
			}
		}
	}
	for name, want := range map[string]bool{"A r2": true, "A B": true, "r2 B A": true, "r1 r4": true, "r1 r3": true, "r2 r5": false, "B A C": false} {
		if a.of(t, name); has[name] != want {
			t.Errorf("%s is listed: %v", name, has[name])
		}
	}
	wrong := newCourt(4, 6, 0.001)
	wrong.pegs("A B C D")
	wrong.rows("A B C D")
	wrong.tie("A", "r2").is++
	b := ask(t, wrong.text(tapeOf5))
	i := b.of(t, "A r2")
	if b.State[i] != mistake.Suspect {
		t.Fatalf("the metre is not found: %s", b.told())
	}
	for _, h := range mistake.Listed(b.Solution, b.book) {
		if slices.Contains(h.Parts, b.first.First[i]) {
			t.Errorf("a reading left out is listed: %+v", h)
		}
	}
}

// Groups: two columns swapped in a row change each length into the other; the zero of a tape is common
// to its tapes, of four sizes; a peg kicked half-way moves along each of its later tapes.
func TestListedGroups(t *testing.T) {
	a, all := listedOf(t)
	value := func(p int) float64 { i := a.first.ObsOf(p); return a.net.Obs[i].Values[p-a.first.First[i]] }
	count := map[string]int{}
	zeros := map[string][]float64{}
	for _, h := range all {
		count[h.Code]++
		switch h.Code {
		case "columns":
			p, q := h.Parts[0], h.Parts[1]
			near(t, "columns", h.Size[0], value(p)-value(q), 1e-12)
			near(t, "columns", h.Size[1], value(q)-value(p), 1e-12)
			if m, n := a.net.Obs[a.first.ObsOf(p)].Marks, a.net.Obs[a.first.ObsOf(q)].Marks; m[1] != n[1] || m[0] == n[0] {
				t.Errorf("columns swapped in different rows: %v and %v", m, n)
			}
		case "tape-zero":
			tool := a.book.Readings[a.net.Obs[a.first.ObsOf(h.Parts[0])].Reading].Tool
			zeros[tool] = append(zeros[tool], h.Size[0])
			for k, p := range h.Parts {
				if got := a.book.Readings[a.net.Obs[a.first.ObsOf(p)].Reading].Tool; got != tool || h.Size[k] != h.Size[0] {
					t.Errorf("the zero of %s in a tape of %s: %g and %g", tool, got, h.Size[k], h.Size[0])
				}
			}
		case "peg-moved":
			a.kicked(t, h)
		}
	}
	for tool, want := range map[string]int{"tape": 4, "reel": 4} {
		if got := zeros[tool]; len(got) != want {
			t.Errorf("zeros of %s: %v", tool, got)
		} else {
			same(t, "zeros of "+tool, got, []float64{0.1, -0.1, 1, -1})
		}
	}
	if count["peg-moved"] != 16 || count["columns"] < 30 {
		t.Errorf("listed: %v", count)
	}
}

// kicked fails unless a hypothesis moves one peg by 100 mm along one axis, as each of its tapes sees
// it: what is written is longer where the peg moved away from the mark.
func (a answer) kicked(t *testing.T, h mistake.Hypothesis) {
	t.Helper()
	peg := -1
	for m := range a.net.Marks {
		all := true
		for _, p := range h.Parts {
			all = all && slices.Contains(a.net.Obs[a.first.ObsOf(p)].Marks, m)
		}
		if all {
			peg = m
		}
	}
	if peg < 0 {
		t.Errorf("no peg is in all of %v", h.Parts)
		return
	}
	for _, d := range []plane.Point{{X: 0.1}, {X: -0.1}, {Y: 0.1}, {Y: -0.1}} {
		worst := 0.0
		for k, p := range h.Parts {
			o := &a.net.Obs[a.first.ObsOf(p)]
			far := a.first.X.Point(o.Marks[0] + o.Marks[1] - peg)
			at := a.first.X.Point(peg)
			worst = math.Max(worst, math.Abs(at.Add(d).Dist(far)-at.Dist(far)-h.Size[k]))
		}
		if worst < 0.002 { // the curvature of a tape over 100 mm
			return
		}
	}
	t.Errorf("%s: the sizes %v are no move of 100 mm along an axis", a.net.Marks[peg], h.Size)
}
