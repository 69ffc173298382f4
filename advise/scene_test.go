package advise_test

import (
	"context"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"brimline/adjust"
	"brimline/advise"
	"brimline/fieldbook"
	"brimline/mistake"
	"brimline/network"
	"brimline/plane"
	"brimline/unit"
)

// scene is a pool whose truth is known, with the readings taken so far: pegs first, then the marks
// of the rim in order.
type scene struct {
	net    *network.Network
	truth  network.State
	pegs   int
	rim    []int
	r      *rand.Rand
	noise  float64 // in standard deviations
	sigma  float64 // of the tape
	define []float64
}

func newScene(seed uint64, noise, sigma float64, pegs, rim []plane.Point) *scene {
	s := &scene{r: rand.New(rand.NewPCG(seed, 41)), noise: noise, sigma: sigma, pegs: len(pegs)}
	s.net = &network.Network{Base: [2]int{0, 1}, ByName: map[string]int{}, SetupAt: map[string]int{}}
	for i, p := range append(append([]plane.Point(nil), pegs...), rim...) {
		name := string(rune('A' + i))
		if i >= len(pegs) {
			name = "r" + strconv.Itoa(i-len(pegs)+1)
			s.rim = append(s.rim, i)
		}
		s.net.ByName[name] = i
		s.net.Marks = append(s.net.Marks, name)
		s.net.Pegs = append(s.net.Pegs, i < len(pegs))
		s.net.Offset = append(s.net.Offset, len(s.truth))
		s.truth = append(s.truth, p.X, p.Y)
		d := 0.0
		if i >= len(pegs) {
			d = 0.001 + 0.002*s.r.Float64()
		}
		s.define = append(s.define, d)
	}
	s.net.Offset = append(s.net.Offset, len(s.truth))
	return s
}

// oval is a ring of n marks on a shape that is neither round nor regular, and pegs beside it.
func oval(seed uint64, n int) []plane.Point {
	r := rand.New(rand.NewPCG(seed, 43))
	l, w := 4+1.5*r.Float64(), 2+0.8*r.Float64()
	bend, turn := 0.5*r.Float64(), 6.28*r.Float64()
	var out []plane.Point
	for i := range n {
		a := 2 * math.Pi * (float64(i) + 0.3*r.Float64()) / float64(n)
		f := 1 + 0.12*math.Cos(3*a+turn)
		out = append(out, plane.Point{X: l * f * math.Cos(a), Y: w*f*math.Sin(a) + bend*math.Cos(a)*math.Cos(a)})
	}
	return out
}

// twoPegs is an oval with A and B beside its long side, every mark tied from both, the base once.
func twoPegs(seed uint64, n int, noise, sigma float64) *scene {
	s := newScene(seed, noise, sigma, []plane.Point{{X: -3.2, Y: -5}, {X: 3.4, Y: -4.8}}, oval(seed, n))
	s.tie(0, 1)
	for _, m := range s.rim {
		s.tie(0, m)
		s.tie(1, m)
	}
	return s
}

// threePegs has C beyond the other side, the base three times and every mark tied from all.
func threePegs(seed uint64, n int, noise, sigma float64) *scene {
	s := newScene(seed, noise, sigma, []plane.Point{{X: -3.2, Y: -5}, {X: 3.4, Y: -4.8}, {X: 0.4, Y: 5.2}}, oval(seed, n))
	for range 3 {
		s.tie(0, 1)
	}
	s.tie(0, 2)
	s.tie(1, 2)
	for _, m := range s.rim {
		s.tie(0, m)
		s.tie(1, m)
		s.tie(2, m)
	}
	return s
}

func (s *scene) sd(a, b int) float64 {
	return math.Sqrt(s.sigma*s.sigma + s.define[a]*s.define[a] + s.define[b]*s.define[b])
}

// tie reads a tie and gives its observation.
func (s *scene) tie(a, b int) *network.Obs {
	sd := s.sd(a, b)
	v := s.truth.Point(a).Dist(s.truth.Point(b)) + s.noise*sd*s.r.NormFloat64()
	if s.noise > 0 {
		v = math.Round(v*1000) / 1000
	}
	return s.put(network.Tie{}, []int{a, b}, []float64{v}, []float64{sd})
}

func (s *scene) put(k network.Kind, marks []int, values, sd []float64) *network.Obs {
	o := network.Obs{Kind: k, Reading: len(s.net.Obs), Marks: marks, Setup: -1, Scale: 1, Free: -1, Use: true, Values: values, SD: sd}
	o.Blocks = k.Touches(&o)
	for _, b := range o.Blocks {
		o.At = append(o.At, s.net.Offset[b])
		o.Size += s.net.Dim(b)
	}
	s.net.Obs = append(s.net.Obs, o)
	return &s.net.Obs[len(s.net.Obs)-1]
}

func (s *scene) solve(t testing.TB) *adjust.Solution {
	t.Helper()
	sol, found := adjust.Solve(context.Background(), s.net, append(network.State(nil), s.truth...), adjust.Options{})
	if sol == nil || !sol.Converged {
		t.Fatalf("did not converge: %v", found)
	}
	return sol
}

// listed is what package mistake lists for a solution, the book being typed in metres to 1 mm.
func listed(sol *adjust.Solution) []mistake.Hypothesis {
	b := &fieldbook.Book{}
	b.Units.Length = unit.M
	for i := range sol.Net.Obs {
		o := &sol.Net.Obs[i]
		var r fieldbook.Taken
		r.Kind = o.Kind.Name()
		for _, v := range o.Values {
			r.Values = append(r.Values, fieldbook.Value{Metres: v, Text: strconv.FormatFloat(v, 'f', 3, 64)})
		}
		b.Readings = append(b.Readings, r)
	}
	return mistake.Listed(sol, b)
}

// normals of the rim at the truth, outward or inward.
func (s *scene) normals() []plane.Point {
	var out []plane.Point
	n := len(s.rim)
	for i := range s.rim {
		d := s.truth.Point(s.rim[(i+1)%n]).Sub(s.truth.Point(s.rim[(i+n-1)%n]))
		out = append(out, d.Unit().Left())
	}
	return out
}

// shape is the order that every book has: the edge within 25 mm, share 0.5, unseen 1 %.
func (s *scene) shape(sol *adjust.Solution) advise.Order {
	return advise.Order{Name: "shape", For: "cut", Share: 0.5, Unseen: 0.01, Cost: 1, Asks: advise.Edges(sol, s.rim, s.normals(), nil, 0.025)}
}

func (s *scene) options() advise.Options {
	return advise.Options{Sigma: s.sigma, Definition: s.define}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.12g, want %.12g: off by %.3g, allowed %.3g", what, got, want, math.Abs(got-want), tol)
	}
}
