package advise

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/mistake"
	"brimline/network"
	"brimline/plane"
)

// exactNet is a network of ties that read exactly the truth: three pegs, marks on a ring, some
// ties between them.
func exactNet(seed uint64, marks int) (*network.Network, network.State) {
	r := rand.New(rand.NewPCG(seed, 3))
	k := Sketch{Pegs: []int{0, 1, 2}, At: []plane.Point{{X: -3, Y: -4}, {X: 3.2, Y: -4.1}, {X: 0.3, Y: 5}}, Names: []string{"A", "B", "C"}}
	for i := range marks {
		a := 2 * math.Pi * float64(i) / float64(marks)
		k.At = append(k.At, plane.Point{X: (3 + r.Float64()) * math.Cos(a), Y: (2 + r.Float64()) * math.Sin(a)})
		k.Names = append(k.Names, string(rune('a'+i)))
		k.Outline = append(k.Outline, 3+i)
		k.Ties = append(k.Ties, [2]int{0, 3 + i}, [2]int{1, 3 + i})
		if r.Float64() < 0.5 {
			k.Ties = append(k.Ties, [2]int{2, 3 + i})
		}
	}
	k.Ties = append(k.Ties, [2]int{0, 1}, [2]int{0, 2}, [2]int{1, 2}, [2]int{3, 3 + marks/2})
	return k.network(Options{}.filled())
}

func solved(t *testing.T, n *network.Network, x network.State) *adjust.Solution {
	t.Helper()
	s, _ := adjust.Solve(context.Background(), n, x, adjust.Options{NoRobust: true})
	if s == nil || !s.Converged {
		t.Fatal("did not converge")
	}
	return s
}

func pointsOf(x network.State) []plane.Point {
	var out []plane.Point
	for m := range len(x) / 2 {
		out = append(out, x.Point(m))
	}
	return out
}

// rim is an order over the marks past the pegs.
func rim(s *adjust.Solution) []Order {
	k := Sketch{At: pointsOf(s.X)}
	for m := 3; m < len(s.Net.Marks); m++ {
		k.Outline = append(k.Outline, m)
	}
	return []Order{{Name: "rim", Share: 0.5, Unseen: 0.01, Asks: Edges(s, k.Outline, k.normals(s), nil, 0.02)}}
}

// everyTie lists the slips of a sketch in every tie, and a zero that all ties share.
func everyTie(s *adjust.Solution) []mistake.Hypothesis {
	zero := mistake.Hypothesis{Code: sharedZero, LnPrior: -6}
	for p := range s.First[len(s.In)] {
		zero.Parts, zero.Size = append(zero.Parts, p), append(zero.Size, 0.1)
	}
	return append(Sketch{}.listed(s), zero)
}

func close9(t *testing.T, what string, got, want, scale float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Max(scale, math.Abs(want))) {
		t.Errorf("%s: %.15g, want %.15g", what, got, want)
	}
}

// What the rank-one updates say of two more readings is what a solution with these readings says:
// covariance, redundancy, moves by errors, sd of figures; of the new readings too.
func TestRankOneIsTheSolution(t *testing.T) {
	for seed := range uint64(6) {
		n, x := exactNet(seed, 8)
		s := solved(t, n, x)
		p := newPlan(s, everyTie(s), Odd{}, rim(s), Options{}.filled())
		r := rand.New(rand.NewPCG(seed, 9))
		for range 2 {
			c := p.all[r.IntN(len(p.all))]
			p.apply(c)
			n.Obs = append(n.Obs, exactTie(n, len(n.Obs), [2]int{c.a, c.b}, pointsOf(x), math.Sqrt(c.v)))
		}
		after := solved(t, n, x)
		q := newPlan(after, everyTie(after), Odd{}, rim(after), Options{}.filled())
		for i := range q.cov {
			close9(t, "covariance", p.cov[i], q.cov[i], 1e-5)
		}
		if len(p.causes) != len(q.causes) {
			t.Fatalf("%d causes, want %d", len(p.causes), len(q.causes))
		}
		last := len(q.causes) - 1 // the group stands before the planned readings
		zero := p.causes[last-2]
		p.causes = append(append(p.causes[:last-2:last-2], p.causes[last-1:]...), zero)
		moved := append([]float64(nil), p.moves[(last-2)*len(p.probes):(last-1)*len(p.probes)]...)
		p.moves = append(append(p.moves[:(last-2)*len(p.probes):(last-2)*len(p.probes)], p.moves[(last-1)*len(p.probes):]...), moved...)
		for i := range q.causes {
			close9(t, "quad", p.causes[i].quad, q.causes[i].quad, 1e4)
			for k := range q.causes[i].shift {
				close9(t, "move", p.causes[i].shift[k], q.causes[i].shift[k], 1)
			}
		}
		for i := range q.moves {
			close9(t, "move of a figure", p.moves[i], q.moves[i], 1)
		}
		for i := range q.probes {
			close9(t, "variance", p.probes[i].variance, q.probes[i].variance, 1e-5)
		}
	}
}

// What a close look says of one tie, and of two, is what the plan says once they are added.
func TestCloseLookAgreesWithThePlan(t *testing.T) {
	for seed := range uint64(4) {
		n, x := exactNet(seed, 9)
		s := solved(t, n, x)
		list := everyTie(s)
		fresh := func() *plan { return newPlan(s, list, Odd{}, rim(s), Options{}.filled()) }
		p := fresh()
		top := p.screen(0, func(*candidate) bool { return true })
		if len(top) < 4 {
			t.Fatalf("only %d candidates help", len(top))
		}
		for i := range 3 {
			a, b := p.study(0, top[i]), p.study(0, top[i+1])
			one := fresh()
			one.apply(top[i])
			carried(one, 1)
			got, want := a.after, one.now(0)
			near := func(what string, got, want float64) {
				if math.Abs(got-want) > 0.002*want+1e-5 {
					t.Errorf("seed %d: %s %.6f, want %.6f", seed, what, got, want)
				}
			}
			near("unseen", got.unseen, want.unseen)
			near("wide", got.wide, want.wide)
			one = fresh()
			one.apply(top[i])
			one.apply(top[i+1])
			carried(one, 2)
			got, want = p.both(0, &a, &b, append([]float64(nil), a.reaches...)), one.now(0)
			near("wide by two", got.wide, want.wide)
			if math.Abs(got.unseen-want.unseen) > 0.1*want.unseen+1e-4 {
				t.Errorf("seed %d: unseen by two %.6f, want %.6f", seed, got.unseen, want.unseen)
			}
		}
	}
}

// carried takes the mistakes of the planned readings themselves off the plan.
func carried(p *plan, n int) {
	for i := len(p.causes) - n; i < len(p.causes); i++ {
		for o := range p.load {
			p.load[o][i] = 0
		}
	}
}

// A group made of its parts is the group as the solution knows it.
func TestGroupsOfParts(t *testing.T) {
	n, x := exactNet(4, 8)
	for i := range n.Obs {
		n.Obs[i].Values[0] += 0.003 * math.Sin(float64(7*i))
	}
	s := solved(t, n, x)
	list := everyTie(s)
	list = append(list, mistake.Hypothesis{Code: "columns", Parts: []int{3, 4}, Size: []float64{0.7, -0.7}})
	g := newGround(s, list)
	for _, c := range g.causes[len(g.causes)-2:] {
		h := list[g.ways[c.first].from]
		q := adjust.Pattern{Parts: h.Parts, Size: h.Size}
		lin, quad := s.Proof().Effect(q)
		close9(t, "lin", c.lin, lin, 1)
		close9(t, "quad", c.quad, quad, 1)
		for k, v := range s.Shift(q) {
			close9(t, "move", c.shift[k], v, 1)
		}
	}
}

// The few that are looked at closely do not all share a mark.
func TestTheFewDiffer(t *testing.T) {
	n, x := exactNet(2, 12)
	s := solved(t, n, x)
	p := newPlan(s, everyTie(s), Odd{}, rim(s), Options{}.filled())
	top := p.screen(0, func(*candidate) bool { return true })
	used := map[int]int{}
	for _, c := range top {
		used[c.a]++
		used[c.b]++
	}
	if len(top) != lookClosely {
		t.Errorf("%d candidates", len(top))
	}
	for m, k := range used {
		if k > lookPerMark && !n.Pegs[m] {
			t.Errorf("%d of %d candidates at mark %d", k, len(top), m)
		}
	}
}

// What an ordinary error puts at stake: by hand, from the tail of the normal distribution (0.0455
// beyond two standard deviations) and the logarithm of U95 over its limit.
func TestOrdinary(t *testing.T) {
	p := &plan{o: Options{}.filled()}
	k := &probe{tolerance: 0.02, share: two95 / 2, placed: true}
	if got := p.ordinary(k, 1e-4); math.Abs(got-0.04550026) > 1e-7 {
		t.Errorf("just fit: %.8f", got)
	}
	if got := p.ordinary(k, 4e-4); math.Abs(got-0.31731051-math.Ln2) > 1e-7 {
		t.Errorf("twice too wide: %.8f", got)
	}
	if k.placed = false; p.ordinary(k, 1e-4) != 1 {
		t.Error("a mark without a place")
	}
}
