package draft

import (
	"math"
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// contours draws the lines of one depth, each broken where its figure stands on it.
func (c *depthCanvas) contours() {
	for _, l := range c.depths.Contours {
		if len(l.Points) < 2 {
			continue
		}
		path := c.view.Path(plane.Polyline(l.Points, l.Closed))
		c.shown.contours = true
		at, half, ok := c.contourLabel(path, c.contourText(l.Depth))
		if !ok {
			c.drawContour(path)
			continue
		}
		whole := path.Length()
		from, to := at-half, at+half
		if l.Closed {
			c.drawContour(alongOf(path, to, from+whole))
			continue
		}
		c.drawContour(alongOf(path, 0, from))
		c.drawContour(alongOf(path, to, whole))
	}
}

func (c *depthCanvas) drawContour(p plane.Path) {
	if len(p.Segs) == 0 {
		return
	}
	c.field.path(p, overContour, 0)
	c.draw(sheet.Item{Layer: sheet.LayerUnder, Pen: sheet.PenHair, Shape: sheet.Path{Path: p}})
}

// overContour is what a figure on a contour costs.
const overContour = 8.0

// contourText is the depth of a line, in metres with as many decimals as the step between lines has.
func (c *depthCanvas) contourText(m float64) string {
	if c.fig.lengthUnit() != "m" {
		return c.fig.length(m)
	}
	if c.depths.Step < 0.1 {
		return strconv.FormatFloat(m, 'f', 2, 64)
	}
	return strconv.FormatFloat(m, 'f', 1, 64)
}

// contourLabel looks for a place of the figure on its line: half-way first, then elsewhere, where the line
// is nearly straight over the figure's length. at and half are lengths along the path on paper.
func (c *depthCanvas) contourLabel(path plane.Path, s string) (at, half float64, ok bool) {
	w := sheet.Width(s, smallHeight, false)
	whole := path.Length()
	if whole < 2.2*w {
		return 0, 0, false
	}
	half = w/2 + 0.8
	type place struct{ at float64 }
	var list []candidate
	var places []place
	const tries = 24
	for k := range tries {
		share := math.Mod(0.5+0.5/tries+float64(k)*0.38196601125, 1) // the golden section spreads tries evenly
		x := half + share*(whole-2*half)
		p, u := pointAlong(path, x)
		p0, _ := pointAlong(path, x-half)
		p1, _ := pointAlong(path, x+half)
		if p0.Dist(p1) < 1.9*half {
			continue
		}
		if d := p1.Sub(p0); d.Len() > 0 {
			u = d.Unit()
		}
		t := sheet.Text{S: s, At: p, Height: smallHeight, Anchor: sheet.MidCentre, Turn: sheet.Upright(plane.Angle(u))}
		list = append(list, textCandidate(sheet.LayerUnder, t, 0.2*float64(k)))
		places = append(places, place{x})
	}
	best, found := c.field.best(list, 0, forbidden)
	if !found {
		return 0, 0, false
	}
	for i := range list {
		if list[i].rooms[0] == best.rooms[0] {
			at = places[i].at
		}
	}
	c.field.keep(best, 0, 0)
	c.draw(best.draw()...)
	return at, half, true
}

// pointAlong is the place so far along a path, and its direction there; beyond the end of a ring it
// goes on from the start.
func pointAlong(p plane.Path, at float64) (plane.Point, plane.Point) {
	if p.Closed {
		whole := p.Length()
		at = math.Mod(math.Mod(at, whole)+whole, whole)
	}
	seg, t, ok := p.Place(at)
	if !ok {
		seg, t = len(p.Segs)-1, 1
	}
	return p.Segs[seg].At(t), p.Segs[seg].Tangent(t)
}

// alongOf is the part of a path between two lengths along it.
func alongOf(p plane.Path, from, to float64) plane.Path {
	if to-from < 0.3 {
		return plane.Path{}
	}
	n := float64(len(p.Segs))
	turns := func(at float64) float64 {
		whole, extra := p.Length(), 0.0
		if at > whole {
			at, extra = at-whole, n
		}
		seg, t, ok := p.Place(at)
		if !ok {
			return n
		}
		return float64(seg) + t + extra
	}
	return stretchOf(p, span{turns(from), turns(to)})
}
