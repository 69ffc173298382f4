package adjust

import "math"

// chiQuantile is the p-quantile of chi-square with k degrees of freedom, by bisection on the
// regularised incomplete gamma function (Abramowitz and Stegun 1964, 26.4.19, 6.5.29, 6.5.31).
func chiQuantile(p, k float64) float64 {
	lo, hi := 0.0, k+40*math.Sqrt(2*k)+60
	for range 200 {
		m := (lo + hi) / 2
		if gammaP(k/2, m/2) < p {
			lo = m
		} else {
			hi = m
		}
		if hi-lo < 1e-12*hi {
			break
		}
	}
	return (lo + hi) / 2
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
