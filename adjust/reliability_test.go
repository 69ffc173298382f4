package adjust_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/internal/oracle"
	"brimline/network"
)

// denseRow and denseNet are what testdata/reliability.py reads.
type denseRow struct {
	Kind       string    `json:"kind"`
	At         []int     `json:"at"`
	Setup      int       `json:"setup"`
	Values     []float64 `json:"values"`
	SD         []float64 `json:"sd"`
	Flip       bool      `json:"flip"`
	Solve      bool      `json:"solve"`
	Zero       float64   `json:"zero"`
	Scale      float64   `json:"scale"`
	Rise       int       `json:"rise"`
	Tool       int       `json:"tool"`
	SolveZero  bool      `json:"solve_zero"`
	SolveScale bool      `json:"solve_scale"`
}

type denseNet struct {
	Start []float64  `json:"start"`
	Rows  []denseRow `json:"rows"`
}

// forNumpy hands a network over with its marks a centimetre off.
func forNumpy(n *network.Network, x network.State) denseNet {
	out := denseNet{Start: append([]float64(nil), x[:n.Offset[len(n.Marks)+len(n.Setups)]]...)}
	for i := range out.Start {
		out.Start[i] += 0.01 * float64(i%3-1)
	}
	for i := range n.Obs {
		o := &n.Obs[i]
		row := denseRow{Kind: o.Kind.Name(), Setup: -1, Values: o.Values, SD: o.SD, Flip: o.Flip, Solve: o.Solve,
			Zero: o.Zero, Scale: o.Scale, Rise: -1, Tool: -1, SolveZero: o.SolveZero, SolveScale: o.SolveScale}
		for _, m := range o.Marks {
			row.At = append(row.At, n.Offset[m])
		}
		if o.Setup >= 0 {
			row.Setup = n.Offset[o.Setup]
		}
		if _, bow := o.Kind.(network.Bow); bow && len(o.Marks) == 2 {
			row.Rise = o.Free
		}
		if o.SolveZero || o.SolveScale {
			row.Tool = int(o.Extra[len(o.Extra)-1])
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// everyKind is a book with each kind of reading that proves others, two solved tools among them.
func everyKind(t *testing.T) (*network.Network, network.State) {
	r := rand.New(rand.NewPCG(8, 8))
	text := "tools: {reel: {sigma: 5 mm, zero: solve}, old: {sigma: 6 mm, scale: solve}}\nreadings:\n" +
		yard.ties(noisy(r, 0.004), ", sigma: 4 mm", every("A B C D", rims)...) +
		yard.ties(noisy(r, 0.004), "", "A B", "B C", "C D", "D A", "A C") +
		yard.ties(noisy(r, 0.005), ", tool: reel", "A r2", "B r3", "r1 r5", "r4 r7") +
		yard.ties(func(d float64) float64 { return 1.002*d + 0.006*r.NormFloat64() }, ", tool: old", "C r1", "D r4", "r2 r6", "r3 r7") +
		"- {straight: r1 r2 r3, sigma: 5 mm}\n- {arc: r3 r4 r8 r5, sigma: 5 mm}\n- {square: r2 r1 r7, sigma: 0.1}\n" +
		"- {bow: r3 r5, is: 1.503, sigma: 4 mm}\n- {bow: r2 r6, is: 0.052}\n- {bow: r6 r2, is: 0.055}\n" +
		"- {offset: r4, line: A B, at: 7.803, left: 3.494}\n"
	for _, p := range [][3]string{{"A", "B", "r5"}, {"B", "A", "r7"}} {
		at, from, to := yard[p[0]], yard[p[1]], yard[p[2]]
		a := math.Atan2(from.Y-at.Y, from.X-at.X) - math.Atan2(to.Y-at.Y, to.X-at.X)
		text += fmt.Sprintf("- {turn: %s %s, at: %s, is: %.6f}\n", p[1], p[2], p[0], math.Mod(a*180/math.Pi+720+0.01, 360))
	}
	return yard.network(t, text+"lines: {rim: {runs: [{straight: [r1, r2, r3]}, {arc: [r3, r4, r5]}, {straight: [r5, r6, r7]}]}}\n")
}

// Redundancy, w and the smallest detectable error of three networks against dense numpy with
// models, derivatives and a datum of its own: pegs and tapes; offsets and instruments; all kinds
// that prove others with the zero of one tape and the scale of another solved.
func TestReliabilityAgainstNumpy(t *testing.T) {
	var ours []*adjust.Solution
	var nets []denseNet
	add := func(n *network.Network, x network.State) {
		s, _ := solve(t, n, x)
		ours, nets = append(ours, s), append(nets, forNumpy(n, s.X))
	}
	plain, mixed := pool(31, 9, 1, false), pool(32, 8, 1, true)
	add(plain.n, plain.truth)
	add(mixed.n, mixed.truth)
	add(everyKind(t))
	var theirs []struct {
		Dof        int       `json:"dof"`
		R          []float64 `json:"r"`
		W          []float64 `json:"w"`
		Detectable []float64 `json:"detectable"`
	}
	oracle.Ask(t, "testdata/reliability.py", []string{"numpy"}, nets, &theirs)
	for k, s := range ours {
		want := theirs[k]
		if s.Redundancy != want.Dof || len(s.Held) > 0 {
			t.Fatalf("network %d: redundancy %d, numpy says %d; tools held: %v", k, s.Redundancy, want.Dof, s.Held)
		}
		for p := range want.R {
			o := &s.Net.Obs[s.ObsOf(p)]
			near(t, o.Kind.Name()+": redundancy", s.Redund[p], want.R[p], 1e-6)
			if want.R[p] < 0.01 {
				if !math.IsNaN(s.Detectable[p]) {
					t.Errorf("part %d: redundancy %g and detectable %g", p, want.R[p], s.Detectable[p])
				}
				continue
			}
			w := s.W[p]
			if _, ok := o.Kind.(network.Arc); ok { // the circle may be walked either way round
				w = math.Copysign(w, want.W[p])
			}
			if _, ok := o.Kind.(network.Straight); ok {
				w = math.Copysign(w, want.W[p])
			}
			near(t, o.Kind.Name()+": w", w, want.W[p], 1e-4)
			near(t, o.Kind.Name()+": detectable", s.Detectable[p], want.Detectable[p], 1e-5*want.Detectable[p])
		}
	}
}
