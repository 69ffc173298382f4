package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// stations are dots with the doubt of their heights as upright bars.
func (c *profileChart) stations() {
	for _, s := range c.profile.Stations {
		at := c.spot(s.Along, s.Off)
		c.field.room(square(at, dotR+0.3), forbidden, throughDot)
		c.draw(sheet.Item{Layer: sheet.LayerMarks, Fill: sheet.Filled(sheet.Black), Shape: sheet.Circle{Centre: at, R: dotR}})
		if s.SD == nil || *s.SD == 0 {
			continue
		}
		half := plane.Point{Y: c.up(cover * *s.SD)}
		end := plane.Point{X: 0.8}
		for _, l := range [][2]plane.Point{{at.Sub(half), at.Add(half)}, {at.Sub(half).Sub(end), at.Sub(half).Add(end)}, {at.Add(half).Sub(end), at.Add(half).Add(end)}} {
			c.field.line(l[0], l[1], overFaint, 0)
			c.draw(sheet.Item{Layer: sheet.LayerEllipses, Pen: sheet.PenHair, Shape: sheet.Line(l[0], l[1])})
		}
	}
}

// values are the heights against the mean, above the stations or below; those that find no room stand in
// the table.
func (c *profileChart) values() {
	for _, s := range c.profile.Stations {
		at := c.spot(s.Along, s.Off)
		t := sheet.Text{S: c.signed(s.Off), Height: smallHeight, Anchor: sheet.MidCentre}
		var list []candidate
		for _, d := range []float64{3, 4, 5, 6.5, 8.5, 11} {
			for _, way := range []float64{1, -1} {
				for _, aside := range []float64{0, 1.5, -1.5, 3.5, -3.5, 5.5, -5.5} {
					q := t
					q.At = at.Add(plane.Point{X: aside, Y: way * d})
					cost := d + abs(aside)
					if way < 0 {
						cost++
					}
					list = append(list, textCandidate(sheet.LayerNumbers, q, cost))
				}
			}
		}
		c.put(list, 0)
	}
}

// textCandidate is a text in one place.
func textCandidate(l sheet.Layer, t sheet.Text, cost float64) candidate {
	return candidate{cost: cost, rooms: []room{roomOf(t, 0.35)}, draw: func() []sheet.Item {
		return []sheet.Item{{Layer: l, Shape: t}}
	}}
}

// stationNames hang below the profile, with a hairline up to their stations; upright where they
// stand close.
func (c *profileChart) stationNames() {
	upright := false
	for i, s := range c.profile.Stations {
		if i > 0 {
			gap := (s.Along - c.profile.Stations[i-1].Along) * c.view.Scale.PerMetre()
			upright = upright || gap < sheet.Width(s.Mark, smallHeight, false)+2
		}
	}
	for _, s := range c.profile.Stations {
		at := c.spot(s.Along, s.Off)
		t := sheet.Text{S: s.Mark, At: plane.Point{X: at.X, Y: c.names - 2}, Height: smallHeight, Anchor: sheet.MidCentre}
		if upright {
			t.Turn, t.Anchor = quarterTurn, sheet.MidRight
		}
		if c.put([]candidate{textCandidate(sheet.LayerNumbers, t, 0)}, 0) {
			a, b := plane.Point{X: at.X, Y: at.Y - dotR}, plane.Point{X: at.X, Y: c.names}
			c.field.line(a, b, overContour, 0)
			c.draw(sheet.Item{Layer: sheet.LayerReadings, Pen: sheet.PenHair, Ink: sheet.Grey, Shape: sheet.Line(a, b)})
		}
	}
}
