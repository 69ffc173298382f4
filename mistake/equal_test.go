package mistake_test

import (
	"math"
	"slices"
	"sort"
	"testing"

	"brimline/mistake"
	"brimline/plane"
)

const tapeOf2 = "tools: {tape: {sigma: 2 mm}}\n"

// threePegs is a court of three pegs and nothing else, in which the tape B r3 is off by so much.
func threePegs(seed uint64, off float64) (*court, *tape) {
	c := newCourt(seed, 6, 0.001)
	c.at["B"], c.at["C"] = plane.Point{X: 8.3, Y: -0.4}, plane.Point{X: 9.9, Y: 8.1}
	c.pegs("A B C")
	c.rows("A B C")
	t := c.tie("B", "r3")
	t.is += off
	return c, t
}

// Three pegs and nothing else: the three tapes of a mark have one |w|. Without a human size they are a
// doubtful group of exactly these, of which one is left out; the mark may be where each two of the
// three put it.
func TestEqualTestsAreDoubtful(t *testing.T) {
	tried := 0
	for seed := range uint64(40) {
		c, _ := threePegs(seed, 0.23+0.017*float64(seed))
		a := ask(t, c.text(tapeOf2))
		ties := []int{a.of(t, "A r3"), a.of(t, "B r3"), a.of(t, "C r3")}
		w := func(i int) float64 { return math.Abs(a.first.W[a.first.First[i]]) }
		near(t, "|w| of the second", w(ties[1]), w(ties[0]), 0.02*w(ties[0]))
		near(t, "|w| of the third", w(ties[2]), w(ties[0]), 0.02*w(ties[0]))
		if listed(a, ties) {
			continue // one of the three has a human size by chance
		}
		tried++
		if len(a.in(mistake.Suspect)) > 0 || len(a.Groups) != 1 || !slices.Equal(a.Groups[0].Obs, ties) {
			t.Errorf("seed %d: suspect %v, groups %v, %s", seed, a.in(mistake.Suspect), a.Groups, a.told())
			continue
		}
		sum := 0.0
		for k, i := range ties {
			if a.State[i] != mistake.Doubtful || a.Group[i] != 1 {
				t.Errorf("seed %d: %s is %v of group %d", seed, a.name(i), a.State[i], a.Group[i])
			}
			sum += a.Groups[0].Chance[k]
		}
		if sum < 0.97 || sum > 1.5 { // two of them wrong at once counts for both
			t.Errorf("seed %d: the chances of the group sum to %.3f", seed, sum)
		}
		m := a.net.ByName["r3"]
		got := append([]plane.Point{a.Solution.X.Point(m)}, a.Other[m]...)
		meets(t, a, m, got)
		for other := range a.Other {
			if other != m && len(a.Other[other]) > 0 {
				t.Errorf("seed %d: %s may also be at %v", seed, a.net.Marks[other], a.Other[other])
			}
		}
	}
	if tried < 8 {
		t.Errorf("only %d tried", tried)
	}
}

// listed says that one of the readings may be wrong by a human size.
func listed(a answer, ties []int) bool {
	for _, i := range ties {
		for _, e := range a.Likely[i] {
			if e.Code != "unknown" && e.Chance > 0.02 {
				return true
			}
		}
	}
	return false
}

// meets fails unless the places are the crossings of each two of the three tapes, a centimetre near
// (the others move the pegs a little).
func meets(t *testing.T, a answer, m int, got []plane.Point) {
	t.Helper()
	var want []plane.Point
	home := a.first.X.Point(m)
	pegs := []string{"A", "B", "C"}
	for k := range pegs {
		p, q := pegs[k], pegs[(k+1)%3]
		read := func(peg string) float64 { return a.net.Obs[a.of(t, peg+" r3")].Values[0] }
		l, r, _ := plane.MeetCircles(a.Solution.X.Point(a.net.ByName[p]), read(p), a.Solution.X.Point(a.net.ByName[q]), read(q))
		if r.Dist(home) < l.Dist(home) {
			l = r
		}
		want = append(want, l)
	}
	order := func(ps []plane.Point) {
		sort.Slice(ps, func(i, j int) bool { return ps[i].X+0.3*ps[i].Y < ps[j].X+0.3*ps[j].Y })
	}
	order(got)
	order(want)
	for k := range want {
		if len(got) != len(want) || got[k].Dist(want[k]) > 0.01 {
			t.Errorf("the mark is or may be at %v, two of the three tapes each meet at %v", got, want)
			return
		}
	}
}

// With a human size in one of the three it is that one, and the mark is nowhere else.
func TestEqualTestsAndHumanSize(t *testing.T) {
	named := 0
	for seed := range uint64(12) {
		for _, off := range []float64{1, -1, 0.3048, -0.1, 0.1} {
			c, x := threePegs(seed, off)
			was := x.is - off
			a := ask(t, c.text(tapeOf2))
			i := a.of(t, "B r3")
			if !slices.Equal(a.in(mistake.Suspect), []string{"B r3"}) {
				if a.State[i] != mistake.Doubtful || !listed(a, []int{a.of(t, "A r3"), a.of(t, "C r3")}) { // another has no human size
					t.Errorf("seed %d, off by %g: suspect %v: %s", seed, off, a.in(mistake.Suspect), a.told())
				}
				continue
			}
			named++
			near(t, "the length before", a.Likely[i][0].Value, was, 0.002)
			if m := a.net.ByName["r3"]; len(a.Other[m]) > 0 || a.Solution.X.Point(m).Dist(a.first.X.Point(m)) < 0.005 {
				t.Errorf("seed %d, off by %g: the mark stays, or may also be at %v", seed, off, a.Other[m])
			}
			if len(a.Mistakes) != 1 || len(a.Mistakes[0].Edits) != 1 || math.Abs(a.Mistakes[0].Edits[0].Value-was) > 0.002 {
				t.Errorf("seed %d, off by %g: %+v", seed, off, a.Mistakes)
			}
		}
	}
	if named < 25 {
		t.Errorf("%d of 60 named", named)
	}
}
