package simulate

import (
	"math"
	"slices"

	"brimline/plane"
)

// truth adds up what is true at the level asked for: the floor on a fine grid within the rim, the walls
// along it, and coves by the paths of their centroids (Pappus).
func (d *basinDraw) truth() {
	t := &d.True
	d.sumFloor(t)
	d.sumWalls(t)
	d.sumCoves(t)
	d.sumSteps(t)
}

// gridStep is that of the fine grid (metres).
const gridStep = 0.05

// sumFloor: upright columns over the area within the rim, in strips across.
func (d *basinDraw) sumFloor(t *BasinTruth) {
	box := d.rim.Bounds()
	columns := int(math.Ceil((box.Max.X - box.Min.X) / gridStep))
	dx := (box.Max.X - box.Min.X) / float64(columns)
	for i := range columns {
		x := box.Min.X + (float64(i)+0.5)*dx
		ys := d.across(x)
		for k := 0; k+1 < len(ys); k += 2 {
			n := int(math.Ceil((ys[k+1] - ys[k]) / gridStep))
			dy := (ys[k+1] - ys[k]) / float64(n)
			for j := range n {
				d.column(t, x, ys[k]+(float64(j)+0.5)*dy, dx*dy)
			}
		}
	}
}

// column adds one column of water.
func (d *basinDraw) column(t *BasinTruth, x, y, area float64) {
	z := d.floor(x, y)
	t.Area += area
	if top := d.solid(x, y); top > z {
		t.Volume += area * (t.Level - top)
		t.Wetted += area
		return
	}
	const h = 1e-4
	gx, gy := (d.floor(x+h, y)-d.floor(x-h, y))/(2*h), (d.floor(x, y+h)-d.floor(x, y-h))/(2*h)
	t.Volume += area * (t.Level - z)
	t.Wetted += area * math.Sqrt(1+gx*gx+gy*gy)
}

// across are the places where the line at x crosses the rim, in order.
func (d *basinDraw) across(x float64) []float64 {
	var ys []float64
	for i, p := range d.ring {
		q := d.ring[(i+1)%len(d.ring)]
		if (p.at.X > x) != (q.at.X > x) {
			ys = append(ys, p.at.Y+(q.at.Y-p.at.Y)*(x-p.at.X)/(q.at.X-p.at.X))
		}
	}
	slices.Sort(ys)
	return ys
}

// sumWalls: the wall from the level down to the floor, with the wedge by which it leans out, whose
// floor and surface count too. A corner between walls that lean out by u and v makes the wall longer
// by (u + v)·tan of half its turn.
func (d *basinDraw) sumWalls(t *BasinTruth) {
	n := len(d.ring)
	for i, p := range d.ring {
		q := d.ring[(i+1)%n]
		x, y := (p.at.X+q.at.X)/2, (p.at.Y+q.at.Y)/2
		ds := p.at.Dist(q.at)
		lean := d.lean(i)
		low := d.floor(x, y)
		if top := d.solid(x, y); top > low {
			low = top
		}
		rim := d.rise(p.s)
		from, to := rim-t.Level, rim-low
		wedge := lean * (to*to - from*from) / 2
		t.Volume += ds * wedge
		t.Area += ds * lean * from
		t.Wetted += ds*(t.Level-low)*math.Sqrt(1+lean*lean) + ds*lean*to
		before := d.lean((i + n - 1) % n)
		t.Wetted += (lean + before) / 2 * (to*to - from*from) * math.Tan(p.turn/2)
	}
}

// sumCoves: the section of a cove carried round the rim at the distance of its centroid. Quarter-circle fillet:
// area r²(1 − π/4), centroid r(10 − 3π)/(12 − 3π) from each side; its arc πr/2, centroid r(1 − 2/π).
func (d *basinDraw) sumCoves(t *BasinTruth) {
	r := d.Cove
	if r == 0 {
		return
	}
	round, less := 0.0, 0.0
	n := len(d.ring)
	for i, p := range d.ring {
		round += p.at.Dist(d.ring[(i+1)%n].at)
		less += 2 * math.Tan(p.turn/2)
	}
	area, at, line, on := r*r/2, r/3, r*math.Sqrt2, r/2
	if d.Round {
		area, at = r*r*(1-math.Pi/4), r*(10-3*math.Pi)/(12-3*math.Pi)
		line, on = r*math.Pi/2, r*(1-2/math.Pi)
	}
	t.Volume -= area * (round - at*less)
	t.Wetted += line * (round - on*less)
	t.Wetted -= r * round              // of the wall
	t.Wetted -= r * (round - r/2*less) // of the floor
}

// sumSteps adds the upright fronts of steps and benches.
func (d *basinDraw) sumSteps(t *BasinTruth) {
	for _, s := range d.solids {
		side := func(x0, y0, x1, y1, ox, oy float64) {
			length := math.Hypot(x1-x0, y1-y0)
			n := int(math.Ceil(length / 0.01))
			for k := range n {
				u := (float64(k) + 0.5) / float64(n)
				x, y := x0+(x1-x0)*u+ox, y0+(y1-y0)*u+oy
				if !d.rim.Contains(plane.Point{X: x, Y: y}) || d.solid(x-2*ox, y-2*oy) > s.top {
					continue // at the wall, or below a higher step
				}
				t.Wetted += length / float64(n) * math.Max(0, s.top-math.Max(d.floor(x, y), d.solid(x, y)))
			}
		}
		const out = 1e-6
		side(s.x0, s.y0, s.x1, s.y0, 0, -out)
		side(s.x1, s.y0, s.x1, s.y1, out, 0)
		side(s.x0, s.y1, s.x1, s.y1, 0, out)
		side(s.x0, s.y0, s.x0, s.y1, -out, 0)
	}
}
