package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// pool is an outline with its marks, in the frame of its figure, clockwise.
type pool struct {
	figure   Figure
	stations [][]plane.Point // by piece: its first mark and those inside, not its last
	marks    []plane.Point   // all stations in one list
	rim      []plane.Point   // the outline as a fine polygon
}

// staked sets the marks where the rim bends: at every joint, on arcs and curves every 0.5 to
// 0.9 m (closer where tight, at least one inside each arc), and sometimes one on a long
// straight. A curve without joints begins anywhere.
func staked(r *rand.Rand, clockwise Figure) pool {
	p := pool{figure: clockwise, rim: clockwise.Path().Flatten(0.005)}
	spacing := between(r, 0.5, 0.9)
	for _, x := range clockwise {
		var at []plane.Point
		switch x.Kind {
		case straight:
			at = onStraight(r, x.Segs[0])
		case arc:
			at = onArc(r, x.Segs[0], spacing)
		case curve:
			at = onCurve(r, x.Segs, spacing)
		}
		p.stations = append(p.stations, at)
		p.marks = append(p.marks, at...)
	}
	return p
}

func onStraight(r *rand.Rand, s plane.Segment) []plane.Point {
	at := []plane.Point{s.A}
	if s.Length() > 2.5 && chance(r, 0.4) {
		at = append(at, s.At(between(r, 0.4, 0.6)))
	}
	return at
}

func onArc(r *rand.Rand, s plane.Segment, spacing float64) []plane.Point {
	step := math.Min(spacing, 0.9*math.Abs(s.Radius()))
	n := int(math.Max(2, math.Round(s.Length()/step)))
	return byEye(r, n, s.At)
}

// byEye gives the start and n−1 places about evenly spaced between shares 0 and 1.
func byEye(r *rand.Rand, n int, at func(share float64) plane.Point) []plane.Point {
	out := []plane.Point{at(0)}
	for i := 1; i < n; i++ {
		out = append(out, at((float64(i)+between(r, -0.12, 0.12))/float64(n)))
	}
	return out
}

// onCurve spaces marks by the spacing, or 0.6 of the local radius where that is less. It takes
// the ends of the short arcs, so that the marks lie on the outline to the last digit.
func onCurve(r *rand.Rand, segs []plane.Segment, spacing float64) []plane.Point {
	measure := make([]float64, len(segs)+1) // length in steps
	for i, s := range segs {
		step := math.Min(spacing, 0.6*math.Abs(s.Radius()))
		measure[i+1] = measure[i] + s.Length()/step
	}
	total := measure[len(segs)]
	next := 0
	return byEye(r, int(math.Ceil(total)), func(share float64) plane.Point {
		for next < len(segs)-1 && measure[next+1] <= share*total {
			next++
		}
		return segs[next].A
	})
}

// nearest is the place in the list of the point nearest to q.
func nearest(list []plane.Point, q plane.Point) int {
	best := 0
	for i, p := range list {
		if p.Dist(q) < list[best].Dist(q) {
			best = i
		}
	}
	return best
}
