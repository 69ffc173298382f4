package locate_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/locate"
	"brimline/network"
	"brimline/plane"
)

// One tie wrong by a metre among three or four a mark: every other mark has its place, and with
// four ties the mark itself too.
func TestOneWrongTie(t *testing.T) {
	for _, pegs := range []string{"A B C", "A B C D"} {
		base := "A B, A C, B C"
		if pegs == "A B C D" {
			base += ", A D, B D, C D"
		}
		list := strings.Split(base+", "+fromPegs(pegs, ringMarks()...), ", ")
		for i := range list {
			wrong := []string{" +1", " +-1"}[i%2]
			bad := append([]string(nil), list...)
			bad[i] += wrong
			r := scenery(ring).ties(strings.Join(bad, ", ")).say("{side: C, of: A B, hand: left}").find(t)
			own := strings.Fields(list[i])[1]
			if pegs == "A B C" && !strings.HasPrefix(own, "r") {
				continue // three pegs and a wrong side of their triangle: two shapes of it are as good
			}
			keep := without(append([]string{"A", "B", "C"}, ringMarks()...), own)
			if d := r.right(keep...); d > 0.05 {
				t.Errorf("pegs %s, tie %s%s: others off by %.3f m", pegs, list[i], wrong, d)
			}
			if pegs == "A B C D" && r.offers(own) > 0.05 {
				t.Errorf("pegs %s, tie %s%s: %s itself off by %.3f m", pegs, list[i], wrong, own, r.offers(own))
			}
		}
	}
}

// offers says how far the better of the places of a mark is off, in the frame of the pegs A, B, C.
func (r *result) offers(mark string) float64 {
	var from, to []plane.Point
	for _, m := range without([]string{"A", "B", "C"}, mark) {
		from, to = append(from, r.point(m)), append(to, r.at[m])
	}
	fit, _ := plane.FitRigid(from, to, nil)
	best := fit.Apply(r.point(mark)).Dist(r.at[mark])
	for _, p := range r.Other[r.n.ByName[mark]] {
		best = min(best, fit.Apply(p).Dist(r.at[mark]))
	}
	return best
}

func without(list []string, name string) []string {
	var out []string
	for _, x := range list {
		if x != name {
			out = append(out, x)
		}
	}
	return out
}

// Wrong sights and offsets among ties do not move other marks.
func TestWrongSightAndOffset(t *testing.T) {
	s := scenery(square).ties("A B, A C, B C, "+fromPegs("A B C", "r1", "r2", "r3", "r4")).seen("T", posed(4, -3, 0.8), false, "A", "B", "r1", "r2", "r3")
	s.at["r4"] = s.at["r4"].Add(plane.Point{X: 1})
	s.seen("T", posed(4, -3, 0.8), false, "r4").offsets("A", "B", "r4")
	s.at["r4"] = s.at["r4"].Sub(plane.Point{X: 1})
	if d := s.find(t).right("A", "B", "C", "r1", "r2", "r3"); d > 0.05 {
		t.Errorf("off by %.3f m", d)
	}
}

// Simulated pools of every shape and way of measuring are found from nothing; shuffling the
// readings gives the same shape.
func TestShuffledPools(t *testing.T) {
	for _, shape := range simulate.Shapes {
		for _, method := range simulate.Methods {
			for seed := range uint64(2) {
				c := simulate.Pool(70+seed, shape, method, simulate.Options{Exact: true, Checks: 0.3})
				b, err := fieldbook.Parse("case.yaml", c.Book)
				if err != nil {
					t.Fatal(err)
				}
				r := rand.New(rand.NewPCG(seed, 70))
				for turn := range 3 {
					if turn > 0 {
						r.Shuffle(len(b.Readings), func(i, j int) { b.Readings[i], b.Readings[j] = b.Readings[j], b.Readings[i] })
					}
					if d := farthest(c, &b); d > 0.05 {
						t.Errorf("%s, %s, seed %d, order %d: off by %.3f m", shape.Name(), method.Name(), seed, turn, d)
					}
				}
			}
		}
	}
}

// farthest lays what locate finds on the truth, mirrored as a whole where that is better and the
// book knows no hand.
func farthest(c simulate.Case, b *fieldbook.Book) float64 {
	n, _ := network.Build(b, nil)
	start := locate.Find(n)
	var from, to, mirrored []plane.Point
	for i, m := range n.Marks {
		if !n.Placed(start.X, network.Unknown(i)) {
			return 1e9
		}
		p := start.X.Point(i)
		from, to = append(from, p), append(to, c.Truth[m])
		mirrored = append(mirrored, plane.Point{X: p.X, Y: -p.Y})
	}
	handed := c.Side != nil
	for _, o := range n.Obs {
		handed = handed || o.Kind.Name() != "tie"
	}
	if handed {
		return off(from, to)
	}
	return min(off(from, to), off(mirrored, to))
}

// The same book gives the same coordinates, to the last digit.
func TestSameTwice(t *testing.T) {
	s := scenery(ring).ties("A B, " + fromPegs("A B", ringMarks()...) + ", r2 r9, r4 r7").rim(ringMarks()...)
	one, two := s.find(t), s.find(t)
	for i := range one.X {
		if one.X[i] != two.X[i] {
			t.Fatalf("scalar %d: %v and %v", i, one.X[i], two.X[i])
		}
	}
}
