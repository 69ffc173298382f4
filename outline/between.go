package outline

import "math"

// What stays open between the marks of a fair curve. The curvature is taken to wander along the
// line as a Wiener process does, so that the curve is white noise of spectral density q integrated
// three times (G. Wahba, Improper priors, spline smoothing and the problem of guarding against
// model errors in regression, J. R. Statist. Soc. B 40, 1978). With marks every c the best curve
// through them leaves the variance 6.77·10⁻⁴·q·c⁵ in the middle of a span, and 2q(c/2π)⁶·c of the
// area for each span of many; curvatures found at neighbouring marks differ by the variance
// 0.55·q·c. q comes from the line itself, less what noise of the marks adds.
const (
	openMiddle = 6.7745e-4
	openBend   = 0.55
)

// lengthening is by how much noise of the variance v across one mark lengthens the fair curve
// through marks every c: lengthening·v/c, half the second derivative, measured on the curve itself.
const lengthening = 1.295

// longer is by how much noise of its marks makes the fair curve of a trail longer than the edge.
func (t *trail) longer(b *block, edge []float64) float64 {
	sum := 0.0
	for i := range t.marks {
		if !t.ring && (i == 0 || i == len(t.marks)-1) {
			continue
		}
		sum += lengthening * t.jitter(b, i, edge) * (1/t.gap(i-1) + 1/t.gap(i)) / 2
	}
	return sum
}

// jitter is the variance of mark i across the trail against its neighbours: that of the second
// difference, less the neighbours' usual share.
func (t *trail) jitter(b *block, i int, edge []float64) float64 {
	n := t.across(i)
	marks := []int{t.marks[t.index(i-1)], t.marks[t.index(i)], t.marks[t.index(i+1)]}
	c := b.some(b.own, marks)
	w := [3]float64{-0.5, 1, -0.5}
	v := 0.0
	for j := range 6 {
		for k := range 6 {
			if j == k && j%2 == 0 {
				v += w[j/2] * w[j/2] * edge[marks[j/2]] * edge[marks[j/2]]
			}
			v += w[j/2] * w[k/2] * []float64{n.X, n.Y}[j%2] * []float64{n.X, n.Y}[k%2] * c[j*6+k]
		}
	}
	return math.Max(v, 0) / 1.5
}

// openSpans is the standard deviation across the line in the middle of each span of a trail drawn
// as a fair curve, and the variances of area and length that go with them.
func (t *trail) openSpans() (middle []float64, area, length float64) {
	q := t.wander()
	for i := range t.longest() {
		c := t.gap(i)
		middle = append(middle, math.Sqrt(openMiddle*q*math.Pow(c, 5)))
		v := 2 * q * math.Pow(c/(2*math.Pi), 6) * c
		area += v
		if t.ring || i > 0 {
			k := t.bend(i)
			length += k * k * v
		}
	}
	return middle, area, length
}

// wander is q, pooled over the trail.
func (t *trail) wander() float64 {
	seen, expected := 0.0, 0.0
	for i := range t.longest() {
		if !t.ring && (i < 1 || i+2 > len(t.at)-1) || len(t.at) < 4 {
			continue
		}
		a, b, c := t.gap(i-1), t.gap(i), t.gap(i+1)
		d := t.bend(i+1) - t.bend(i)
		// the difference of the curvatures by the offsets of its four marks
		p, r := 2/(a+b), 2/(b+c)
		w := [4]float64{-p / a, p/a + p/b + r/b, -p/b - r/b - r/c, r / c}
		noise := 0.0
		for k := range w {
			noise += w[k] * w[k] * t.variance(i-1+k, t.across(i-1+k))
		}
		weight := math.Pow(b, 4)
		seen += weight * (d*d - noise)
		expected += weight * openBend * (a + b + c) / 3
	}
	if expected == 0 {
		return 0
	}
	return math.Max(seen/expected, 0)
}
