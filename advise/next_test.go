package advise_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"brimline/advise"
	"brimline/mistake"
	"brimline/plane"
)

func next(t *testing.T, s *scene, odd advise.Odd, change func(*advise.Options)) []advise.Proposal {
	t.Helper()
	sol := s.solve(t)
	o := s.options()
	if change != nil {
		change(&o)
	}
	return advise.Next(sol, listed(sol), odd, []advise.Order{s.shape(sol)}, o)
}

func TestNextHonoursCannotAndTheTape(t *testing.T) {
	for seed := range uint64(5) {
		s := twoPegs(seed, 18, 1, 0.004)
		first := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count = 12 })
		if len(first) < 8 {
			t.Fatalf("only %d proposals", len(first))
		}
		var cannot [][2]int
		for i, p := range first {
			pair := [2]int{p.Marks[0], p.Marks[1]}
			if i%2 == 0 {
				pair[0], pair[1] = pair[1], pair[0]
			}
			cannot = append(cannot, pair)
		}
		const longest = 5.5
		second := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Cannot, o.Longest = 12, cannot, longest })
		if len(second) == 0 {
			t.Fatal("nothing is left to propose")
		}
		for _, p := range second {
			pair := [2]int{p.Marks[0], p.Marks[1]}
			if slices.Contains(cannot, pair) || slices.Contains(cannot, [2]int{pair[1], pair[0]}) {
				t.Errorf("%v cannot be read", pair)
			}
			if d := s.truth.Point(pair[0]).Dist(s.truth.Point(pair[1])); d > longest+0.1 || math.Abs(d-p.About) > 0.1 {
				t.Errorf("%v is %.2f long, about %.2f", pair, d, p.About)
			}
		}
	}
}

// A plan, not one tie in variations: the ties proposed together check different marks.
func TestNextIsAPlan(t *testing.T) {
	s := twoPegs(6, 24, 1, 0.001)
	p := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count = 8 })
	used := map[int]int{}
	for _, q := range p {
		used[q.Marks[0]]++
		used[q.Marks[1]]++
	}
	if len(used) < 14 {
		t.Errorf("8 ties check only %d marks", len(used))
	}
	for _, q := range p { // taken together they do what was said
		s.tie(q.Marks[0], q.Marks[1])
	}
	sol := s.solve(t)
	after := advise.Judge(sol, listed(sol), advise.Odd{}, s.shape(sol), 1).Unseen
	fresh := twoPegs(6, 24, 1, 0.001)
	sol = fresh.solve(t)
	before := advise.Judge(sol, listed(sol), advise.Odd{}, fresh.shape(sol), 1).Unseen
	said := 0.0
	for _, q := range p {
		if q.Unit == "odds" {
			said += q.Gain
		}
	}
	if math.Abs(before-after-said) > 0.15*said+0.02 {
		t.Errorf("unseen fell by %.3f, %.3f was said", before-after, said)
	}
}

func TestNextIsDeterministic(t *testing.T) {
	a := next(t, twoPegs(8, 20, 1, 0.004), advise.Odd{}, func(o *advise.Options) { o.Count = 10 })
	b := next(t, twoPegs(8, 20, 1, 0.004), advise.Odd{}, func(o *advise.Options) { o.Count = 10 })
	if !reflect.DeepEqual(a, b) {
		t.Error("the same scene gives two answers")
	}
}

func TestAloneATapeMustHook(t *testing.T) {
	s := twoPegs(3, 16, 1, 0.004)
	hooks := make([]bool, len(s.net.Marks))
	hooks[0], hooks[1], hooks[9] = true, true, true
	for _, p := range next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Alone, o.Hooks = 10, true, hooks }) {
		if !p.Alone || !hooks[p.Marks[0]] && !hooks[p.Marks[1]] {
			t.Errorf("%v does not hook", p.Marks)
		}
		if p.Minutes < 2 {
			t.Errorf("%v in %.1f minutes alone", p.Marks, p.Minutes)
		}
	}
	together := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count = 10 })
	if !slices.ContainsFunc(together, func(p advise.Proposal) bool { return !p.Alone }) {
		t.Error("two people are never needed")
	}
}

func TestNothingIsProposedWhenReady(t *testing.T) {
	s := threePegs(4, 16, 0.5, 0.002)
	for i := range 8 {
		s.tie(s.rim[i], s.rim[i+8])
	}
	if p := next(t, s, advise.Odd{}, nil); len(p) > 0 {
		t.Errorf("%+v", p)
	}
}

// Two ties fix a mark, however many pegs there are.
func TestTwoTiesFixAMark(t *testing.T) {
	s := threePegs(1, 8, 1, 0.002)
	lost := len(s.net.Marks) - 1
	for i := range s.net.Obs {
		s.net.Obs[i].Use = !slices.Contains(s.net.Obs[i].Marks, lost)
	}
	s.truth.SetPoint(lost, plane.Point{X: math.NaN(), Y: math.NaN()})
	s.rim = s.rim[:len(s.rim)-1]
	p := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Waiting = 9, []int{lost} })
	var fixing [][]int
	for _, q := range p {
		if q.Why.Code == "fixes" {
			fixing = append(fixing, q.Marks)
		}
	}
	if want := [][]int{{0, lost}, {1, lost}}; !reflect.DeepEqual(fixing, want) {
		t.Errorf("%v, want %v", fixing, want)
	}
}

func TestLongTapesTakeLonger(t *testing.T) {
	s := newScene(1, 0, 0.002, []plane.Point{{}, {X: 16}}, []plane.Point{{X: -1, Y: 9}, {X: 8, Y: 12}, {X: 15, Y: 7}})
	s.tie(0, 1)
	for _, m := range s.rim {
		s.tie(0, m)
		s.tie(1, m)
	}
	list := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Shortest = 6, 9 })
	if !slices.ContainsFunc(list, func(p advise.Proposal) bool { return p.About > 12 }) {
		t.Fatal("no long tape is proposed")
	}
	for _, p := range list {
		near(t, "minutes", p.Minutes, 1.5+0.1*math.Max(0, p.About-10), 1e-9)
	}
}

// codes of the proposals of a scene.
func codes(p []advise.Proposal) []string {
	var out []string
	for _, q := range p {
		out = append(out, q.Why.Code)
	}
	return out
}

func TestEachReasonOfAProposal(t *testing.T) {
	ten := func(o *advise.Options) { o.Count = 10 }
	t.Run("control", func(t *testing.T) {
		p := next(t, twoPegs(1, 16, 1, 0.002), advise.Odd{}, ten)
		if p[0].Why.Code != "control" || len(p[0].Why.Marks) != 2 {
			t.Errorf("%+v", p[0])
		}
	})
	t.Run("sharper", func(t *testing.T) {
		s := threePegs(1, 16, 1, 0.010)
		for i := range 8 {
			s.tie(s.rim[i], s.rim[i+8])
		}
		p := next(t, s, advise.Odd{}, ten)
		if p[0].Why.Code != "sharper" || p[0].Unit != "m" || !(p[0].Gain > 0 && p[0].Why.From > p[0].Why.To) {
			t.Errorf("%+v", p[0])
		}
	})
	t.Run("base and repeat", func(t *testing.T) {
		s := twoPegs(1, 6, 1, 0.002)
		var cannot [][2]int // nothing between marks of the rim
		for i, a := range s.rim {
			for _, b := range s.rim[:i] {
				cannot = append(cannot, [2]int{a, b})
			}
		}
		got := codes(next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Cannot = 20, cannot }))
		if !slices.Contains(got, "base") || !slices.Contains(got, "repeat") {
			t.Errorf("%v", got)
		}
	})
	t.Run("fixes", func(t *testing.T) {
		s := newScene(1, 1, 0.002, []plane.Point{{X: -3.2, Y: -5}, {X: 3.4, Y: -4.8}}, oval(1, 8))
		s.tie(0, 1)
		for _, m := range s.rim[:6] {
			s.tie(0, m)
			s.tie(1, m)
		}
		s.tie(0, s.rim[6])
		for _, m := range s.rim[6:] {
			s.truth.SetPoint(m, plane.Point{X: math.NaN(), Y: math.NaN()})
		}
		s.rim = s.rim[:6]
		p := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Waiting = 4, []int{8, 9} })
		var got [][]int
		for _, q := range p[:3] {
			if q.Why.Code != "fixes" || !math.IsNaN(q.About) {
				t.Errorf("%+v", q)
			}
			got = append(got, q.Marks)
		}
		if want := [][]int{{1, 8}, {0, 9}, {1, 9}}; !reflect.DeepEqual(got, want) {
			t.Errorf("%v, want %v", got, want)
		}
		if len(p) < 4 || p[3].Why.Code != "control" {
			t.Errorf("%v", codes(p))
		}
	})
	t.Run("side", func(t *testing.T) {
		s := twoPegs(1, 10, 1, 0.002)
		m := s.rim[2]
		q := s.truth.Point(m)
		mirror := advise.Mirror{Mark: m, Places: [2]plane.Point{q, {X: q.X, Y: -9.8 - q.Y}}}
		p := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Mirrors = []advise.Mirror{mirror} })
		if p[0].Why.Code != "side" || p[0].Marks[1] != m || peg(p[0].Marks[0]) || p[0].Gain < 1 {
			t.Errorf("%+v", p[0])
		}
	})
	t.Run("again", func(t *testing.T) {
		s := threePegs(1, 10, 0, 0.003)
		s.net.Obs[7].Values[0] += 0.3
		s.net.Obs[7].Use = false
		p := next(t, s, advise.Odd{Suspect: []int{7}}, nil)
		if p[0].Why.Code != "again" || !slices.Equal(p[0].Marks, s.net.Obs[7].Marks) || math.Abs(p[0].About-s.net.Obs[7].Values[0]+0.3) > 1e-6 {
			t.Errorf("%+v", p[0])
		}
	})
	t.Run("tells", func(t *testing.T) {
		s := threePegs(1, 10, 0, 0.003)
		for i := range 5 {
			s.tie(s.rim[i], s.rim[i+5])
		}
		s.net.Obs[7].Values[0] += 0.3
		s.net.Obs[7].Use = false
		odd := advise.Odd{Doubtful: []mistake.Group{{Number: 1, Obs: []int{7, 8}, Chance: []float64{0.5, 0.5}}}}
		p := next(t, s, odd, ten)
		if p[0].Why.Code != "tells" || !slices.Equal(p[0].Why.Obs, []int{7, 8}) {
			t.Errorf("%+v", p[0])
		}
	})
}

// peg says whether a mark of twoPegs is A or B.
func peg(m int) bool { return m < 2 }
