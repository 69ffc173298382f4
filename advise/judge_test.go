package advise_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"brimline/adjust"
	"brimline/advise"
	"brimline/mistake"
	"brimline/plane"
)

func judge(t *testing.T, s *scene, odd advise.Odd, change func(*advise.Order)) advise.Verdict {
	t.Helper()
	sol := s.solve(t)
	o := s.shape(sol)
	if change != nil {
		change(&o)
	}
	return advise.Judge(sol, listed(sol), odd, o, 1)
}

func TestVerdicts(t *testing.T) {
	for seed := range uint64(4) {
		if v := judge(t, threePegs(seed, 20, 1, 0.004), advise.Odd{}, nil); v.Tests[v.Worst].U95 > 0.0125 || v.State == advise.Unfit {
			t.Errorf("seed %d: three pegs: %s %v", seed, v.State, v.Why)
		}
		three := threePegs(seed, 20, 1, 0.004)
		for i := range 6 { // check tapes across
			three.tie(three.rim[i], three.rim[i+9])
		}
		if v := judge(t, three, advise.Odd{}, func(o *advise.Order) { o.For = "stock" }); v.State != advise.Ready {
			t.Errorf("seed %d: three pegs for stock: %s %v", seed, v.State, v.Why)
		}
		v := judge(t, twoPegs(seed, 20, 1, 0.001), advise.Odd{}, nil)
		if v.State != advise.Unproven || v.Why[0].Code != "unseen" || v.Unseen < 0.2 {
			t.Errorf("seed %d: two pegs: %s %.3f %v", seed, v.State, v.Unseen, v.Why)
		}
		v = judge(t, threePegs(seed, 20, 1, 0.012), advise.Odd{}, nil)
		if v.State != advise.Unfit || v.Why[0].Code != "wide" {
			t.Errorf("seed %d: a bad tape: %s %v", seed, v.State, v.Why)
		}
	}
}

// A triangle of three ties: every listed mistake beyond the tolerance passes unseen, with its
// prior odds and no other.
func TestUnseenByHand(t *testing.T) {
	s := newScene(1, 0, 0.002, []plane.Point{{}, {X: 6}}, []plane.Point{{X: 3, Y: 4}})
	s.tie(0, 1)
	s.tie(0, 2)
	s.tie(1, 2)
	sol := s.solve(t)
	u := plane.Point{X: 3, Y: 4}.Unit()
	order := advise.Order{Name: "leg", Share: 1, Unseen: 0.01, Asks: []advise.Ask{{Name: "leg", At: "r1", Tolerance: 0.05,
		Func: adjust.Functional{Marks: []int{0, 2}, Grad: []float64{-u.X, -u.Y, u.X, u.Y}}}}}
	var list []mistake.Hypothesis
	for p := range 3 {
		for _, e := range []float64{0.02, 0.3, -1} {
			list = append(list, mistake.Hypothesis{Code: "x", Parts: []int{p}, Size: []float64{e}, LnPrior: math.Log(0.004)})
		}
	}
	v := advise.Judge(sol, list, advise.Odd{}, order, 1)
	near(t, "unseen", v.Unseen, 0.008, 1e-12) // two sizes above 50 mm in the one tie that is the leg
	near(t, "U95", v.Tests[0].U95, 1.959963984540054*s.net.Obs[1].SD[0], 1e-9)
	if v.State != advise.Ready {
		t.Errorf("%s: 0.8 %% is below 1 %%", v.State)
	}
	order.Unseen = 0.005
	if v = advise.Judge(sol, list, advise.Odd{}, order, 1); v.State != advise.Unproven || !slices.Equal(v.Why[0].Obs, []int{1}) || v.Why[0].Mistake != "x" {
		t.Errorf("%s %+v", v.State, v.Why)
	}
}

// A repeat shows a mistake: its odds fall by exp(−e²/(4·sd²)), the two readings agreeing.
func TestRepeatLowersTheOdds(t *testing.T) {
	s := newScene(1, 0, 0.004, []plane.Point{{}, {X: 6}}, nil)
	s.tie(0, 1)
	s.tie(0, 1)
	sol := s.solve(t)
	order := advise.Order{Name: "base", Share: 1, Unseen: 0.01, Asks: []advise.Ask{{At: "B", Tolerance: 0.005,
		Func: adjust.Functional{Marks: []int{1}, Grad: []float64{1, 0}}}}}
	list := []mistake.Hypothesis{{Code: "x", Parts: []int{0}, Size: []float64{0.012}, LnPrior: math.Log(0.01)}}
	v := advise.Judge(sol, list, advise.Odd{}, order, 1)
	near(t, "unseen", v.Unseen, 0.01*math.Exp(-0.012*0.012/(4*0.004*0.004)), 1e-9)
	list[0].Size[0] = 0.009 // moves the base by 4.5 mm only
	if v = advise.Judge(sol, list, advise.Odd{}, order, 1); v.Unseen != 0 {
		t.Errorf("a mistake that spoils nothing counts %v", v.Unseen)
	}
}

func TestEachReasonOfAVerdict(t *testing.T) {
	value := func(v float64) func(*advise.Order) { return func(o *advise.Order) { o.Asks[3].Value = v } }
	three := func() *scene { return threePegs(7, 16, 0.5, 0.002) }
	cases := []struct {
		code   string
		state  string
		scene  *scene
		change func(*advise.Order)
	}{
		{"outside", advise.Unfit, three(), value(0.07)},
		{"near", advise.Unproven, three(), value(-0.027)},
		{"wide", advise.Unfit, three(), func(o *advise.Order) { o.Asks[3].Open = 0.010 }},
		{"unseen", advise.Unproven, twoPegs(7, 16, 0.5, 0.002), nil},
		{"unplaced", advise.Unfit, three(), func(o *advise.Order) { o.Asks[3].Func.Marks = []int{-1} }},
	}
	for _, c := range cases {
		v := judge(t, c.scene, advise.Odd{}, c.change)
		if v.State != c.state || len(v.Why) == 0 || v.Why[0].Code != c.code {
			t.Errorf("%s: %s %+v", c.code, v.State, v.Why)
		}
	}
}

// For a price the tolerance is four times that for cutting, for stock twice.
func TestUseWidensTolerances(t *testing.T) {
	for use, want := range map[string]float64{"price": 0.1, "stock": 0.05, "cut": 0.025, "": 0.025} {
		v := judge(t, twoPegs(1, 8, 0, 0.004), advise.Odd{}, func(o *advise.Order) { o.For = use })
		near(t, "tolerance for "+use, v.Tests[0].Tolerance, want, 1e-15)
	}
}

func TestFactorWidensReadingsOnly(t *testing.T) {
	s := twoPegs(1, 8, 0, 0.004)
	sol := s.solve(t)
	o := s.shape(sol)
	o.Asks[0].Open = 0.003
	one, two := advise.Judge(sol, nil, advise.Odd{}, o, 1).Tests[0].U95, advise.Judge(sol, nil, advise.Odd{}, o, 2).Tests[0].U95
	const q = 1.959963984540054
	near(t, "U95", two, q*math.Sqrt(4*(one*one/q/q-9e-6)+9e-6), 1e-12)
}

// Several orders at once are judged as each alone.
func TestOrdersDoNotMix(t *testing.T) {
	s := twoPegs(3, 12, 1, 0.004)
	sol := s.solve(t)
	a, b := s.shape(sol), s.shape(sol)
	b.For, b.Asks = "price", b.Asks[:4]
	list := listed(sol)
	both := advise.JudgeAll(sol, list, advise.Odd{}, []advise.Order{a, b}, 1)
	for i, o := range []advise.Order{a, b} {
		one := advise.Judge(sol, list, advise.Odd{}, o, 1)
		if one.State != both[i].State || len(one.Tests) != len(both[i].Tests) || one.Unseen != both[i].Unseen {
			t.Errorf("order %d: %v alone, %v together", i, one.Unseen, both[i].Unseen)
		}
	}
	if both[1].Unseen >= both[0].Unseen {
		t.Error("a price needs no less proof than a cut")
	}
}

// Look says what Judge and Next say.
func TestLookIsBoth(t *testing.T) {
	s := twoPegs(3, 12, 1, 0.004)
	sol := s.solve(t)
	list, orders := listed(sol), []advise.Order{s.shape(sol)}
	v, p := advise.Look(sol, list, advise.Odd{}, orders, s.options())
	if !reflect.DeepEqual(v, advise.JudgeAll(sol, list, advise.Odd{}, orders, 1)) {
		t.Error("another verdict")
	}
	if len(p) != 3 || !reflect.DeepEqual(p, advise.Next(sol, list, advise.Odd{}, orders, s.options())) {
		t.Error("other proposals")
	}
}
