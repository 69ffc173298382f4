package advise_test

import (
	"testing"

	"brimline/adjust"
	"brimline/advise"
	"brimline/plane"
)

// mirrors puts marks of the rim also where they would lie in the mirror of the pegs.
func mirrors(sol *adjust.Solution, lined bool, marks ...int) []advise.Mirror {
	a := sol.X.Point(0)
	along := sol.X.Point(1).Sub(a).Unit()
	var out []advise.Mirror
	for _, m := range marks {
		p := sol.X.Point(m)
		d := p.Sub(a)
		out = append(out, advise.Mirror{Mark: m, Places: [2]plane.Point{p, a.Add(along.Mul(2 * along.Dot(d)).Sub(d))}, Lined: lined})
	}
	return out
}

func sides(p []advise.Proposal) int {
	n := 0
	for _, q := range p {
		if q.Why.Code == "side" {
			n++
		}
	}
	return n
}

// One tie at most is spent on sides: none on a mark whose line says where it lies, none where no
// tie can tell (every other mark is open too, and the pegs are as far from both places), and none
// where every order is ready.
func TestSidesWorthATie(t *testing.T) {
	s := twoPegs(1, 10, 0, 0.002)
	sol := s.solve(t)
	for _, x := range []struct {
		name    string
		mirrors []advise.Mirror
		want    int
	}{
		{"one", mirrors(sol, false, s.rim[2]), 1},
		{"three", mirrors(sol, false, s.rim[2], s.rim[5], s.rim[6]), 1},
		{"by the line", mirrors(sol, true, s.rim[2], s.rim[5]), 0},
		{"one by itself, the others by the line", append(mirrors(sol, false, s.rim[2]), mirrors(sol, true, s.rim[5])...), 1},
		{"all", mirrors(sol, false, s.rim...), 0},
	} {
		p := next(t, s, advise.Odd{}, func(o *advise.Options) { o.Count, o.Mirrors = 8, x.mirrors })
		if n := sides(p); n != x.want || len(p) < 4 || n == 1 && p[0].Why.Code != "side" {
			t.Errorf("%s: %d ties for a side among %v", x.name, n, codes(p))
		}
		for _, q := range p {
			if q.Why.Code == "side" && q.Marks[0] == s.rim[5] {
				t.Errorf("%s: told by a mark that is open itself", x.name)
			}
		}
	}
	good := threePegs(1, 10, 0, 0.001)
	sol = good.solve(t)
	if p := next(t, good, advise.Odd{}, func(o *advise.Options) { o.Mirrors = mirrors(sol, false, good.rim[2]) }); len(p) > 0 {
		t.Errorf("ready, but %v", codes(p))
	}
}

// A mark that the order asks about goes before one that it does not, however little its tie tells;
// the side of a mark that no order asks about is settled last.
func TestSidesOfTheOrderFirst(t *testing.T) {
	s := twoPegs(1, 10, 1, 0.002)
	far, near := s.rim[5], s.rim[2]
	if s.truth.Point(far).Y < s.truth.Point(near).Y {
		far, near = near, far
	}
	sol := s.solve(t)
	order := s.shape(sol)
	s.rim = append([]int(nil), s.rim...)
	both := mirrors(sol, false, far, near)
	ask := func(m int) advise.Order {
		o := order
		o.Asks = nil
		for _, a := range order.Asks {
			if a.At == s.net.Marks[m] {
				o.Asks = append(o.Asks, a)
			}
		}
		return o
	}
	for _, m := range []int{far, near} {
		o := s.options()
		o.Mirrors = both
		p := advise.Next(sol, listed(sol), advise.Odd{}, []advise.Order{ask(m)}, o)
		if len(p) == 0 || p[0].Why.Code != "side" || p[0].Why.Marks[0] != m {
			t.Errorf("asked about %s: %+v", s.net.Marks[m], p)
		}
	}
	o := s.options()
	o.Mirrors = mirrors(sol, false, far)
	p := advise.Next(sol, listed(sol), advise.Odd{}, []advise.Order{ask(near)}, o)
	if last := len(p) - 1; last < 1 || p[last].Why.Code != "side" || sides(p) != 1 {
		t.Errorf("%+v", p)
	}
}
