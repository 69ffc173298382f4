package simulate_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
)

// every calls f for each shape by each method, so many seeds of each.
func every(seeds int, f func(c simulate.Case)) {
	for seed := range seeds {
		for _, s := range simulate.Shapes {
			for _, m := range simulate.Methods {
				f(simulate.Pool(uint64(seed+1), s, m, simulate.Options{}))
			}
		}
	}
}

// rounding is the variance of a figure typed to the millimetre.
const rounding = 1e-6 / 12

func TestNoiseIsAsStated(t *testing.T) {
	n, far, sum, fourth := 0, 0, 0.0, 0.0
	every(25, func(c simulate.Case) {
		for _, e := range readBack(t, c) {
			z := (e.value - e.true) / math.Sqrt(e.sd*e.sd+rounding)
			if math.Abs(z) > 4.5 {
				far++
			}
			n++
			sum += z * z
			fourth += z * z * z * z
		}
	})
	// χ² of n values has mean n and variance 2n; the fourth moment 3n and 96n. 3.5 sd either way.
	if n < 30000 {
		t.Fatalf("only %d values", n)
	}
	t.Logf("%d values, χ²/n %.4f, kurtosis %.3f, beyond 4.5 sd: %d", n, sum/float64(n), fourth/float64(n), far)
	if d := math.Abs(sum - float64(n)); d > 3.5*math.Sqrt(2*float64(n)) {
		t.Errorf("χ² of %d true residuals is %.0f", n, sum)
	}
	if d := math.Abs(fourth - 3*float64(n)); d > 3.5*math.Sqrt(96*float64(n)) {
		t.Errorf("fourth moment of the true residuals is %.3f, not 3", fourth/float64(n))
	}
	// Expected beyond 4.5 sd: 6.8 in a million.
	if expect := 6.8e-6 * float64(n); float64(far) > expect+4*math.Sqrt(expect)+1 {
		t.Errorf("%d of %d values lie beyond 4.5 sd", far, n)
	}
}

func TestCaseAgreesWithItsBook(t *testing.T) {
	every(4, func(c simulate.Case) {
		seen := 0
		for _, e := range readBack(t, c) {
			x := c.Readings[e.reading]
			for _, d := range []float64{x.Typed[e.part] - e.value, x.True[e.part] - e.true, x.SD[e.part] - e.sd} {
				if math.Abs(d) > 1e-9 {
					t.Fatalf("%s, %s, seed %d: reading %s part %d: case %v, book %v", c.Shape.Name(), c.Method.Name(), c.Seed, x.N, e.part, x, e)
				}
			}
			seen++
		}
		parts := 0
		for _, x := range c.Readings {
			parts += len(x.True)
		}
		if seen != parts || seen == 0 {
			t.Fatalf("book has %d values, case %d", seen, parts)
		}
	})
}

func TestExactHasNoNoise(t *testing.T) {
	for _, m := range simulate.Methods {
		c := simulate.Pool(3, simulate.Shapes[4], m, simulate.Options{Exact: true})
		for _, e := range readBack(t, c) {
			if math.Abs(e.value-e.true) > 0.6e-7 {
				t.Fatalf("%s: value %v, truth %v", m.Name(), e.value, e.true)
			}
		}
	}
}
