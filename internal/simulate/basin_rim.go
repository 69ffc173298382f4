package simulate

import (
	"math"

	"brimline/plane"
)

// ringPoint is a corner of the true rim drawn fine, with its station on the rim read.
type ringPoint struct {
	at   plane.Point
	s    float64
	turn float64
}

// fineStep is the length of the pieces by which the true walls are added up (metres).
const fineStep = 0.05

// drawRim draws the true rim and the one read.
func (d *basinDraw) drawRim() {
	l, w := d.length, d.width
	shape := pick(d.r, map[string][]string{
		"flat": {"rectangle", "stadium", "ell"}, "slope": {"rectangle", "cut"}, "coved": {"rectangle", "cut", "stadium"},
		"leaning walls": {"rectangle", "cut", "stadium"}, "hopper": {"rectangle"}, "steps": {"rectangle"},
	}[d.Kind])
	switch shape {
	case "stadium":
		d.drawStadium()
	case "cut":
		c, e := between(d.r, 0.6, 1.2), between(d.r, 0.6, 1.2)
		d.drawCorners(plane.Point{X: c}, plane.Point{X: l - c}, plane.Point{X: l, Y: e}, plane.Point{X: l, Y: w - e},
			plane.Point{X: l - c, Y: w}, plane.Point{X: c, Y: w}, plane.Point{Y: w - e}, plane.Point{Y: e})
	case "ell":
		x, y := l*between(d.r, 0.5, 0.7), w+between(d.r, 1.5, 3)
		d.drawCorners(plane.Point{}, plane.Point{X: l}, plane.Point{X: l, Y: w}, plane.Point{X: x, Y: w}, plane.Point{X: x, Y: y}, plane.Point{Y: y})
	default:
		d.drawCorners(plane.Point{}, plane.Point{X: l}, plane.Point{X: l, Y: w}, plane.Point{Y: w})
	}
}

// drawCorners: a rim of straights, each corner read with an error of its own.
func (d *basinDraw) drawCorners(corners ...plane.Point) {
	var read []plane.Point
	for _, p := range corners {
		read = append(read, p.Add(plane.Point{X: d.normal(basinCorner), Y: d.normal(basinCorner)}))
	}
	d.rim, d.Rim = plane.Polyline(corners, true), plane.Polyline(read, true)
	n := len(corners)
	start := make([]float64, n+1)
	for i, s := range d.Rim.Segs {
		start[i+1] = start[i] + s.Length()
	}
	for i := range n {
		hat := func(s float64) float64 {
			for k, seg := range d.Rim.Segs {
				if s <= start[k+1] {
					t := (s - start[k]) / seg.Length()
					switch i {
					case k:
						return 1 - t
					case (k + 1) % n:
						return t
					}
					return 0
				}
			}
			return 0
		}
		d.Modes = append(d.Modes,
			RimMode{basinCorner, func(s float64) plane.Point { return plane.Point{X: hat(s)} }},
			RimMode{basinCorner, func(s float64) plane.Point { return plane.Point{Y: hat(s)} }})
	}
	d.drawRing(func(seg int, t float64) float64 { return start[seg] + t*(start[seg+1]-start[seg]) })
}

// drawStadium: half circles at both ends, read with one error of its radius and one of its place.
func (d *basinDraw) drawStadium() {
	move := plane.Point{X: d.length/2 + d.normal(basinCorner), Y: d.width/2 + d.normal(basinCorner)}
	wider := d.normal(basinCorner)
	shift := func(f Figure, to plane.Point) plane.Path {
		return f.Path().Move(plane.Turned(0, to))
	}
	d.rim = shift(Stadium(d.length, d.width), plane.Point{X: d.length / 2, Y: d.width / 2})
	d.Rim = shift(Stadium(d.length+2*wider, d.width+2*wider), move)
	out := func(s float64) plane.Point {
		seg, t, _ := d.Rim.Place(s)
		return d.Rim.Segs[seg].Tangent(t).Left().Mul(-1)
	}
	d.Modes = []RimMode{
		{basinCorner, func(float64) plane.Point { return plane.Point{X: 1} }},
		{basinCorner, func(float64) plane.Point { return plane.Point{Y: 1} }},
		{basinCorner, out},
	}
	d.drawRing(func(seg int, t float64) float64 {
		s := t * d.Rim.Segs[seg].Length()
		for _, x := range d.Rim.Segs[:seg] {
			s += x.Length()
		}
		return s
	})
}

// drawRing lists the corners of the true rim drawn fine.
func (d *basinDraw) drawRing(station func(seg int, t float64) float64) {
	for k, s := range d.rim.Segs {
		n := int(math.Ceil(s.Length() / fineStep))
		for i := range n {
			t := float64(i) / float64(n)
			d.ring = append(d.ring, ringPoint{at: s.At(t), s: station(k, t)})
		}
	}
	n := len(d.ring)
	for i := range d.ring {
		before, here, next := d.ring[(i+n-1)%n].at, d.ring[i].at, d.ring[(i+1)%n].at
		d.ring[i].turn = plane.Between(here.Sub(before), next.Sub(here))
	}
}

// drawWalls draws the lean of the walls and the heights of the rim.
func (d *basinDraw) drawWalls() {
	whole := d.Rim.Length()
	swing := func(size float64, most int) func(s float64) float64 {
		var a, b [4]float64
		for k := 1; k <= most; k++ {
			a[k], b[k] = d.normal(size), d.normal(size)
		}
		return func(s float64) float64 {
			sum := 0.0
			for k := 1; k <= most; k++ {
				sin, cos := math.Sincos(2 * math.Pi * float64(k) * s / whole)
				sum += a[k]*cos + b[k]*sin
			}
			return sum
		}
	}
	bend := swing(0.003, 3)
	zero := bend(0)
	d.rise = func(s float64) float64 { return bend(s) - zero } // 0 at the mark from which heights count
	if d.Kind == "leaning walls" {
		mean, sway := d.normal(0.010), swing(0.006, 3)
		d.lean = func(i int) float64 { return mean + sway(d.ring[i].s) }
		return
	}
	side, by := 0, []float64{d.normal(basinPlumb)}
	of := make([]int, len(d.ring))
	for i, p := range d.ring {
		if i > 0 && math.Abs(p.turn) > math.Pi/6 {
			side++
			by = append(by, d.normal(basinPlumb))
		}
		of[i] = side
	}
	d.lean = func(i int) float64 { return by[of[i]] }
}
