package draft

import (
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// sectionCanvas is a section in the making.
type sectionCanvas struct {
	*canvas
	section placedSection
	depths  *Depths
	times   float64
}

func (p *pages) newSectionCanvas(s placedSection, d *Depths, scale sheet.Scale, times float64) *sectionCanvas {
	c := &sectionCanvas{canvas: &canvas{job: p.job}, section: s, depths: d, times: times}
	c.view.Scale = scale
	b := s.box()
	low, high := c.spot(b.Min), c.spot(b.Max)
	c.field.area = plane.Box{Min: plane.Point{X: low.X - sectionSide + 1, Y: low.Y - sectionFoot + 1}, Max: plane.Point{X: high.X + sectionSide - 1, Y: max(high.Y, s.at.Y) + sectionHead}}
	return c
}

// spot is a place of the section, metres along and height, on paper.
func (c *sectionCanvas) spot(q plane.Point) plane.Point {
	k := c.view.Scale.PerMetre()
	return c.section.at.Add(plane.Point{X: q.X * k, Y: (q.Y - c.depths.Level) * k * c.times})
}

func (c *sectionCanvas) compose(long bool) {
	c.outlineOfCut()
	c.waterLine()
	c.title(long)
	c.chain()
	c.rimHeights()
	c.depthFigures()
	c.partNames()
}

// outlineOfCut draws what is cut: wide.
func (c *sectionCanvas) outlineOfCut() {
	for _, p := range c.section.Pieces {
		var pts []plane.Point
		for _, q := range p.Points {
			pts = append(pts, c.spot(q))
		}
		if len(pts) < 2 {
			continue
		}
		path := sheet.Polyline(false, pts...)
		c.field.path(path.Path, forbidden, crossEdge)
		c.draw(sheet.Item{Layer: sheet.LayerEdge, Pen: sheet.PenEdge, Shape: path})
	}
}

// waterLine draws the surface with its symbol and its name over it.
func (c *sectionCanvas) waterLine() {
	for i, w := range c.section.wet(c.depths.Level) {
		a, b := c.spot(plane.Point{X: w[0], Y: c.depths.Level}), c.spot(plane.Point{X: w[1], Y: c.depths.Level})
		c.field.line(a, b, forbidden, crossThin)
		c.draw(sheet.Item{Layer: sheet.LayerUnder, Pen: sheet.PenThin, Shape: sheet.Line(a, b)})
		if i > 0 || a.Dist(b) < 12 {
			continue
		}
		tip := a.Add(plane.Point{X: 7})
		tri := sheet.Polyline(true, tip, tip.Add(plane.Point{X: 1.5, Y: 2.4}), tip.Add(plane.Point{X: -1.5, Y: 2.4}))
		c.field.room(boxRoom(plane.Box{Min: tip.Sub(plane.Point{X: 1.6}), Max: tip.Add(plane.Point{X: 1.6, Y: 2.6})}), forbidden, throughDot)
		c.draw(sheet.Item{Layer: sheet.LayerUnder, Pen: sheet.PenThin, Shape: tri})
		t := sheet.Text{S: "water " + c.depths.Water, At: tip.Add(plane.Point{X: 3, Y: 1}), Height: smallHeight}
		c.put([]candidate{textCandidate(sheet.LayerWords, t, 0)}, 0)
	}
}

// title stands over the section.
func (c *sectionCanvas) title(long bool) {
	at := plane.Point{X: c.field.area.Min.X + 1, Y: c.field.area.Max.Y - 5}
	n := c.section.Name
	name := "Section " + n + "–" + n
	how := howDrawn(whatCut(long), c.view.Scale, c.times)
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: name, At: at, Height: dimHeight, Bold: true}})
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: how, At: at.Sub(plane.Point{Y: 4.6}), Height: smallHeight}})
	c.field.room(boxRoom(plane.Box{Min: plane.Point{X: c.field.area.Min.X, Y: at.Y - 6}, Max: c.field.area.Max}), forbidden, forbidden)
}

func whatCut(long bool) string {
	if long {
		return "from the shallow to the deep end"
	}
	return "across"
}

// howDrawn says the scales of a section.
func howDrawn(what string, scale sheet.Scale, times float64) string {
	if times == 1 {
		return what + "; " + scale.String() + ", heights the same"
	}
	return what + "; lengths " + scale.String() + ", heights " + strconv.FormatFloat(times, 'f', -1, 64) + " times larger"
}

// partNames name each part once, in the water beside its longest stretch.
func (c *sectionCanvas) partNames() {
	for _, part := range []string{"floor", "walls", "coves", "steps", "ledges"} {
		var best Cut
		for _, p := range c.section.Pieces {
			if p.Part == part && lengthOf(p) > lengthOf(best) {
				best = p
			}
		}
		if len(best.Points) < 2 {
			continue
		}
		path := plane.Polyline(best.Points, false)
		mid, way := pointAlong(path, path.Length()/2)
		out := way.Left()
		word := map[string]string{"walls": "wall", "coves": "cove"}[part]
		if word == "" {
			word = part
		}
		at := c.spot(mid)
		var list []candidate
		for _, far := range []float64{5, 6.5, 8, 10, 13, 17, 22} {
			for _, turn := range []float64{0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9, 1.2, -1.2} {
				list = append(list, noteSmall(at, out.Turn(turn), far, word, far+2*abs(turn)))
			}
		}
		c.put(list, crossThin)
	}
}

// noteSmall is a note in small letters, led to its place.
func noteSmall(at, dir plane.Point, far float64, word string, cost float64) candidate {
	t := sheet.Text{S: word, Height: smallHeight, Anchor: sheet.MidCentre}
	t.At = at.Add(dir.Mul(far + reach(dir, sheet.Width(word, smallHeight, false)/2, tallHalf*smallHeight)))
	from, to := at.Add(dir.Mul(0.9)), at.Add(dir.Mul(far-0.7))
	return candidate{cost: cost, rooms: []room{roomOf(t, 0.4)}, lines: []line{{a: from, b: to, alone: true}}, draw: func() []sheet.Item {
		return []sheet.Item{{Layer: sheet.LayerWords, Shape: t}, {Layer: sheet.LayerNumbers, Pen: sheet.PenHair, Shape: sheet.Line(from, to)}}
	}}
}

func lengthOf(c Cut) float64 {
	sum := 0.0
	for i := 1; i < len(c.Points); i++ {
		sum += c.Points[i-1].Dist(c.Points[i])
	}
	return sum
}
