package simulate

import "brimline/plane"

// Stakes are the marks of an outline, clockwise, as somebody sets them who wants to measure it:
// at every joint and inside the pieces as far as they bend. Of each piece of the figure At holds
// its first mark and those inside; the first mark of the next piece ends it.
type Stakes struct {
	Figure Figure
	At     [][]plane.Point
}

// Stake draws an outline of a family and its marks. The same seed gives the same.
func Stake(seed uint64, s Shape) Stakes {
	r := stream(seed, streamShape, s.Name(), "stakes")
	f := s.Draw(r)
	if chance(r, 0.5) {
		f = f.Mirror()
	}
	p := staked(r, f.Reverse())
	return Stakes{p.figure, p.stations}
}

// Noisy is the place of a mark with normal noise of the same sd on both coordinates; k numbers
// the mark.
func Noisy(seed uint64, k int, p plane.Point, sd float64) plane.Point {
	r := stream(seed+uint64(k)<<40, streamNoise, "stakes")
	return plane.Point{X: p.X + sd*r.NormFloat64(), Y: p.Y + sd*r.NormFloat64()}
}
