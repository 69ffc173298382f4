package draft

import (
	"slices"

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
func (c *canvas) leaders(r run, centre plane.Point, text, under string) []candidate {
	const longest = 60.0
	path := plane.Path{Segs: r.segs}
	var list []candidate
	for i, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75} {
		foot := along(path, t)
		starts := []plane.Point{centre}
		if centre.Dist(foot) > longest || !square(centre, 2).inside(c.field.area) {
			starts = nil
			for _, l := range []float64{36, 26, 19} {
				starts = append(starts, foot.Add(centre.Sub(foot).Unit().Mul(min(l, centre.Dist(foot)))))
			}
		}
		for n, from := range starts {
			for k, share := range []float64{0.5, 0.4, 0.6, 0.35, 0.65} {
				if max(sheet.Width(text, dimHeight, false), sheet.Width(under, smallHeight, false)) > 0.95*from.Dist(foot) {
					continue
				}
				d := sheet.Dimension{Kind: sheet.DimRadius, A: from, B: foot, Text: text, Height: dimHeight, Share: share}
				way := dimensionCandidate(d, c.onMark(foot)+0.6*float64(i)+0.8*float64(k)+3*float64(n))
				list = append(list, c.leader(underLine(way, d, under), centre))
			}
		}
	}
	return list
}

// underLine adds a small text on the other side of a radius from its figure.
func underLine(way candidate, d sheet.Dimension, words string) candidate {
	if words == "" {
		return way
	}
	t := d.Parts().Text
	up := plane.Point{X: 1}.Turn(t.Turn).Left()
	t.S, t.Height = words, smallHeight
	t.At = plane.Lerp(d.A, d.B, d.Share).Sub(up.Mul(smallHeight + 1.2))
	way.rooms = append(way.rooms, roomOf(t, 0.4))
	line := way.draw
	way.draw = func() []sheet.Item { return append(line(), sheet.Item{Layer: sheet.LayerDimensions, Shape: t}) }
	return way
}

// leader adds the centre's plus to a radius where it lies on the paper and clear of the figure; a
// radius whose figure leaves no room for it does without, at a price.
func (c *canvas) leader(way candidate, centre plane.Point) candidate {
	plus := square(centre, centreArm+0.2)
	if !plus.inside(c.field.area) {
		return way
	}
	if slices.ContainsFunc(way.rooms, func(r room) bool { return r.meets(plus) }) || c.field.roomPrice(plus, 0, forbidden) >= forbidden {
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
	if tooShort(d, p) {
		cand.cost += forbidden
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

// tooShort says that a figure would lie on the extension lines or the arrowheads of its own dimension.
func tooShort(d sheet.Dimension, p sheet.Parts) bool {
	figure := roomOf(p.Text, 0.3)
	for _, l := range p.Lines[:len(p.Lines)-1] {
		if figure.cutBy(l.Segs[0].A, l.Segs[0].B) {
			return true
		}
	}
	return d.Kind == sheet.DimStraight && sheet.Width(d.Text, d.Height, false) > d.A.Dist(d.B)-1
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

// tallHalf is half the height of a text with room for its tails on both sides, over that of its
// capitals.
const tallHalf = 0.75

// reach is how far an upright box of half sizes w, h reaches from its middle against direction u.
func reach(u plane.Point, w, h float64) float64 {
	return min(w/max(abs(u.X), 1e-9), h/max(abs(u.Y), 1e-9))
}

func abs(x float64) float64 { return max(x, -x) }
