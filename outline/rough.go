package outline

import (
	"math"

	"brimline/plane"
)

// rough is what the span after mark i costs on a fair curve beyond its price: twice the logarithm
// of how far the curvatures at its ends bend it apart, l²Δκ/8, in standard deviations of a mark;
// a density with wide tails (Cauchy's).
func (t *trail) rough(i int) float64 {
	if !t.ring && (i < 1 || i+2 > len(t.at)-1) || len(t.at) < 4 {
		return 0
	}
	l := t.gap(i)
	off := l * l / 8 * (t.bend(i+1) - t.bend(i))
	v := (t.variance(i, t.across(i)) + t.variance(i+1, t.across(i+1))) / 2
	return 2 * math.Log(1+off*off/v)
}

// steep is what mark i costs on a fair curve at which the line turns more than who marks a curve
// lets it from mark to mark: there is a corner. Common practice, no source.
func (t *trail) steep(i int) float64 {
	const most, each = 1.0, 60 // radians; a price for each radian more
	if !t.ring && (i < 1 || i+1 > len(t.at)-1) {
		return 0
	}
	turn := plane.Between(t.point(i).Sub(t.point(i-1)), t.point(i+1).Sub(t.point(i)))
	return each * math.Max(0, math.Abs(turn)-most)
}

// bend is the curvature at mark i by the turn between the chords that meet there.
func (t *trail) bend(i int) float64 {
	u, v := t.point(i).Sub(t.point(i-1)), t.point(i+1).Sub(t.point(i))
	return 2 * plane.Between(u, v) / (t.gap(i-1) + t.gap(i))
}
