package adjust_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/network"
	"brimline/plane"
)

// site holds the true places of the marks of a book written by a test.
type site map[string]plane.Point

// network builds a book whose readings are given as text, at the true places.
func (w site) network(t *testing.T, text string) (*network.Network, network.State) {
	t.Helper()
	b, err := fieldbook.Parse("test.yaml", []byte("brimline: 1\n"+text))
	if err != nil {
		t.Fatal(err)
	}
	n, _ := network.Build(&b, nil)
	x := n.NewState()
	for i, name := range n.Marks {
		p, ok := w[name]
		if !ok {
			t.Fatalf("mark %s has no true place", name)
		}
		x.SetPoint(i, p)
	}
	n.Begin(x)
	return n, x
}

// ties writes a tape for each pair, as from what make of the true distance.
func (w site) ties(made func(d float64) float64, words string, pairs ...string) string {
	var out strings.Builder
	for _, p := range pairs {
		a, b, _ := strings.Cut(p, " ")
		fmt.Fprintf(&out, "- {tie: %s, is: %.6f%s}\n", p, made(w[a].Dist(w[b])), words)
	}
	return out.String()
}

// every is each pair of a name of one list with one of the other.
func every(from, to string) []string {
	var out []string
	for _, a := range strings.Fields(from) {
		for _, b := range strings.Fields(to) {
			out = append(out, a+" "+b)
		}
	}
	return out
}

// noisy adds normal noise to a length.
func noisy(r *rand.Rand, sd float64) func(float64) float64 {
	return func(d float64) float64 { return d + sd*r.NormFloat64() }
}

// yard is four pegs and eight marks of a pool with one round end: invented.
var yard = site{
	"A": {}, "B": {X: 9.1}, "C": {X: 9.7, Y: 8.2}, "D": {X: -0.8, Y: 7.4},
	"r1": {X: 2, Y: 2}, "r2": {X: 4, Y: 2}, "r3": {X: 6.3, Y: 2}, "r4": {X: 7.8, Y: 3.5},
	"r5": {X: 6.3, Y: 5}, "r6": {X: 4, Y: 5}, "r7": {X: 2, Y: 5}, "r8": {X: 7.36, Y: 4.56},
}

const rims = "r1 r2 r3 r4 r5 r6 r7 r8"
