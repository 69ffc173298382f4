package adjust

import "math"

// chiQuantile is the p-quantile of chi-square with k degrees of freedom: Newton's method kept in
// a bracket, from the start of E. Wilson and M. Hilferty (1931), on the regularised incomplete
// gamma function (Abramowitz and Stegun 1964, 26.4.17, 26.4.19, 6.5.29, 6.5.31).
func chiQuantile(p, k float64) float64 {
	h := 2 / (9 * k)
	z := math.Sqrt2 * math.Erfinv(2*p-1)
	x := k * math.Pow(math.Max(1-h+z*math.Sqrt(h), 0.01), 3)
	lo, hi := 0.0, math.Inf(1)
	lg, _ := math.Lgamma(k / 2)
	for range 100 {
		d := gammaP(k/2, x/2) - p
		if d > 0 {
			hi = x
		} else {
			lo = x
		}
		density := math.Exp((k/2-1)*math.Log(x/2)-x/2-lg) / 2
		next := x - d/density
		if !(next > lo && next < hi) {
			next = (lo + math.Min(hi, 2*x+10)) / 2
		}
		if math.Abs(next-x) <= 1e-12*x {
			return next
		}
		x = next
	}
	return x
}

// gammaP is the lower regularised incomplete gamma function.
func gammaP(a, x float64) float64 {
	if x <= 0 {
		return 0
	}
	lg, _ := math.Lgamma(a)
	front := math.Exp(a*math.Log(x) - x - lg)
	if x < a+1 {
		term := 1 / a
		sum := term
		for n := 1; n < 10000; n++ {
			term *= x / (a + float64(n))
			sum += term
			if term < sum*1e-16 {
				break
			}
		}
		return front * sum
	}
	const tiny = 1e-300
	b := x + 1 - a
	c, d := 1/tiny, 1/b
	h := d
	for n := 1; n < 10000; n++ { // continued fraction by Lentz's method
		an := -float64(n) * (float64(n) - a)
		b += 2
		d = an*d + b
		if math.Abs(d) < tiny {
			d = tiny
		}
		c = b + an/c
		if math.Abs(c) < tiny {
			c = tiny
		}
		d = 1 / d
		h *= d * c
		if math.Abs(d*c-1) < 1e-16 {
			break
		}
	}
	return 1 - front*h
}
