package examples_test

import (
	"fmt"
	"math"

	"brimline/plane"
)

// Sizes of Corner Cat upward and downward, metres: the raised wall and its spillway, the spa, the water
// below the rim, the floor's depth at the leg's end and its fall along the pool, and by how much the line of
// sight of the level rises for each metre.
const (
	catWall, catLip, catSpa = 0.45, 0.38, 0.40
	catBoard                = 0.095
	catShallow, catFall     = 1.10, 0.05
	catRises                = 0.003 / 20
)

// catDepth is how deep the floor lies at a place of the figure: it falls evenly along the pool.
func catDepth(p plane.Point) float64 { return catShallow + catFall*(p.X+6) }

// catVolume is the water by columns, by the midpoint rule.
func catVolume(outline plane.Path) float64 {
	const cell = 0.01
	sum := 0.0
	box := outline.Bounds()
	for x := box.Min.X + cell/2; x < box.Max.X; x += cell {
		for y := box.Min.Y + cell/2; y < box.Max.Y; y += cell {
			if p := (plane.Point{X: x, Y: y}); outline.Contains(p) {
				sum += catDepth(p) * cell * cell
			}
		}
	}
	return sum
}

// catBuilt are marks of what stands on the rim, in the frame of the figure: the foot and the top of the
// raised wall, the ends of its spillway, foot and top of the spa.
var catBuilt = map[string]plane.Point{
	"n1": {X: -6, Y: -2.95}, "n2": {X: -6, Y: 3.05}, "n3": {X: -6.01, Y: -2.95}, "n4": {X: -6.01, Y: 3.05},
	"w1": {X: -6.01, Y: -0.4}, "w2": {X: -6.01, Y: 0.4},
	"q1": {X: 4.1, Y: -3.75}, "q2": {X: 6, Y: -1.85}, "q3": {X: 4.1, Y: -3.76}, "q4": {X: 6.01, Y: -1.85},
}

// catStands lists them in the order read, with their heights above the rim.
var catStands = []struct {
	mark string
	up   float64
}{{"n1", 0}, {"n2", 0}, {"n3", catWall}, {"n4", catWall}, {"w1", catLip}, {"w2", catLip}, {"q1", 0}, {"q2", 0}, {"q3", catSpa}, {"q4", catSpa}}

// catLevels reads the rim by a level from two set-ups, one staff of it wrong by 100 mm, the marks of what
// stands on it, the water and the floor.
func (d *day) catLevels() {
	d.date, d.clock = "2026-06-23", 8*3600+30*60
	for _, m := range d.order {
		d.raisedTo(m, 0.0008*d.inFigure(d.at[m]).Y+0.002*d.noise.NormFloat64())
	}
	first := d.order[0]
	for _, s := range catStands {
		d.at[s.mark] = d.frame.Apply(catBuilt[s.mark])
		d.raisedTo(s.mark, d.z[first]+s.up+0.002*d.noise.NormFloat64())
	}
	low := d.z[first]
	for m := range d.z { // order-free: each moves alone
		d.z[m] -= low
	}
	d.say("# what stands on the rim: raised wall n, its spillway w, spa q\n")
	for _, s := range catStands {
		d.tie("A", s.mark, "")
		d.tie("B", s.mark, "")
		d.tie("C", s.mark, "")
	}
	d.say("# level and staff from two set-ups; sights by the stadia lines\n")
	stands := []struct {
		name string
		at   plane.Point
		line float64
	}{{"S1", plane.Point{X: -9.5, Y: -5.5}, 1.318}, {"S2", plane.Point{X: 8.5, Y: 3.0}, 1.407}}
	for k, s := range stands {
		for i, m := range d.order {
			if i%2 == 0 || (i+k)%3 == 0 {
				d.staff(s.name, m, s.line, d.frame.Apply(s.at), k == 1 && i == 18)
			}
		}
		for _, x := range catStands {
			if k == 0 || x.mark[0] == 'q' {
				d.staff(s.name, x.mark, s.line, d.frame.Apply(s.at), false)
			}
		}
		d.staff(s.name, first, s.line, d.frame.Apply(s.at), false)
	}
	d.catFloor()
}

// staff reads a staff on a mark; a wrong one is booked 100 mm short.
func (d *day) staff(setup, mark string, line float64, at plane.Point, wrong bool) {
	sight := math.Round(at.Dist(d.at[mark])*10) / 10
	text, is := d.staffed(setup, mark, line, sight, catRises)
	if !wrong {
		d.say(fmt.Sprintf(text, is))
		return
	}
	d.say(fmt.Sprintf(text, is-0.1))
	d.plant(d.number(), "staff", fmt.Sprintf("%.3f", is), fmt.Sprintf("%.3f", is-0.1))
}

// catFloor reads the water under the rim and sounds the floor from strings across the pool.
func (d *day) catFloor() {
	d.surface["pool"] = d.z[d.order[0]] - catBoard
	d.say("# the water under the rim, then soundings from a string along the long side and one along the leg\n")
	for i, m := range d.order {
		if i%4 == 0 || i == 18 {
			d.board("pool", m)
		}
	}
	a, b := d.nearestMark(plane.Point{X: -5.4, Y: -3.75}), d.nearestMark(plane.Point{X: 2.5, Y: -3.75})
	e, f := d.nearestMark(plane.Point{X: -6, Y: -3.15}), d.nearestMark(plane.Point{X: -6, Y: 2})
	n := 0
	read := func(x, y float64, from, to string) {
		n++
		m := fmt.Sprintf("f%d", n)
		d.at[m] = d.frame.Apply(plane.Point{X: x, Y: y})
		d.raisedTo(m, d.surface["pool"]-catDepth(plane.Point{X: x, Y: y}))
		d.sound(m, "pool", from, to)
	}
	for k := range 6 {
		x := -5.7 + 11.4*float64(k)/5
		for _, y := range []float64{-3.45, -1.75, -0.05} {
			read(x, y, a, b)
		}
	}
	for _, y := range []float64{1.7, 3.4} {
		for _, x := range []float64{-5.7, -3.5, -1.3} {
			read(x, y, e, f)
		}
	}
	d.board("pool", d.order[0])
}

const catBuiltSays = `  nfoot:
    edge: other
    runs:
    - {straight: [n1, n2]}
  ntop:
    edge: other
    runs:
    - {straight: [n3, n4]}
  weir:
    edge: other
    runs:
    - {straight: [w1, w2]}
  sfoot:
    edge: other
    runs:
    - {straight: [q1, q2]}
  stop:
    edge: other
    runs:
    - {straight: [q3, q4]}
raised:
- {name: raised wall, foot: nfoot, top: ntop, cap: 40 mm, plumb: true}
- {name: spa, foot: sfoot, top: stop}
spills:
- {name: spillway, kind: spillway, lip: weir, drop: 475 mm, basin: rim}
setups: {S1: {collimation: solve}, S2: {collimation: solve}}
`
