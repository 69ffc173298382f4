package draft

import (
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// Sizes of the symbols in millimetres.
const (
	dotR      = 0.6
	openR     = 0.9
	pegR      = 2.0
	peg       = "peg"
	benchmark = "benchmark"
)

// drawMarks draws the symbols of all placed marks and of the joints of runs.
func (c *canvas) drawMarks() {
	joints := c.joints()
	for _, m := range c.marks {
		p, ok := c.at(m)
		if !ok {
			continue
		}
		switch c.kind(m) {
		case peg:
			c.symbols.peg = true
			c.draw(pegSymbol(p)...)
			c.field.room(square(p, pegR+0.5), forbidden, throughDot)
		case benchmark:
			c.symbols.benchmark = true
			c.draw(benchmarkSymbol(p)...)
			c.field.room(square(p, 1.8), forbidden, throughDot)
		default:
			c.symbols.mark = true
			c.field.room(square(p, dotR+0.4), forbidden, throughDot)
			if !near(joints, p) {
				c.draw(sheet.Item{Layer: sheet.LayerMarks, Fill: sheet.Filled(sheet.Black), Shape: sheet.Circle{Centre: p, R: dotR}})
			}
		}
	}
	for _, p := range joints {
		c.field.room(square(p, openR+0.4), forbidden, throughDot)
		c.draw(sheet.Item{Layer: sheet.LayerMarks, Pen: sheet.PenThin, Fill: sheet.Filled(sheet.White), Shape: sheet.Circle{Centre: p, R: openR}})
	}
}

// joints are the places where one run of a closed outline leaves the one before it, tangent or
// at a kink.
func (c *canvas) joints() []plane.Point {
	var out []plane.Point
	for _, o := range c.paper {
		for i, r := range o.runs {
			if len(r.segs) == 0 || r.Joint == "" && !kinked(r.LineRun) || i == 0 && !o.line.Closed || o.derived || !c.sees(r.segs[0].A) {
				continue
			}
			if r.Joint == "tangent" {
				c.symbols.tangent = true
			} else {
				c.symbols.kink = true
			}
			out = append(out, r.segs[0].A)
		}
	}
	return out
}

// near says that a symbol at p would cover one of the points.
func near(points []plane.Point, p plane.Point) bool {
	for _, q := range points {
		if q.Dist(p) < dotR {
			return true
		}
	}
	return false
}

// pegSymbol is a circle with a cross.
func pegSymbol(p plane.Point) []sheet.Item {
	thin := func(s sheet.Shape) sheet.Item {
		return sheet.Item{Layer: sheet.LayerPegs, Pen: sheet.PenThin, Shape: s}
	}
	d := pegR / math.Sqrt2
	circle := thin(sheet.Circle{Centre: p, R: pegR})
	circle.Fill = sheet.Filled(sheet.White)
	return []sheet.Item{
		circle,
		thin(sheet.Line(p.Add(plane.Point{X: -d, Y: -d}), p.Add(plane.Point{X: d, Y: d}))),
		thin(sheet.Line(p.Add(plane.Point{X: -d, Y: d}), p.Add(plane.Point{X: d, Y: -d}))),
	}
}

// benchmarkSymbol is a filled triangle on a line, for a lasting mark.
func benchmarkSymbol(p plane.Point) []sheet.Item {
	tri := sheet.Polyline(true, p, p.Add(plane.Point{X: 1.3, Y: 2.2}), p.Add(plane.Point{X: -1.3, Y: 2.2}))
	return []sheet.Item{
		{Layer: sheet.LayerPegs, Pen: sheet.PenThin, Fill: sheet.Filled(sheet.Black), Shape: tri},
		{Layer: sheet.LayerPegs, Pen: sheet.PenThin, Shape: sheet.Line(p.Sub(plane.Point{X: 2}), p.Add(plane.Point{X: 2}))},
	}
}

// alternatives draws the other places of marks that the readings leave open, linked by dashes.
// Where most marks have one, the figure as a whole is open and the findings say so; then the
// drawing would show the pool twice and is left alone.
func (c *canvas) alternatives() {
	open := 0
	for _, m := range c.marks {
		if len(c.result.Marks[m].Alternatives) > 0 {
			open++
		}
	}
	if 2*open > len(c.marks) {
		return
	}
	for _, m := range c.marks {
		from, ok := c.at(m)
		for _, a := range c.result.Marks[m].Alternatives {
			p := c.view.Point(plane.Point{X: a.X, Y: a.Y})
			if !square(p, openR+1).inside(c.field.area) || p.Dist(from) < 2*openR {
				continue
			}
			c.symbols.other = true
			c.field.room(square(p, openR+0.4), forbidden, throughDot)
			if ok {
				u := p.Sub(from).Unit()
				c.field.line(from, p, forbidden, crossThin)
				c.draw(sheet.Item{Layer: sheet.LayerAlternatives, Pen: sheet.PenUnder, Shape: sheet.Line(from.Add(u.Mul(dotR)), p.Sub(u.Mul(openR)))})
			}
			c.draw(sheet.Item{Layer: sheet.LayerAlternatives, Pen: sheet.PenThin, Fill: sheet.Filled(sheet.White), Shape: sheet.Circle{Centre: p, R: openR}})
			c.otherPlaces = append(c.otherPlaces, otherPlace{m, p})
		}
	}
}

// otherPlace is one more place of a mark, on paper.
type otherPlace struct {
	mark string
	at   plane.Point
}

// otherWords names them: or r4.
func (c *canvas) otherWords() {
	for _, o := range c.otherPlaces {
		text := sheet.Text{S: "or " + o.mark, Height: smallHeight, Anchor: sheet.MidCentre}
		var list []candidate
		for _, d := range []float64{0, 1.5, 3.5, 6, 9} {
			for _, turn := range round() {
				list = append(list, numberCandidate(sheet.LayerNumbers, text, o.at, plane.Point{X: 1}.Turn(turn), nearNumber+d, d+0.2*abs(turn)))
			}
		}
		if !c.put(list, crossThin) {
			c.unplaced = append(c.unplaced, "the other place of "+o.mark)
		}
	}
}
