package mistake

import (
	"math"
	"testing"
)

// The share of an open size is the integral of the normal density of both errors over its peak,
// divided by the range: by sums over a fine grid.
func TestFitOfTwoByIntegration(t *testing.T) {
	const width, step = 4.0, 0.0005
	z := sizes{e: [2]float64{0.31, -0.98}, s: [2]float64{0.012, 0.02}, both: 0.00013}
	known := []way{{size: 0.3048}, {size: -1}}
	open := way{open: true, width: width}
	density := func(x, y float64) float64 {
		a, b, c := z.s[0]*z.s[0], z.s[1]*z.s[1], z.both
		d, e := z.e[0]-x, z.e[1]-y
		return math.Exp(-(b*d*d - 2*c*d*e + a*e*e) / (2 * (a*b - c*c)))
	}
	var first, second, both float64
	for x := -0.15; x < 0.15; x += step {
		first += density(z.e[0]+x, known[1].size) * step / width
		second += density(known[0].size, z.e[1]+x) * step / width
		for y := -0.15; y < 0.15; y += step {
			both += density(z.e[0]+x, z.e[1]+y) * step * step / width / width
		}
	}
	for _, k := range []struct {
		what      string
		got, want float64
	}{
		{"both known", z.fit(known[0], known[1]), math.Log(density(known[0].size, known[1].size))},
		{"the first open", z.fit(open, known[1]), math.Log(first)},
		{"the second open", z.fit(known[0], open), math.Log(second)},
		{"both open", z.fit(open, open), math.Log(both)},
	} {
		if math.Abs(k.got-k.want) > 1e-4 {
			t.Errorf("%s: %.6f, by integration %.6f", k.what, k.got, k.want)
		}
	}
}
