package network

import (
	"slices"

	"brimline/fieldbook"
)

// uprightKinds are the kinds whose first value is read of heights alone.
var uprightKinds = []string{"level", "staff", "water", "depth"}

// upright tells a reading of heights which it touches: nothing in plan, but for the foot of a depth
// below a line or along the slope.
func (g *builder) upright(o *Obs, r *fieldbook.Taken) {
	if !slices.Contains(uprightKinds, r.Kind) {
		return
	}
	o.Upright = true
	for _, m := range r.Marks {
		if k := g.n.ByName[m]; r.Kind != "depth" || m == r.Marks[0] || r.BelowIs == "mark" && m == r.Marks[len(r.Marks)-1] {
			o.Of = append(o.Of, k)
		}
	}
	g.rises(o, g.up.of[o.Reading])
	switch r.Kind {
	case "staff":
		o.Sight = g.book.Sight(r.Reading)
		if len(o.Extra) < 3 {
			o.Zero = g.book.Setup(r.Setup).Collimation * o.Sight
		}
	case "depth":
		g.foot(o, r)
	}
}

// rises lets a reading touch the blocks of heights.
func (g *builder) rises(o *Obs, blocks []int) {
	for _, b := range blocks {
		o.Extra = append(o.Extra, g.n.FreeBlock(b))
	}
}

// foot says where a depth was read below: between the marks of a line that have heights, or along the
// slope from a mark.
func (g *builder) foot(o *Obs, r *fieldbook.Taken) {
	switch {
	case r.BelowIs == "line" && g.up.nodes[o.Reading] != nil:
		o.Foot = &Foot{Mark: o.Of[0], Marks: g.up.nodes[o.Reading], Closed: g.runsOf(r.Below).Closed}
	case r.BelowIs == "mark" && r.Slope:
		o.Foot = &Foot{Mark: o.Of[0], Marks: []int{o.Of[1]}, Slant: true}
	}
}

// half is the second observation of a reading that has two: the height of a seen mark, and the place of
// a sounding along its string.
func (g *builder) half(i int, r *fieldbook.Taken, def []float64) (Obs, bool) {
	o := Obs{Reading: i, Setup: -1, Free: -1, Scale: 1, Check: r.Check, Computed: r.Computed}
	switch {
	case r.Kind == "seen" && len(r.Values) > 2:
		s := g.n.SetupBlock(g.n.SetupAt[r.Setup])
		o.Kind, o.Skip, o.Upright, o.Setup, o.Solve = SeenHeight{}, 2, true, int(s), g.n.Dim(s) == 4
		o.Of = []int{g.n.ByName[r.Marks[0]]}
		g.rises(&o, g.up.of[i])
	case r.Kind == "depth" && len(r.Values) > 2:
		o.Kind, o.Skip = Offset{}, 1
		for _, m := range r.Marks[:3] {
			o.Marks = append(o.Marks, g.n.ByName[m])
		}
	default:
		return o, false
	}
	for _, v := range r.Values[o.Skip:] {
		o.Values = append(o.Values, v.Metres)
	}
	o.SD = make([]float64, len(o.Values))
	g.sigma(&o, r, def)
	g.touch(&o)
	return o, true
}

// slope lets a tie along the slope see the heights of its ends. Without them it is taken as level and,
// since it can only be too long then, with a further standard deviation while it is.
func (g *builder) slope(o *Obs, r *fieldbook.Taken) {
	if r.Kind != "tie" || !r.Slope {
		return
	}
	a, b, ok := g.up.climbs(r)
	if !ok {
		o.Long = max(o.Long, bentBy)
		if inForce(r) {
			g.level = append(g.level, r.N)
		}
		return
	}
	o.Slope = true
	g.rises(o, []int{a, b})
}

// runsOf is the line of that name, or that which it is derived from.
func (g *builder) runsOf(name string) fieldbook.Line {
	l, _ := g.book.Line(name)
	for range g.book.Lines {
		if l.From == "" {
			break
		}
		l, _ = g.book.Line(l.From)
	}
	return l
}
