package draft

import (
	"math"

	"brimline/basin"
	"brimline/plane"
)

// wallTop is how high walls are drawn: as read, else a little above the water.
func (d *Depths) wallTop(b *basin.Basin) float64 {
	if _, ok := b.Rim(); ok {
		return math.Inf(1)
	}
	return d.Level + unreadWall
}

// unreadWall is how far above the water a wall is drawn whose top nobody read (metres).
const unreadWall = 0.15

// sections cuts along the axis, and across it at the shallow end, where the floor begins to fall, and at the
// deepest place.
func (d *Depths) sections(b *basin.Basin) {
	shallow, deep := b.Axis()
	d.Axis = [2]plane.Point{shallow, deep}
	top := d.wallTop(b)
	d.Long = cutThrough(b, "A", shallow, deep, top)
	way := deep.Sub(shallow).Unit()
	low, high := d.Long.reach()
	if high-low <= 0 {
		return
	}
	at := []float64{low + 0.15*(high-low), d.Long.falls(), d.Deepest.At.Sub(shallow).Dot(way)}
	var taken []float64
	for _, s := range at {
		if math.IsNaN(s) || s < low+0.1 || s > high-0.1 || !clearOf(taken, s, (high-low)/12) {
			continue
		}
		taken = append(taken, s)
		p := shallow.Add(way.Mul(s))
		c := cutThrough(b, string(rune('A'+len(taken))), p.Add(way.Left()), p, top)
		if len(c.Pieces) > 0 {
			d.Across = append(d.Across, c)
		}
	}
}

func clearOf(list []float64, s, by float64) bool {
	for _, x := range list {
		if math.Abs(x-s) < by {
			return false
		}
	}
	return true
}

// cutThrough is the section along the straight through two places, as far as the pool goes.
func cutThrough(b *basin.Basin, name string, from, to plane.Point, top float64) Section {
	s := Section{Name: name}
	for _, p := range b.Section(from, to) {
		c := Cut{Part: p.Part.String()}
		for _, q := range p.Points {
			c.Points = append(c.Points, plane.Point{X: q.S, Y: math.Min(q.Z, top)})
		}
		s.Pieces = append(s.Pieces, c)
	}
	low, high := s.reach()
	way := to.Sub(from).Unit()
	s.From, s.To = from.Add(way.Mul(low)), from.Add(way.Mul(high))
	for _, c := range s.Pieces {
		for k := range c.Points {
			c.Points[k].X -= low
		}
	}
	return s
}
