package draft

import (
	"sort"

	"brimline/plane"
	"brimline/sheet"
)

// pitchLeast is the room along the edge that a numbered mark should have, in millimetres.
const pitchLeast = 4.6

// thin chooses which marks are numbered: all where there is room; else every second, fifth,
// tenth and so on along the edge, counted from its first mark, and those where runs meet.
func (c *canvas) thin() {
	c.skipped = map[string]bool{}
	for _, o := range c.paper {
		list := c.alongEdge(o)
		step := thinning(o.path.Length(), len(list))
		if step == 1 {
			continue
		}
		c.every = max(c.every, step)
		ends := map[string]bool{}
		for _, r := range o.runs {
			ends[r.From], ends[r.To] = true, true
		}
		for i, m := range list {
			if i%step != 0 && !ends[m] {
				c.skipped[m] = true
			}
		}
	}
}

// thinning is 1, 2, 5, 10 … so that the marks left have their room.
func thinning(length float64, marks int) int {
	for step := 1; ; step *= 10 {
		for _, k := range []int{1, 2, 5} {
			if n := step * k; marks <= n || length*float64(n) >= pitchLeast*float64(marks) {
				return n
			}
		}
	}
}

// alongEdge lists the marks of an outline in order from its first one.
func (c *canvas) alongEdge(o outline) []string {
	type placed struct {
		mark string
		at   float64
	}
	var list []placed
	for _, m := range c.all {
		p, ok := c.at(m)
		if !ok || c.lasting(m) {
			continue
		}
		if seg, t, q := o.path.Nearest(p); seg >= 0 && q.Dist(p) < 2 {
			list = append(list, placed{m, station(o.path, seg, t)})
		}
	}
	sort.SliceStable(list, func(i, k int) bool { return list[i].at < list[k].at })
	names := make([]string, len(list))
	for i, l := range list {
		names[i] = l.mark
	}
	return c.fromFirst(o, names)
}

// station is the place on a path as segments and a share of the next; the end of a ring is its start.
func station(p plane.Path, seg int, t float64) float64 {
	at := float64(seg) + t
	if p.Closed && at > float64(len(p.Segs))-1e-6 {
		return 0
	}
	return at
}

// fromFirst turns a list round so that it begins with the first mark of the outline's first run.
func (c *canvas) fromFirst(o outline, list []string) []string {
	if len(o.runs) == 0 {
		return list
	}
	for i, m := range list {
		if m == o.runs[0].From {
			return append(append([]string(nil), list[i:]...), list[:i]...)
		}
	}
	return list
}

// ground puts white under the words of the plan where readings are drawn, so that no hairline
// runs through a figure.
func (c *canvas) ground() {
	if !c.symbols.ties && len(c.symbols.odd) == 0 && len(c.details) == 0 {
		return
	}
	var patches []sheet.Item
	for _, it := range (sheet.Sheet{Items: c.items}).Flat() {
		if t, ok := it.Shape.(sheet.Text); ok {
			r := roomOf(t, 0.3)
			patches = append(patches, sheet.Item{Layer: sheet.LayerReadings, Fill: sheet.Filled(sheet.White), Shape: sheet.Polyline(true, r[:]...)})
		}
	}
	c.draw(patches...)
}
