package advise_test

import (
	"slices"
	"testing"

	"brimline/advise"
)

// toReady counts the ties that a measurer needs, beyond those of the scene, until the order is
// ready; each is solved again. pick gives the next tie; most ends it.
func toReady(t testing.TB, s *scene, most int, pick func(n int) (a, b int, ok bool)) int {
	t.Helper()
	for n := range most {
		sol := s.solve(t)
		v := advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1)
		if v.State == advise.Ready {
			return n
		}
		a, b, ok := pick(n)
		if !ok {
			t.Logf("nothing proposed after %d: %s, unseen %.4f, %v", n, v.State, v.Unseen, v.Why)
			return most
		}
		s.tie(a, b)
	}
	return most
}

func (s *scene) follower(t testing.TB) func(int) (int, int, bool) {
	return func(int) (int, int, bool) {
		sol := s.solve(t)
		o := s.options()
		o.Count = 1
		p := advise.Next(sol, listed(sol), advise.Odd{}, []advise.Order{s.shape(sol)}, o)
		if len(p) == 0 {
			return 0, 0, false
		}
		return p[0].Marks[0], p[0].Marks[1], true
	}
}

// pairs of rim marks, the longest first.
func (s *scene) longest() [][2]int {
	var out [][2]int
	for i, a := range s.rim {
		for _, b := range s.rim[i+1:] {
			out = append(out, [2]int{a, b})
		}
	}
	length := func(p [2]int) float64 { return s.truth.Point(p[0]).Dist(s.truth.Point(p[1])) }
	slices.SortStableFunc(out, func(p, q [2]int) int {
		switch {
		case length(p) > length(q):
			return -1
		case length(p) < length(q):
			return 1
		}
		return 0
	})
	return out
}

func inTurn(list [][2]int) func(int) (int, int, bool) {
	return func(n int) (int, int, bool) {
		if n >= len(list) {
			return 0, 0, false
		}
		return list[n][0], list[n][1], true
	}
}

// The promise of the whole package: following Next needs at most half the ties of a measurer who
// tapes the longest diagonals first, and a third of one who tapes at random.
func TestFollowingNext(t *testing.T) {
	var next, long, random []int
	for seed := range uint64(9) {
		n := 20 + int(seed*7%11)
		one := twoPegs(seed, n, 1, 0.004)
		next = append(next, toReady(t, one, 200, one.follower(t)))
		two := twoPegs(seed, n, 1, 0.004)
		long = append(long, toReady(t, two, 200, inTurn(two.longest())))
		three := twoPegs(seed, n, 1, 0.004)
		list := three.longest()
		three.r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		random = append(random, toReady(t, three, 200, inTurn(list)))
		t.Logf("seed %d, %d marks: next %d, longest %d, random %d", seed, n, next[seed], long[seed], random[seed])
	}
	for _, list := range [][]int{next, long, random} {
		slices.Sort(list)
	}
	mid := len(next) / 2
	if next[mid]*2 > long[mid] || next[mid]*3 > random[mid] {
		t.Errorf("medians: next %d, longest diagonals %d, at random %d", next[mid], long[mid], random[mid])
	}
}

// Jobs of three pegs with the base three times: six check tapes as Next chooses them make the
// outline ready, and where they do not the next one is named. With two pegs and none: never.
func TestSixCheckTapes(t *testing.T) {
	const jobs = 12
	ready := 0
	for seed := range uint64(jobs) {
		s := threePegs(300+seed, 20+int(seed%11), 1, 0.0035)
		pick := s.follower(t)
		if toReady(t, s, 7, pick) <= 6 {
			ready++
		}
		two := twoPegs(300+seed, 20+int(seed%11), 1, 0.0035)
		sol := two.solve(t)
		if v := advise.Judge(sol, listed(sol), advise.Odd{}, two.shape(sol), 1); v.State == advise.Ready {
			t.Errorf("seed %d: two pegs and no check are ready", seed)
		}
	}
	if ready < jobs-1 {
		t.Errorf("%d of %d ready", ready, jobs)
	}
}

// A tape too coarse for the outline: the ties proposed bring every mark within its share.
func TestFollowingNextSharpens(t *testing.T) {
	for seed := range uint64(3) {
		s := threePegs(40+seed, 16, 1, 0.008)
		sol := s.solve(t)
		if v := advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1); v.State != advise.Unfit {
			t.Fatalf("seed %d: %s: the scene is too good", seed, v.State)
		}
		if n := toReady(t, s, 20, s.follower(t)); n == 20 {
			t.Errorf("seed %d: not ready after 20 ties", seed)
		} else {
			t.Logf("seed %d: %d ties", seed, n)
		}
	}
}
