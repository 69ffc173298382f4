package advise_test

import (
	"math"
	"reflect"
	"testing"

	"brimline/advise"
	"brimline/plane"
)

func sketch(seed uint64, n int) advise.Sketch {
	k := advise.Sketch{Names: []string{"A", "B"}, At: []plane.Point{{X: -3.2, Y: -5}, {X: 3.4, Y: -4.8}}, Pegs: []int{0, 1}}
	for i, p := range oval(seed, n) {
		k.Names = append(k.Names, string(rune('a'+i)))
		k.At = append(k.At, p)
		k.Outline = append(k.Outline, 2+i)
	}
	return k
}

// Check tapes chosen from a sketch that is wrong by a hand's breadth prove the real pool far
// better than as many of the longest diagonals.
func TestChecksFromASketch(t *testing.T) {
	for seed := range uint64(4) {
		const n, marks = 10, 20
		k := sketch(seed, marks)
		s := twoPegs(seed, marks, 1, 0.002)
		for i := range k.At[2:] {
			k.At[2+i].X += 0.3 * s.r.NormFloat64()
			k.At[2+i].Y += 0.3 * s.r.NormFloat64()
		}
		checks := advise.Checks(k, n, s.options())
		if len(checks) != n {
			t.Fatalf("%d checks, want %d", len(checks), n)
		}
		for _, c := range checks {
			s.tie(c.Marks[0], c.Marks[1])
		}
		long := twoPegs(seed, marks, 1, 0.002)
		for _, p := range long.longest()[:n] {
			long.tie(p[0], p[1])
		}
		unseen := func(s *scene) float64 {
			sol := s.solve(t)
			return advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1).Unseen
		}
		if ours, theirs := unseen(s), unseen(long); ours*4 > theirs {
			t.Errorf("seed %d: %.4f unseen with the checks proposed, %.4f with the longest", seed, ours, theirs)
		}
	}
}

func TestChecksKeepToWhatCanBeTaped(t *testing.T) {
	k := sketch(1, 12)
	o := advise.Options{Sigma: 0.003, Longest: 7, Cannot: [][2]int{{2, 8}, {9, 3}}}
	list := advise.Checks(k, 6, o)
	for _, p := range list {
		for _, c := range o.Cannot {
			if p.Marks[0] == min(c[0], c[1]) && p.Marks[1] == max(c[0], c[1]) {
				t.Errorf("%v cannot be read", p.Marks)
			}
		}
		if p.About > 7 {
			t.Errorf("%v is %.2f long", p.Marks, p.About)
		}
	}
	if !reflect.DeepEqual(list, advise.Checks(k, 6, o)) {
		t.Error("the same sketch gives two answers")
	}
}

func TestChecksOfAPoorSketch(t *testing.T) {
	k := sketch(1, 10)
	k.At[5] = plane.Point{X: math.NaN(), Y: math.NaN()}
	list := advise.Checks(k, 4, advise.Options{})
	if len(list) != 4 {
		t.Fatalf("%d checks, want 4", len(list))
	}
	for _, p := range list {
		if p.Marks[0] == 5 || p.Marks[1] == 5 {
			t.Errorf("%v: a mark that the sketch does not have", p.Marks)
		}
	}
	k.Pegs = k.Pegs[:1]
	if advise.Checks(k, 4, advise.Options{}) != nil {
		t.Error("checks without a base")
	}
}
