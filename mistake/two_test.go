package mistake_test

import (
	"math"
	"slices"
	"testing"

	"brimline/mistake"
)

// listedPairs counts through every two tapes of point m wrong by every two listed sizes, each by a
// solution of its own, and gives the chance of each tape among them.
func (n tieNet) listedPairs(m int) []float64 {
	prior := map[string]float64{}
	for _, p := range mistake.Priors {
		prior[p.Code] = p.Odds
	}
	odds := make([]float64, len(n.ties))
	total, least := 0.0, math.Inf(1)
	type pair struct {
		i, k int
		cost float64
		odds float64
	}
	var pairs []pair
	for i, t := range n.ties {
		for k, u := range n.ties[:i] {
			if t.a != m && t.b != m || u.a != m && u.b != m {
				continue
			}
			for a, was := range t.written() {
				for b, than := range u.written() {
					for _, v := range was {
						for _, w := range than {
							one, two := t, u
							one.read, two.read = v, w
							cost, _ := n.with(i, one).with(k, two).lowest()
							least = math.Min(least, cost)
							pairs = append(pairs, pair{i, k, cost, prior[a] / float64(len(was)) * prior[b] / float64(len(than))})
						}
					}
				}
			}
		}
	}
	for _, p := range pairs {
		o := p.odds * math.Exp((least-p.cost)/2)
		odds[p.i], odds[p.k], total = odds[p.i]+o, odds[p.k]+o, total+o
	}
	for i := range odds {
		odds[i] /= total
	}
	return odds
}

// Two listed mistakes in the four tapes of one mark: two tapes are left, which agree with any two
// out, so that nothing but the sizes tells which two are wrong. The chances are those of counting
// through all pairs of listed sizes.
func TestTwoAtOneMarkAgainstEnumeration(t *testing.T) {
	asked, sure, told := 0, 0, 0
	for seed := range uint64(4) {
		for k, off := range [][2]float64{{1, 0.3048}, {-0.3048, 0.1}, {-1, -0.1}, {0.3048, -1}} {
			c := small(seed, "A B C D", "A r1", off[0])
			second := []string{"B", "C", "D"}[(int(seed)+k)%3]
			c.tie(second, "r1").is += off[1]
			a := ask(t, c.text(tapeOf5))
			open := 0.0 // of no listed kind, which is not counted through
			for i := range a.Wrong {
				open += a.chanceOf(i, "unknown") + a.chanceOf(i, "wrong-peg")
			}
			if open > 0.05 {
				continue
			}
			asked++
			want := netOf(a, "A B C D").listedPairs(a.net.ByName["r1"])
			for i := range a.Wrong {
				near(t, "chance of "+a.name(i)+", "+a.told(), a.Wrong[i], want[i], 0.04+open)
				if want[i] > 0.96 {
					sure++
				}
			}
			if suspects := a.in(mistake.Suspect); slices.Contains(suspects, "A r1") && slices.Contains(suspects, second+" r1") {
				told++
			}
		}
	}
	t.Logf("%d asked, %d readings beyond doubt, both named in %d", asked, sure, told)
	if asked < 10 || sure < 12 || told < 5 {
		t.Errorf("the test asks too little: %d asked, %d beyond doubt, both named in %d", asked, sure, told)
	}
}

// The same where the two that are left lie in one line with the mark: alone they do not fix it, and
// what the size of one is says where the mark is and so what the other is.
func TestTwoInLineAgainstEnumeration(t *testing.T) {
	asked := 0
	for seed := range uint64(20) {
		for _, off := range [][2]float64{{1, 0.3048}, {-0.1, 0.3048}, {0.1, -1}} {
			c := newCourt(seed, 2, 0.003)
			c.at["r1"] = c.at["A"].Mul(0.6).Add(c.at["C"].Mul(0.4))
			c.pegs("A B C D")
			c.rows("A B C D")
			c.rim = nil
			c.tie("B", "r1").is += off[0]
			c.tie("D", "r1").is += off[1]
			a := ask(t, c.text(tapeOf5))
			open := 0.0
			for i := range a.Wrong {
				open += a.chanceOf(i, "unknown") + a.chanceOf(i, "wrong-peg")
			}
			if open > 0.3 {
				continue
			}
			asked++
			want := netOf(a, "A B C D").listedPairs(a.net.ByName["r1"])
			for i := range a.Wrong {
				near(t, "chance of "+a.name(i)+", "+a.told(), a.Wrong[i], want[i], 0.06+open)
			}
		}
	}
	if asked < 6 {
		t.Errorf("only %d asked", asked)
	}
}

// One mistake that two others would explain as well is not told as these two: in the tapes of a
// mark on the line of two pegs, whose errors look the same.
func TestOneRatherThanTwo(t *testing.T) {
	for seed := range uint64(10) {
		c := newCourt(seed, 6, 0.002)
		c.at["r3"] = c.at["A"].Add(c.at["C"]).Mul(0.5)
		c.pegs("A B C D")
		c.rows("A B C D")
		c.tie("B", "r3").is += 0.1
		a := ask(t, c.text(tapeOf5))
		if n := len(a.Mistakes); n != 1 || a.State[a.of(t, "B r3")] == mistake.Good {
			t.Errorf("seed %d: told %s", seed, a.told())
		}
	}
}
