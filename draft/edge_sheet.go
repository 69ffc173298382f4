package draft

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// profileTitle heads the shapes of the edge.
const profileTitle = "Edge profiles"

// profileWide is the paper of one edge profile across, in millimetres, with its names; profileMost what its
// shape may take.
const (
	profileWide = 88.0
	profileMost = 60.0
)

// edgeProfiles draws the shape of the edge at each mark where it was read, at 1:5 or the nearest scale
// that goes in.
func (p *pages) edgeProfiles(d *Depths) {
	if len(d.EdgeProfiles) == 0 {
		return
	}
	scale, tall := p.profileScale(d.EdgeProfiles)
	x, y := p.free.Min.X, p.at.Y
	fresh := func() {
		p.newPage()
		p.name(profileTitle)
		x, y = p.free.Min.X, p.free.Max.Y
	}
	if y-tall < p.free.Min.Y {
		fresh()
	} else {
		p.name(profileTitle)
	}
	for _, e := range d.EdgeProfiles {
		if x+profileWide > p.free.Max.X {
			x, y = p.free.Min.X, y-tall
		}
		if y-tall < p.free.Min.Y {
			fresh()
		}
		s := &p.sheets[len(p.sheets)-1]
		s.Items = append(s.Items, p.edgeProfile(e, scale, plane.Box{Min: plane.Point{X: x, Y: y - tall}, Max: plane.Point{X: x + profileWide, Y: y}})...)
		x += profileWide
	}
	p.at, p.wide = plane.Point{X: p.free.Max.X, Y: p.free.Min.Y}, 0
}

// profileScale is the first scale from 1:5 (3 in to the foot for feet) at which all profiles go in, and how
// much paper each then takes from its title down.
func (j *job) profileScale(list []EdgeProfile) (sheet.Scale, float64) {
	wide, high, most := 0.0, 0.0, 0
	for _, e := range list {
		b := e.box()
		wide, high, most = max(wide, b.Max.X-b.Min.X), max(high, b.Max.Y-b.Min.Y), max(most, len(e.Points))
	}
	for _, s := range sheet.Scales(j.fig.feet()) {
		k := s.PerMetre()
		if s >= 4 && wide*k <= profileWide-66 && high*k <= profileMost {
			return s, 26 + max(high*k, 4.6*float64(most-1))
		}
	}
	return 1000, 26 + 4.6*float64(most)
}

// box holds a profile: outward to the right, downward down.
func (e EdgeProfile) box() plane.Box {
	box := plane.EmptyBox()
	for _, q := range e.Points {
		box = box.Join(plane.BoundsOf(q.at()))
	}
	return box
}

// edgeProfile draws one: the first edge at the upper left of what is drawn, outward to the right,
// downward down; the water would lie at the left.
func (j *job) edgeProfile(e EdgeProfile, scale sheet.Scale, box plane.Box) []sheet.Item {
	c := &canvas{job: j}
	extent := e.box()
	c.view = sheet.View{Scale: scale, Model: plane.Point{X: extent.Min.X, Y: extent.Max.Y}, Paper: plane.Point{X: box.Min.X + 5, Y: box.Max.Y - 18}}
	head := "Edge at " + e.Mark
	at := plane.Point{X: box.Min.X + 2, Y: box.Max.Y - 6}
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: head, At: at, Height: dimHeight, Bold: true}})
	how := c.view.Scale.String() + ", heights the same; water at the left"
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: how, At: at.Sub(plane.Point{Y: 4.6}), Height: smallHeight}})
	var pts []plane.Point
	for _, q := range e.Points {
		pts = append(pts, c.view.Point(q.at()))
	}
	c.draw(sheet.Item{Layer: sheet.LayerAround, Pen: sheet.PenThin, Shape: sheet.Polyline(false, pts...)})
	c.callouts(e, pts)
	return c.items
}

// callouts name the edges in a column at the right, one below the other, each with a hairline to its place.
func (c *canvas) callouts(e EdgeProfile, pts []plane.Point) {
	right, y := pts[0].X, pts[0].Y
	for _, p := range pts {
		right = max(right, p.X)
		c.draw(sheet.Item{Layer: sheet.LayerMarks, Fill: sheet.Filled(sheet.Black), Shape: sheet.Circle{Centre: p, R: dotR}})
	}
	for i, q := range e.Points {
		words := edgeWord(q.Edge)
		if i > 0 {
			words += ": " + c.said(q.Outward, "out", "in") + ", " + c.said(q.Down, "down", "up")
			y = min(y-4.6, pts[i].Y)
		}
		at := plane.Point{X: right + 7, Y: y}
		c.draw(
			sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: words, At: at, Height: smallHeight, Anchor: sheet.MidLeft}},
			sheet.Item{Layer: sheet.LayerReadings, Pen: sheet.PenHair, Shape: sheet.Line(pts[i], at.Sub(plane.Point{X: 1}))})
	}
}

// said says a step one way or the other in words.
func (j *job) said(m float64, ahead, back string) string {
	switch {
	case math.IsNaN(m):
		return ahead + " not read"
	case m < 0:
		return j.fig.whole(-m) + " " + back
	}
	return j.fig.whole(m) + " " + ahead
}

// at is where a point is drawn: outward to the right, downward down.
func (q EdgePoint) at() plane.Point {
	p := plane.Point{X: q.Outward, Y: -q.Down}
	if math.IsNaN(p.X) {
		p.X = 0
	}
	if math.IsNaN(p.Y) {
		p.Y = 0
	}
	return p
}
