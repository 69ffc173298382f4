package advise_test

import (
	"math"
	"testing"

	"brimline/adjust"
	"brimline/advise"
)

// The weakest places by brute force: every part in turn, by the moves that the solution gives; the
// worst of what is left each time.
func TestWeakestByBruteForce(t *testing.T) {
	s := threePegs(5, 14, 1, 0.004)
	for i, m := range s.rim {
		s.tie(m, s.rim[(i+5)%14]) // nothing is blind
	}
	sol := s.solve(t)
	const count = 10
	got := advise.Weakest(sol, []advise.Order{s.shape(sol)}, s.options(), count)
	if len(got) != count {
		t.Fatalf("%d places", len(got))
	}
	edges := advise.Outline(sol, s.rim, s.normals())
	usedPart, usedMark := map[int]bool{}, map[int]bool{}
	for _, w := range got {
		most, part, mark := 0.0, -1, -1
		for p := range sol.Redund {
			move := sol.Shift(adjust.Pattern{Parts: []int{p}, Size: []float64{sol.Detectable[p]}})
			for k, f := range edges {
				sum := 0.0
				for i, m := range f.Marks {
					sum += f.Grad[2*i]*move[2*m] + f.Grad[2*i+1]*move[2*m+1]
				}
				if math.Abs(sum) > most && !usedPart[p] && !usedMark[s.rim[k]] {
					most, part, mark = math.Abs(sum), p, s.rim[k]
				}
			}
		}
		near(t, "move", w.Move, most, 1e-9)
		near(t, "error", w.Error, sol.Detectable[part], 1e-12)
		if part != w.Part || mark != w.Mark {
			t.Errorf("part %d at %d, want %d at %d", w.Part, w.Mark, part, mark)
		}
		usedPart[part], usedMark[mark] = true, true
	}
}

// With two pegs anything could hide; the tie named exposes it once it is read.
func TestWeakestIsExposed(t *testing.T) {
	s := twoPegs(5, 14, 1, 0.004)
	sol := s.solve(t)
	for _, w := range advise.Weakest(sol, []advise.Order{s.shape(sol)}, s.options(), 4) {
		if !math.IsInf(w.Error, 1) || !math.IsInf(w.Move, 1) || w.Expose == nil {
			t.Fatalf("%+v", w)
		}
		more := twoPegs(5, 14, 1, 0.004)
		more.tie(w.Expose.Marks[0], w.Expose.Marks[1])
		r := more.solve(t).Redund[w.Part]
		if r < 0.1 {
			t.Errorf("redundancy %.3f after %v", r, w.Expose.Marks)
		}
		near(t, "redundancy", r, w.Expose.Gain, 0.02)
	}
}

func TestWeakestLimits(t *testing.T) {
	s := twoPegs(5, 6, 1, 0.004)
	sol := s.solve(t)
	o := s.options()
	for i := range s.net.Marks {
		for j := range i {
			o.Cannot = append(o.Cannot, [2]int{i, j})
		}
	}
	list := advise.Weakest(sol, []advise.Order{s.shape(sol)}, o, 2)
	if len(list) != 2 || list[0].Expose != nil {
		t.Errorf("%+v", list)
	}
}

// The tie that exposes is one not read yet where it is nearly as good; else a second reading of one,
// and the reason says so.
func TestExposedByAnotherTie(t *testing.T) {
	s := twoPegs(5, 14, 1, 0.004)
	sol := s.solve(t)
	shape := []advise.Order{s.shape(sol)}
	for _, w := range advise.Weakest(sol, shape, s.options(), 6) {
		if w.Expose == nil || w.Expose.Why.Code != "control" || peg(w.Expose.Marks[0]) || peg(w.Expose.Marks[1]) {
			t.Errorf("%+v", w.Expose)
		}
	}
	o := s.options()
	for i, a := range s.rim {
		for _, b := range s.rim[:i] {
			o.Cannot = append(o.Cannot, [2]int{a, b})
		}
	}
	for _, w := range advise.Weakest(sol, shape, o, 6) {
		own := s.net.Obs[sol.ObsOf(w.Part)].Marks
		if e := w.Expose; e == nil || e.Why.Code != "repeat" || e.Marks[0] != own[0] || e.Marks[1] != own[1] {
			t.Errorf("part %d of %v: %+v", w.Part, own, e)
		}
	}
}
