package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// dimHeight is the lettering of dimensions, smallHeight that of everything else (ISO 3098 heights),
// in millimetres.
const (
	dimHeight   = 3.5
	smallHeight = 2.5
)

// shortRadius is the shortest radius on paper that carries its figure on its own leader.
const shortRadius = 13.0

// radii draws the centre of each arc that lies on the paper, and its radius on a leader.
func (c *canvas) radii() {
	for i, o := range c.paper {
		for k, r := range o.runs {
			m := c.metres[i].runs[k]
			if r.Kind != "arc" || r.Centre == nil || r.Radius == nil || len(r.segs) == 0 {
				continue
			}
			centre := c.view.Point(plane.Point{X: m.Centre[0], Y: m.Centre[1]})
			doubt := 0.0
			if r.RadiusSD != nil {
				doubt = 2 * *r.RadiusSD
			}
			text := "R " + c.fig.rounded(*r.Radius, doubt)
			if *r.Radius*c.view.Scale.PerMetre() >= shortRadius && c.put(c.leaders(r, centre, text), crossThin) {
				continue
			}
			c.note(o, r, text)
		}
	}
}

// centreArm is the arm of the small plus of an arc centre.
const centreArm = 1.5

// centre draws the small plus of an arc centre and keeps texts off it.
func (c *canvas) centre(p plane.Point) []sheet.Item {
	c.symbols.centre = true
	c.field.room(square(p, centreArm), forbidden, 0)
	across, up := plane.Point{X: centreArm}, plane.Point{Y: centreArm}
	return []sheet.Item{
		{Layer: sheet.LayerAxes, Pen: sheet.PenThin, Shape: sheet.Line(p.Sub(across), p.Add(across))},
		{Layer: sheet.LayerAxes, Pen: sheet.PenThin, Shape: sheet.Line(p.Sub(up), p.Add(up))},
	}
}

// leaders are the ways to draw a radius: to several places of the arc, from the centre, or from
// part of the way where the centre is far off or off the paper.
func (c *canvas) leaders(r run, centre plane.Point, text string) []candidate {
	const longest = 60.0
	path := plane.Path{Segs: r.segs}
	var list []candidate
	for i, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75} {
		foot := along(path, t)
		from := centre
		if from.Dist(foot) > longest || !square(from, 2).inside(c.field.area) {
			from = foot.Add(from.Sub(foot).Unit().Mul(min(longest*0.6, from.Dist(foot))))
		}
		for k, share := range []float64{0.5, 0.4, 0.6, 0.35, 0.65} {
			d := sheet.Dimension{Kind: sheet.DimRadius, A: from, B: foot, Text: text, Height: dimHeight, Share: share}
			list = append(list, c.leader(dimensionCandidate(d, 0.6*float64(i)+0.8*float64(k)), centre))
		}
	}
	return list
}

// leader adds the centre's plus to a radius where it lies on the paper and clear of the figure; a
// radius whose figure leaves no room for it does without, at a price.
func (c *canvas) leader(way candidate, centre plane.Point) candidate {
	plus := square(centre, centreArm+0.2)
	if !plus.inside(c.field.area) {
		return way
	}
	if way.rooms[0].meets(plus) || c.field.roomPrice(plus, 0, forbidden) >= forbidden {
		way.cost += 4
		return way
	}
	line := way.draw
	way.draw = func() []sheet.Item { return append(line(), c.centre(centre)...) }
	return way
}

// along is the place at a share of a path's length.
func along(p plane.Path, share float64) plane.Point {
	left := share * p.Length()
	for _, s := range p.Segs {
		if l := s.Length(); left > l {
			left -= l
		} else {
			return s.At(left / l)
		}
	}
	return p.Segs[len(p.Segs)-1].B
}

// dimensionCandidate is a dimension as a thing to place. A radius is taken a little short of the arc,
// which it rightly touches.
func dimensionCandidate(d sheet.Dimension, cost float64) candidate {
	p := d.Parts()
	cand := candidate{cost: cost, rooms: []room{roomOf(p.Text, 0.5)}}
	if len(p.Sign.Segs) > 0 {
		wide := roomOf(p.Text, 0.5)
		back := plane.Point{X: -1.3 * d.Height}.Turn(p.Text.Turn)
		wide[0], wide[3] = wide[0].Add(back), wide[3].Add(back)
		cand.rooms[0] = wide
	}
	for _, l := range p.Lines {
		pts := l.Flatten(0.2)
		if last := len(pts) - 1; d.Kind == sheet.DimRadius {
			pts[last] = toward(pts[last], pts[last-1], 1.6)
		}
		for i := 1; i < len(pts); i++ {
			cand.lines = append(cand.lines, line{a: pts[i-1], b: pts[i]})
		}
	}
	cand.lines = append(cand.lines, heads(p)...)
	cand.draw = func() []sheet.Item {
		return []sheet.Item{{Layer: sheet.LayerDimensions, Pen: sheet.PenThin, Shape: d}}
	}
	return cand
}

// heads are the broad ends of arrowheads, as lines to keep clear.
func heads(p sheet.Parts) []line {
	var out []line
	for _, a := range p.Arrows {
		out = append(out, line{a: a[1], b: a[2]})
	}
	return out
}

// toward moves a by up to d towards b, no further than half-way.
func toward(a, b plane.Point, d float64) plane.Point {
	return plane.Lerp(a, b, min(0.49, d/max(a.Dist(b), 1e-9)))
}

// note writes a figure outside the outline with an arrow to the middle of its run.
func (c *canvas) note(o outline, r run, text string) bool {
	at, dir := r.middle()
	out := dir.Left().Mul(-1)
	if o.ring < 0 {
		out = out.Mul(-1)
	}
	var list []candidate
	for _, d := range []float64{7, 9, 11, 14, 17, 21, 25, 30, 36, 43, 51, 60} {
		for _, a := range []float64{0, 0.35, -0.35, 0.7, -0.7, 1.05, -1.05, 1.3, -1.3} {
			list = append(list, noteCandidate(at, out.Turn(a), d, text, 0.4*d+4*abs(a)))
		}
	}
	if c.put(list, crossThin) {
		return true
	}
	c.unplaced = append(c.unplaced, r.From+"–"+r.To)
	return false
}

// noteCandidate sets a text d from a place in a direction, with a leader and its arrowhead.
func noteCandidate(at, dir plane.Point, d float64, text string, cost float64) candidate {
	t := sheet.Text{S: text, Height: dimHeight, Anchor: sheet.MidCentre}
	w := sheet.Width(text, dimHeight, false)
	t.At = at.Add(dir.Mul(d + reach(dir, w/2, tallHalf*dimHeight)))
	lead := sheet.Dimension{Kind: sheet.DimRadius, A: at.Add(dir.Mul(d - 1)), B: at}
	lines := append(heads(lead.Parts()), line{a: at.Add(dir.Mul(1.6)), b: at.Add(dir.Mul(d - 1)), alone: true})
	return candidate{
		cost: cost, rooms: []room{roomOf(t, 0.5)}, lines: lines,
		draw: func() []sheet.Item {
			return []sheet.Item{
				{Layer: sheet.LayerDimensions, Pen: sheet.PenThin, Shape: lead},
				{Layer: sheet.LayerDimensions, Shape: t},
			}
		},
	}
}

// tallHalf is half the height of a text with room for its tails on both sides, over that of its
// capitals.
const tallHalf = 0.75

// reach is how far an upright box of half sizes w, h reaches from its middle against direction u.
func reach(u plane.Point, w, h float64) float64 {
	return min(w/max(abs(u.X), 1e-9), h/max(abs(u.Y), 1e-9))
}

func abs(x float64) float64 { return max(x, -x) }
