package simulate

import (
	"math"

	"brimline/plane"
)

// readWater reads the water surface, and half of the time asks for a level of its own.
func (d *basinDraw) readWater() {
	d.water = -between(d.r, 0.10, 0.20)
	d.off = d.normal(BasinWater)
	d.Water = BasinHeight{Z: d.water + d.off, Own: 0, Below: true}
	d.True.Level = d.water
	if chance(d.r, 0.5) {
		level := -0.15
		d.Exact, d.True.Level = &level, level
	}
}

// below reads a height from the water surface.
func (d *basinDraw) below(z, sd float64) BasinHeight {
	return BasinHeight{Z: z + d.off + d.normal(sd), Own: sd, Below: true}
}

// above reads one from the mark on the rim.
func (d *basinDraw) above(z, sd float64) BasinHeight {
	return BasinHeight{Z: z + d.normal(sd), Own: sd}
}

// sound reads the depth at a place, which it puts down with an error. Depths are read to the floor,
// which goes on under steps in the truth and is read beside them.
func (d *basinDraw) sound(p plane.Point) {
	h := d.below(d.floor(p.X, p.Y), d.rod)
	at := p.Add(plane.Point{X: d.normal(d.place), Y: d.normal(d.place)})
	d.Floor = append(d.Floor, BasinPoint{at, h, d.place})
}

// readFloor reads breaks and pad first, then the rest on a grid that reaches near the walls.
func (d *basinDraw) readFloor() {
	for _, x := range d.breaks {
		first := len(d.Floor)
		for k := range 3 {
			y := []float64{0.15, d.width / 2, d.width - 0.15}[k]
			d.sound(plane.Point{X: x + d.normal(0.03), Y: y})
		}
		d.Breaks = append(d.Breaks, []int{first, first + 1, first + 2})
	}
	if d.Kind == "hopper" {
		d.readHopper()
	}
	d.readGrid(d.n - len(d.Floor))
	if d.Kind == "hopper" {
		n := len(d.Floor)
		d.Breaks = append(d.Breaks, []int{n + 1, 3}, []int{n + 2, 4})
	}
	for range 5 {
		if p, ok := d.open(0.1 + d.Cove); ok {
			d.True.Places = append(d.True.Places, p)
			d.True.Heights = append(d.True.Heights, d.floor(p.X, p.Y))
		}
	}
}

// readHopper reads the ends of the break at the wall, the corners of the pad, and the feet of the corners.
func (d *basinDraw) readHopper() {
	h := d.hopper
	for _, p := range [][2]float64{{h[0], 0.01}, {h[0], d.width - 0.01}, {h[1], h[3]}, {h[2], h[3]}, {h[2], h[4]}, {h[1], h[4]}} {
		d.sound(plane.Point{X: p[0] + d.normal(0.02), Y: p[1]})
	}
	d.Breaks = append(d.Breaks, []int{0, 1}, []int{0, 2}, []int{1, 5})
	d.Pad = []int{2, 3, 4, 5}
	s := 0.0
	for i, p := range d.rim.Segs {
		d.Feet = append(d.Feet, BasinLevel{s, d.above(d.floor(p.A.X, p.A.Y), basinFoot)})
		s += d.Rim.Segs[i].Length()
	}
}

// readGrid reads about n depths in rows, the outermost 0.2 to 0.4 m from the wall; more where the
// shape of the pool leaves fewer than twelve in all.
func (d *basinDraw) readGrid(n int) {
	in := between(d.r, 0.2, 0.4) + d.Cove
	list := d.grid(n, in)
	for len(d.Floor)+len(list) < 12 {
		n++
		list = d.grid(n, in)
	}
	for _, p := range list[:min(len(list), 60-len(d.Floor))] {
		d.sound(p)
	}
}

// grid is a set of about n places in rows, a little off them.
func (d *basinDraw) grid(n int, in float64) []plane.Point {
	box := d.rim.Bounds()
	l, w := box.Max.X-box.Min.X, box.Max.Y-box.Min.Y
	rows := max(2, int(math.Round(math.Sqrt(float64(max(n, 4))*w/l))))
	columns := max(2, int(math.Round(float64(n)/float64(rows))))
	var list []plane.Point
	for i := range columns {
		for j := range rows {
			p := plane.Point{
				X: box.Min.X + in + (l-2*in)*float64(i)/float64(columns-1),
				Y: box.Min.Y + in + (w-2*in)*float64(j)/float64(rows-1),
			}
			p = p.Add(plane.Point{X: d.normal(0.08), Y: d.normal(0.08)})
			if d.rim.Distance(p) < -0.1-d.Cove && math.IsInf(d.solid(p.X, p.Y), -1) {
				list = append(list, p)
			}
		}
	}
	return list
}

// open is a place of the floor so far from the wall.
func (d *basinDraw) open(in float64) (plane.Point, bool) {
	box := d.rim.Bounds()
	for range tries {
		p := plane.Point{X: between(d.r, box.Min.X, box.Max.X), Y: between(d.r, box.Min.Y, box.Max.Y)}
		if d.rim.Distance(p) < -in && math.IsInf(d.solid(p.X, p.Y), -1) {
			return p, true
		}
	}
	return plane.Point{}, false
}

// readWalls reads the rim at eight stations and more, and the faces of walls that lean.
func (d *basinDraw) readWalls() {
	whole := d.Rim.Length()
	n := 8 + d.r.IntN(6)
	for k := range n {
		s := whole * float64(k) / float64(n)
		h := d.above(d.rise(s), basinLevel)
		if k == 0 {
			h = BasinHeight{}
		}
		d.Levels = append(d.Levels, BasinLevel{s, h})
	}
	if d.Kind != "leaning walls" {
		return
	}
	n = 8 + d.r.IntN(7)
	for k := range n {
		i := (k*len(d.ring) + len(d.ring)/2) / n
		f := BasinFace{S: d.ring[i].s}
		for _, down := range []float64{0.3, 0.9} {
			f.Down, f.SD = append(f.Down, down), append(f.SD, basinFace)
			f.Outward = append(f.Outward, d.lean(i)*down+d.normal(basinFace))
		}
		d.Faces = append(d.Faces, f)
	}
}

// readSolids reads rings and tops of steps and benches.
func (d *basinDraw) readSolids() {
	for _, s := range d.solids {
		off := func() float64 { return d.normal(0.005) }
		x0, x1, y0, y1 := s.x0, s.x1+off(), s.y0, s.y1+off()
		if x0 > 0 {
			x0 += off()
		}
		if y0 > 0 {
			y0 += off()
		}
		t := BasinTread{plane.Polyline([]plane.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}, true), d.below(s.top, basinTread)}
		if s.ledge {
			d.Ledges = append(d.Ledges, t)
		} else {
			d.Treads = append(d.Treads, t)
		}
	}
}
