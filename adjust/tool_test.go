package adjust_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/adjust"
	"brimline/network"
)

// worn is a tape's reading of a distance: scale times it plus zero, with noise.
func worn(r *rand.Rand, zero, scale, sd float64) func(float64) float64 {
	return func(d float64) float64 { return scale*d + zero + sd*r.NormFloat64() }
}

// tapes is a book in which a good tape measures pegs and some marks and a worn reel, of which the
// words are given, measures the marks from all pegs.
func tapes(t *testing.T, reel string, zero, scale, noise float64, seed uint64) (*network.Network, network.State) {
	r := rand.New(rand.NewPCG(seed, 6))
	return yard.network(t, "tools: {tape: {sigma: 3 mm}, reel: {sigma: 5 mm, "+reel+"}}\nreadings:\n"+
		yard.ties(noisy(r, 0.003*noise), ", tool: tape", "A B", "B C", "C D", "D A", "A C", "B D", "A r1", "B r1", "C r5", "D r5")+
		yard.ties(worn(r, zero, scale, 0.005*noise), ", tool: reel", every("A B C D", rims)...))
}

// block is the block of a solved tool in a network with one.
func block(t *testing.T, n *network.Network) (b, at int) {
	t.Helper()
	for i := range n.Free {
		if n.Free[i].Kind == "tool" {
			b := int(n.FreeBlock(i))
			return b, n.Offset[b]
		}
	}
	t.Fatal("no tool is solved")
	return 0, 0
}

// Zero and scale of a worn tape come out as they are, exactly without noise, and with noise within
// 4.5 of their own sd, whose squares average to what chance allows; the sd are those of full matrices.
func TestToolIsFound(t *testing.T) {
	for _, c := range []struct {
		reel        string
		zero, scale float64
		want        []float64
	}{
		{"zero: solve", 0.1, 1, []float64{0.1}},
		{"zero: solve", -0.013, 1, []float64{-0.013}},
		{"scale: solve", 0, 1.004, []float64{1.004}},
		{"zero: solve, scale: solve", 0.1, 0.997, []float64{0.1, 0.997}},
	} {
		n, x := tapes(t, c.reel, c.zero, c.scale, 0, 1)
		s, found := solve(t, n, x)
		b, at := block(t, n)
		for k, v := range c.want {
			near(t, c.reel, s.X[at+k], v, 2e-6) // readings are written to a micrometre
		}
		if _, held := codeOf(found, "tool-held"); held || len(s.Held) > 0 {
			t.Errorf("%s: held although other tapes tell", c.reel)
		}
		d := denseOf(t, s)
		squares := make([]float64, len(c.want))
		const tries = 60
		for seed := range uint64(tries) {
			n, x := tapes(t, c.reel, c.zero, c.scale, 1, 100+seed)
			s, _ := solve(t, n, x)
			for k, v := range c.want {
				z := (s.X[at+k] - v) / s.BlockSD(b, k)
				squares[k] += z * z / tries
				if math.Abs(z) > 4.5 {
					t.Errorf("%s, seed %d: %g, want %g: %g sd off", c.reel, seed, s.X[at+k], v, z)
				}
			}
		}
		for k := range c.want {
			near(t, c.reel+": sd", s.BlockSD(b, k), math.Sqrt(d.c.At(at+k, at+k)), 1e-7*s.BlockSD(b, k)+1e-12)
			near(t, c.reel+": mean square of what is left", squares[k], 1, 0.75) // 4 × its own sd, √(2/60)
		}
	}
}

// What the readings cannot tell from the shape is held at no error, said, and no unknown: one tape
// for everything has a scale that is the figure's; ties from two pegs and nothing else take up any
// zero; so do both.
func TestToolIsHeld(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	two := yard.ties(noisy(r, 0.003), ", tool: reel", append([]string{"A B"}, every("A B", "r1 r2 r3 r4")...)...)
	all := yard.ties(noisy(r, 0.003), ", tool: reel", append([]string{"A B", "B C", "C A"}, every("A B C", rims)...)...)
	for _, c := range []struct {
		name, reel, readings string
		held                 int
		want                 []float64 // NaN: solved
	}{
		{"scale of the only tape", "scale: solve", all, 1, []float64{1}},
		{"zero from two pegs", "zero: solve", two, 1, []float64{0}},
		{"both from two pegs", "zero: solve, scale: solve", two, 2, []float64{0, 1}},
		{"both of the only tape", "zero: solve, scale: solve", all, 1, []float64{math.NaN(), 1}},
	} {
		n, x := yard.network(t, "tools: {reel: {sigma: 3 mm, "+c.reel+"}}\nreadings:\n"+c.readings)
		s, found := solve(t, n, x)
		_, at := block(t, n)
		if len(s.Held) != c.held {
			t.Errorf("%s: held %v, want %d", c.name, s.Held, c.held)
		}
		if f, ok := codeOf(found, "tool-held"); !ok || f.Words["tool"] != "reel" {
			t.Errorf("%s: finding %v", c.name, f)
		}
		for k, v := range c.want {
			if !math.IsNaN(v) {
				near(t, c.name, s.X[at+k], v, 1e-12)
			}
		}
		if want := strings.Count(c.readings, "tie") - (2*len(n.Marks) - 3) - (len(c.want) - c.held); s.Redundancy != want {
			t.Errorf("%s: redundancy %d, want %d", c.name, s.Redundancy, want)
		}
		plain, y := yard.network(t, "tools: {reel: {sigma: 3 mm}}\nreadings:\n"+c.readings)
		if one, _ := solve(t, plain, y); c.held == len(c.want) {
			for m := range n.Marks {
				near(t, c.name+": place", s.X.Point(m).Dist(one.X.Point(m)), 0, 1e-8)
				a, b := s.MarkCov(m), one.MarkCov(m)
				near(t, c.name+": variance", a[0]+a[2], b[0]+b[2], 1e-6*(b[0]+b[2])+1e-15)
			}
		}
	}
}

// A held tool stays held in variations of the solution.
func TestHeldToolStaysHeld(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	n, x := yard.network(t, "tools: {reel: {sigma: 3 mm, scale: solve}}\nreadings:\n"+
		yard.ties(noisy(r, 0.003), ", tool: reel", append([]string{"A B", "B C", "C A"}, every("A B C", rims)...)...))
	s, _ := solve(t, n, x)
	_, at := block(t, n)
	v := s.Again(t.Context(), adjust.Change{Out: []int{5, 9}})
	if v == nil || len(v.Held) != 1 || v.Redundancy != s.Redundancy-2 {
		t.Fatalf("held %v, redundancy %d of %d", v.Held, v.Redundancy, s.Redundancy)
	}
	near(t, "scale", v.X[at], 1, 1e-12)
}
