package examples_test

import (
	"fmt"
	"math"

	"brimline/plane"
)

// The floor of Long Drop in metres, from the shallow end: flat, slope, pad and back slope, side slopes,
// and the depths of flat and pad below the water of the morning; how far that lies below the rim, and by
// how much the water fell until the afternoon.
const (
	dropFlat, dropSlope, dropPad, dropBack, dropSide = 3.66, 3.05, 2.74, 1.52, 1.22
	dropShallow, dropDeep                            = 1.07, 2.29
	dropBoard, dropFell                              = 0.152, 0.045
	dropLeans                                        = 0.018 // of the wall at the deep end, outward for each metre down
)

// dropDepth is how deep the floor lies at a place of the figure, shallow end at −x. Side and back slopes
// begin at the foot of the wall, which stands behind the nose.
func dropDepth(p plane.Point) float64 {
	foot := dropBehind(p, dropBoard+dropShallow)
	side := (dropWide/2 - math.Abs(p.Y) + foot) / (dropSide + foot)
	back := (dropLong/2 - p.X + foot) / (dropBack + foot)
	t := math.Min((p.X+dropLong/2-dropFlat)/dropSlope, math.Min(side, back))
	return dropShallow + (dropDeep-dropShallow)*math.Max(0, math.Min(1, t))
}

// dropBehind is how far behind the nose the wall stands, so far below it: where the slope begins it
// begins to lean.
func dropBehind(p plane.Point, down float64) float64 {
	g := math.Max(0, math.Min(1, (p.X+dropLong/2-dropFlat)/dropSlope))
	return trackBack + g*(trackLean+dropLeans*down)
}

// dropVolume is the water below the level of the morning: columns under the nose, by the midpoint rule,
// and the strip from there to the wall.
func dropVolume(outline plane.Path) float64 {
	const cell, step = 0.01, 0.01
	sum := 0.0
	box := outline.Bounds()
	for x := box.Min.X + cell/2; x < box.Max.X; x += cell {
		for y := box.Min.Y + cell/2; y < box.Max.Y; y += cell {
			if p := (plane.Point{X: x, Y: y}); outline.Contains(p) {
				sum += dropDepth(p) * cell * cell
			}
		}
	}
	for i, s := range outline.Segs {
		n := int(math.Ceil(s.Length() / step))
		for k := range n {
			p, out := s.At((float64(k)+0.5)/float64(n)), s.Tangent(0).Left().Mul(-1)
			sum += s.Length() / float64(n) * stripOf(p, out)
		}
		turn := math.Abs(plane.Between(s.Tangent(1), outline.Segs[(i+1)%len(outline.Segs)].Tangent(0)))
		foot := dropBehind(s.B, dropBoard+dropShallow/2)
		sum += math.Tan(turn/2) * foot * foot * dropShallow
	}
	return sum
}

// stripOf is the water in the strip behind the nose at a place: what the wall leaves free above the depth
// of its foot, and the wedge between that and the floor.
func stripOf(p, out plane.Point) float64 {
	const n = 50
	foot := dropFoot(p, out)
	low, sum := dropDepth(foot), 0.0
	for k := range n {
		sum += dropBehind(p, dropBoard+low*(float64(k)+0.5)/n) * low / n
	}
	return sum + foot.Dist(p)*(dropDepth(p)-low)/2
}

// dropFoot is the foot of the wall behind a place of the nose.
func dropFoot(p, out plane.Point) plane.Point {
	return p.Add(out.Mul(dropBehind(p, dropBoard+dropShallow)))
}

// dropWater reads the rim above the water, the walls and the floor; after lunch the water stands lower,
// and nobody gives it another name.
func (d *day) dropWater() {
	d.date, d.clock = "2026-05-19", 10*3600
	for _, m := range d.order {
		x := d.inFigure(d.at[m]).X
		d.raisedTo(m, 0.0006*x+0.002*d.noise.NormFloat64())
	}
	first := d.z[d.order[0]]
	for m := range d.z { // order-free: each moves alone
		d.z[m] -= first
	}
	d.surface["w1"] = -dropBoard - first
	d.say("# how far the water lies under the rim, going round\n")
	for i, m := range d.order {
		if i%2 == 0 || d.inFigure(d.at[m]).X > 2 {
			d.board("w1", m)
		}
	}
	d.board("w1", d.order[0])
	d.dropWalls()
	d.dropFloor()
}

// dropWalls reads plumb lines and rods at the deep end, and plumb lines elsewhere.
func (d *day) dropWalls() {
	d.say("# plumb lines hung from the nose, then rods down the wall where the floor falls\n")
	for _, m := range d.order {
		p := d.inFigure(d.at[m])
		if p.X > -2 {
			d.behind(m, 0.30, dropBehind(p, 0.30))
		}
		if p.X > -2 || m[0] == 's' {
			d.behind(m, 1.10, dropBehind(p, 1.10))
		}
	}
	for _, m := range d.order {
		if p := d.inFigure(d.at[m]); p.X > -2 {
			rim := cutBox(dropLong, dropWide, legAlong, legAcross).Path()
			seg, share, _ := rim.Nearest(p)
			out := rim.Segs[seg].Tangent(share).Left().Mul(-1)
			drop := d.z[m] - d.surface["w1"] + dropDepth(dropFoot(p, out))
			d.rod(m, math.Hypot(drop, dropBehind(p, drop)-dropBehind(p, 0.05)))
		}
	}
}

// dropPlaces are where the floor is sounded, in the frame of the figure: the first of them in both
// sessions.
func dropPlaces() (both, morning, afternoon []plane.Point) {
	x := func(fromShallow float64) float64 { return fromShallow - dropLong/2 }
	toe, heel := x(dropFlat+dropSlope), x(dropFlat+dropSlope+dropPad)
	in := dropWide/2 - dropSide
	both = []plane.Point{{X: toe, Y: -in}, {X: heel, Y: -in}, {X: heel, Y: in}, {X: toe, Y: in}, {X: 2.6}, {X: -0.3}}
	morning = []plane.Point{
		{X: x(dropFlat), Y: -2.7}, {X: x(dropFlat)}, {X: x(dropFlat), Y: 2.7},
		{X: -5.3}, {X: -4.3, Y: -2.5}, {X: -4.3, Y: 2.5}, {X: -3.2, Y: -1.4}, {X: -3.2, Y: 1.4}, {X: -2.6}, {X: -4.6},
		{X: 0.5, Y: -1.0}, {X: 0.5, Y: 1.0}, {X: 4.7}, {X: 2.6, Y: -2.1}, {X: 2.6, Y: 2.1}, {X: toe}, {X: heel}, {X: 4.79, Y: -2.17}, {X: 4.79, Y: 2.17},
	}
	afternoon = []plane.Point{{X: -1, Y: -1.6}, {X: -1, Y: 1.6}, {X: 1.9, Y: -0.8}, {X: 3.3, Y: 0.8}}
	return both, morning, afternoon
}

// dropFloor sounds the floor from two strings along the pool, in two sessions.
func (d *day) dropFloor() {
	both, morning, afternoon := dropPlaces()
	n := 0
	place := func(list []plane.Point) (names []string) {
		for _, p := range list {
			n++
			m := fmt.Sprintf("f%d", n)
			d.at[m] = d.frame.Apply(p)
			d.raisedTo(m, d.surface["w1"]-dropDepth(p))
			names = append(names, m)
		}
		return names
	}
	deep, rest, late := place(both), place(morning), place(afternoon)
	read := func(m string) (string, float64) {
		side := 1.22
		if d.inFigure(d.at[m]).Y < 0 {
			side = -side
		}
		a, b := d.nearestMark(plane.Point{X: -dropLong / 2, Y: side}), d.nearestMark(plane.Point{X: dropLong / 2, Y: side * 1.27})
		return d.sound(m, "w1", a, b)
	}
	d.say("# soundings from two strings along the pool\n")
	for _, m := range append(append([]string(nil), deep...), rest...) {
		read(m)
	}
	d.board("w1", d.order[0])
	d.say("# after lunch: the rim at three marks again, the deep end again, four more\n")
	d.clock = 14 * 3600
	d.surface["w1"] -= dropFell
	var later []string
	moved := func(n string, is, by float64) {
		later = append(later, n)
		d.note(n, "water-moved", fmt.Sprintf("%.3f", is+by), fmt.Sprintf("%.3f", is))
	}
	for _, m := range []string{d.order[0], d.order[8], d.order[16]} {
		n, is := d.board("w1", m)
		moved(n, is, -dropFell)
	}
	for _, m := range append(deep, late...) {
		n, is := read(m)
		moved(n, is, dropFell)
	}
	d.surface["w1"] += dropFell
	d.expected = append(d.expected, expected{"water-moved", later})
	d.dropBreaks = fmt.Sprintf(`floor:
  breaks: [[f7, f8, f9], [f7, f1], [f9, f4], [f24, f2], [f25, f3]]
  pad: [f1, f2, f3, f4]
place: {shallow: %s, deep: %s}
rules: {depths: ispsc 2012 residential}
`, d.nearestMark(plane.Point{X: -dropLong / 2, Y: -1.22}), d.nearestMark(plane.Point{X: dropLong / 2}))
}
