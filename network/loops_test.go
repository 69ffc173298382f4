package network_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"brimline/network"
)

// net is a book of level and staff readings between true heights; wrong is added to the one of that
// place in the list.
func net(r *rand.Rand, wrong map[int]float64) (text string, legs, unknowns int) {
	z := make([]float64, 7)
	for i := range z {
		z[i] = 2 * r.Float64()
	}
	var b strings.Builder
	b.WriteString("readings:\n")
	for i := 1; i < len(z); i++ {
		for range 1 + r.IntN(2) {
			from := r.IntN(i)
			fmt.Fprintf(&b, "- {level: m%d m%d, rise: %.9f}\n", from, i, z[i]-z[from]+wrong[legs])
			legs++
		}
	}
	for s := range 2 {
		for i := range z {
			if i == 0 || r.IntN(2) == 0 {
				fmt.Fprintf(&b, "- {staff: m%d, setup: S%d, is: %.9f}\n", i, s, 3+float64(s)-z[i]+wrong[legs])
				legs++
			}
		}
	}
	return b.String(), legs, len(z) - 1 + 2
}

// Loops are as many as there are readings to spare; true readings close, and a wrong one opens just the
// loops that it is in, by its error.
func TestLoops(t *testing.T) {
	for seed := range uint64(40) {
		text, legs, unknowns := net(rand.New(rand.NewPCG(seed, 1)), nil)
		n, _ := built(t, text)
		loops := n.Loops()
		if len(loops) != legs-unknowns {
			t.Fatalf("seed %d: %d loops of %d readings and %d unknowns", seed, len(loops), legs, unknowns)
		}
		for _, l := range loops {
			if math.Abs(l.Misclosure) > 1e-8 || len(l.Marks) == 0 || l.Setups == 0 {
				t.Errorf("seed %d: %+v", seed, l)
			}
		}
		at := int(seed) % legs
		text, _, _ = net(rand.New(rand.NewPCG(seed, 1)), map[int]float64{at: 0.25})
		n, _ = built(t, text)
		for _, l := range n.Loops() {
			want := 0.0
			if slices.Contains(l.Obs, at) {
				want = 0.25
			}
			if math.Abs(math.Abs(l.Misclosure)-want) > 1e-8 {
				t.Errorf("seed %d: reading %d wrong, loop over %v opens by %v", seed, at, l.Obs, l.Misclosure)
			}
		}
	}
}

// Length of sight adds up where every one is known; a mark read twice from one set-up is a loop.
func TestLoopOfOneSetup(t *testing.T) {
	n, _ := built(t, "readings:\n- {staff: r1, setup: S, is: 1.400, sight: 8}\n- {staff: r2, setup: S, is: 1.300, sight: 9}\n- {staff: r1, setup: S, is: 1.402, sight: 8.5}\n")
	l := n.Loops()
	if len(l) != 1 || math.Abs(math.Abs(l[0].Misclosure)-0.002) > 1e-12 || l[0].Setups != 1 || l[0].Sights != 16.5 || !slices.Equal(l[0].Marks, []int{0}) {
		t.Errorf("%+v", l)
	}
	n, _ = built(t, "readings:\n- {staff: r1, setup: S, is: 1.4, sight: 8}\n- {staff: r1, setup: S, is: 1.4}\n")
	if l := n.Loops(); !math.IsNaN(l[0].Sights) {
		t.Errorf("a sight not said: %v", l[0].Sights)
	}
	var none network.Network
	if len(none.Loops()) > 0 {
		t.Error("loops of nothing")
	}
}
