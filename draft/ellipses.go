package draft

import (
	"math"
	"sort"

	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// Error ellipses on paper, in millimetres: the long semi-axis that the factor aims at for all but
// the worst tenth, less where marks stand close, and the longest one that is still drawn.
const (
	aimAxis   = 4.0
	leastAim  = 1.2
	mostAxis  = 12.0
	pitchAxes = 0.55 // of the distance between marks
)

// chooseFactor sets how many times larger than the plan ellipses are drawn: a preferred number, at
// least 1. It looks at all marks, so that all details at one scale have one.
func (c *canvas) chooseFactor() {
	if c.opt.Exaggeration > 0 {
		c.factor = c.opt.Exaggeration
		return
	}
	var axes, gaps []float64
	for _, m := range c.all {
		if e := c.result.Marks[m].Ellipse95; e != nil && e.Major > 0 && !c.skipped[m] {
			axes = append(axes, e.Major)
			if p, ok := c.place(m); ok {
				gaps = append(gaps, c.nextMark(p, true)*c.view.Scale.PerMetre())
			}
		}
	}
	c.factor = 1
	if len(axes) == 0 {
		return
	}
	sort.Float64s(axes)
	large := axes[(len(axes)*9)/10]
	if large == 0 || math.IsInf(large, 0) {
		return
	}
	aim := aimAxis
	if len(gaps) > 0 {
		sort.Float64s(gaps)
		aim = min(aimAxis, max(leastAim, pitchAxes*gaps[len(gaps)/2]))
	}
	c.factor = math.Max(1, sheet.Round(aim/(large*c.view.Scale.PerMetre())))
}

// ellipses draws them; those too large for the sheet are left out and counted.
func (c *canvas) ellipses() {
	c.chooseFactor()
	for _, m := range c.marks {
		p, ok := c.at(m)
		e := c.result.Marks[m].Ellipse95
		if !ok || e == nil || !(e.Major > 0) || c.skipped[m] {
			continue
		}
		shape, fits := c.ellipse(p, *e)
		if !fits {
			c.symbols.tooLarge = append(c.symbols.tooLarge, m)
			continue
		}
		c.symbols.ellipse = true
		c.field.room(around(shape), overFaint, 0)
		c.draw(sheet.Item{Layer: sheet.LayerEllipses, Pen: sheet.PenHair, Shape: shape})
	}
}

// ellipse on paper: its major axis has a bearing, clockwise from +y.
func (c *canvas) ellipse(p plane.Point, e survey.Ellipse) (sheet.Ellipse, bool) {
	k := c.view.Scale.PerMetre() * c.factor
	s := sheet.Ellipse{Centre: p, A: e.Major * k, B: math.Max(0.05, e.Minor*k), Turn: (90 - e.Bearing) * math.Pi / 180}
	return s, s.A <= mostAxis && !math.IsNaN(s.B+s.Turn)
}

// around is the upright room of an ellipse in its own axes, a little inside its tips.
func around(e sheet.Ellipse) room {
	u := plane.Point{X: 1}.Turn(e.Turn)
	a, b := u.Mul(0.9*e.A), u.Left().Mul(0.9*e.B)
	return room{e.Centre.Sub(a).Sub(b), e.Centre.Add(a).Sub(b), e.Centre.Add(a).Add(b), e.Centre.Sub(a).Add(b)}
}
