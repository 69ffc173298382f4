package adjust_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/finding"
	"brimline/network"
	"brimline/plane"
)

// maker builds a network whose truth is known. The base is mark 0 and mark 1.
type maker struct {
	n     *network.Network
	truth network.State
	r     *rand.Rand
	noise float64 // in standard deviations of each reading
}

// pose is a set-up; scale 0 says that it is not solved.
type pose struct{ x, y, turn, scale float64 }

func newMaker(r *rand.Rand, noise float64, marks []plane.Point, setups ...pose) *maker {
	m := &maker{n: &network.Network{Base: [2]int{0, 1}, ByName: map[string]int{}, SetupAt: map[string]int{}}, r: r, noise: noise}
	for i, p := range marks {
		name := string(rune('a'+i%26)) + string(rune('a'+i/26))
		m.n.ByName[name] = i
		m.n.Marks = append(m.n.Marks, name)
		m.n.Offset = append(m.n.Offset, len(m.truth))
		m.truth = append(m.truth, p.X, p.Y)
	}
	for i, p := range setups {
		name := "T" + string(rune('0'+i))
		m.n.SetupAt[name] = i
		m.n.Setups = append(m.n.Setups, name)
		m.n.Offset = append(m.n.Offset, len(m.truth))
		m.truth = append(m.truth, p.x, p.y, p.turn)
		if p.scale != 0 {
			m.truth = append(m.truth, p.scale)
		}
	}
	m.n.Offset = append(m.n.Offset, len(m.truth))
	return m
}

// add lists an observation without a value.
func (m *maker) add(k network.Kind, setup int, marks []int, sd ...float64) *network.Obs {
	o := network.Obs{Kind: k, Reading: len(m.n.Obs), Marks: marks, Setup: -1, Scale: 1, Use: true, SD: sd}
	if setup >= 0 {
		o.Setup = int(m.n.SetupBlock(setup))
		o.Solve = m.n.Dim(m.n.SetupBlock(setup)) == 4
	}
	o.Values = make([]float64, len(sd))
	o.Blocks = k.Touches(&o)
	for _, b := range o.Blocks {
		o.At = append(o.At, m.n.Offset[b])
		o.Size += m.n.Dim(b)
	}
	m.n.Obs = append(m.n.Obs, o)
	return &m.n.Obs[len(m.n.Obs)-1]
}

// read lists an observation with its true value and noise.
func (m *maker) read(k network.Kind, setup int, marks []int, sd ...float64) *network.Obs {
	o := m.add(k, setup, marks, sd...)
	o.Kind.Predict(m.truth, o, o.Values, make([]float64, len(sd)*o.Size))
	for p := range sd {
		o.Values[p] += m.noise * sd[p] * m.r.NormFloat64()
	}
	return o
}

func (m *maker) tie(a, b int, sd float64) *network.Obs {
	return m.read(network.Tie{}, -1, []int{a, b}, sd)
}

// pool is a network of three pegs and marks on a ring: ties from the pegs and between neighbours; with
// mixed, offsets, one set-up as it stands and one with its scale solved.
func pool(seed uint64, marks int, noise float64, mixed bool) *maker {
	r := rand.New(rand.NewPCG(seed, 17))
	p := []plane.Point{{}, {X: 8 + r.Float64()}, {X: 4 + 2*r.Float64(), Y: 9 + r.Float64()}}
	for i := range marks {
		a := 2 * math.Pi * float64(i) / float64(marks)
		p = append(p, plane.Point{X: 4 + (3+0.4*r.Float64())*math.Cos(a), Y: 4.5 + (2+0.4*r.Float64())*math.Sin(a)})
	}
	m := newMaker(r, noise, p)
	if mixed {
		m = newMaker(r, noise, p, pose{1, -2, 0.7, 0}, pose{9, 3, -2.1, 1.02})
	}
	sd := func() float64 { return 0.002 + 0.006*r.Float64() }
	for i := range 3 {
		m.tie(i, (i+1)%3, sd())
		for j := range marks {
			if i < 2 || r.Float64() < 0.6 {
				m.tie(i, 3+j, sd())
			}
		}
	}
	for j := range marks {
		if r.Float64() < 0.5 {
			m.tie(3+j, 3+(j+1)%marks, sd())
		}
		if mixed && r.Float64() < 0.4 {
			m.read(network.Offset{}, -1, []int{3 + j, 0, 1}, sd(), sd())
		}
		for s := range m.n.Setups {
			if r.Float64() < 0.6 || j < 3 {
				m.read(network.Seen{}, s, []int{3 + j}, sd(), sd())
			}
		}
	}
	return m
}

// solve adjusts from the truth moved by up to 5 cm.
func (m *maker) solve(t *testing.T) *adjust.Solution {
	t.Helper()
	start := append(network.State(nil), m.truth...)
	r := rand.New(rand.NewPCG(5, 5))
	for i := range start {
		start[i] += 0.1*r.Float64() - 0.05
	}
	s, _ := solve(t, m.n, start)
	return s
}

func solve(t *testing.T, n *network.Network, start network.State) (*adjust.Solution, []finding.Finding) {
	t.Helper()
	s, found := adjust.Solve(context.Background(), n, start, adjust.Options{})
	if s == nil || !s.Converged {
		t.Fatalf("did not converge: %v", found)
	}
	return s, found
}

// near fails unless got and want agree to tol, absolutely.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.12g, want %.12g: off by %.3g, allowed %.3g", what, got, want, math.Abs(got-want), tol)
	}
}
