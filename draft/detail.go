package draft

import (
	"slices"
	"sort"

	"brimline/plane"
	"brimline/sheet"
)

// detail is a part of the plan that is drawn once more, larger, on a further sheet.
type detail struct {
	letter string
	box    plane.Box // in metres
	scale  sheet.Scale

	numbered map[string]bool // the marks that have their number in it
}

// Sizes of windows on paper in millimetres: the room kept round the marks for their numbers, the
// height at most and the width at least, and how far apart two marks may be in one window.
const (
	windowRoom  = 15.0
	windowDepth = 108.0
	windowWidth = 96.0
	windowReach = 120.0
	windowFoot  = 14.0 // under it, for its name and scale bar
)

// place is a spot of the plan whose figure found no room, in metres, in order along the lines.
type place struct {
	line int
	at   float64
	p    plane.Point
	mark string  // whose number it is, "" for a run
	run  float64 // length of the run whose figure it is, 0 for a mark
}

// crowded lists them: marks without their number, runs and corners without their figure.
func (c *canvas) crowded() []place {
	list := append([]place(nil), c.cramped...)
	for _, m := range c.marks {
		if p, ok := c.place(m); ok && (c.skipped[m] || c.nameless[m]) {
			list = append(list, place{p: p, mark: m})
		}
	}
	for i := range list {
		line, seg, t, _ := c.nearest(c.view.Point(list[i].p))
		list[i].line, list[i].at = line, float64(seg)+t
	}
	sort.SliceStable(list, func(i, k int) bool {
		a, b := list[i], list[k]
		return a.line < b.line || a.line == b.line && a.at < b.at
	})
	return list
}

// chooseDetails covers the crowded places with windows at the first larger scale that gives their
// marks room, and what finds none there once more at a larger one.
func (c *canvas) chooseDetails() {
	list := c.crowded()
	for scale := c.view.Scale; len(list) > 0; {
		next, ok := c.detailScale(list, scale)
		if !ok {
			return
		}
		scale = next
		first := len(c.details)
		c.cover(list, scale)
		list = c.stillNameless(list, c.details[first:])
	}
}

// stillNameless are the marks that none of the details numbers.
func (c *canvas) stillNameless(list []place, drawn []detail) []place {
	var out []place
	for _, x := range list {
		if x.mark != "" && !slices.ContainsFunc(drawn, func(d detail) bool { return d.numbered[x.mark] }) {
			out = append(out, x)
		}
	}
	return out
}

// cover walks along the lines and lays windows over the crowded places; each is so low that two
// stand over each other on a sheet.
func (c *canvas) cover(list []place, scale sheet.Scale) {
	k := scale.PerMetre()
	free := c.detailPage()
	most := plane.Point{X: free.Max.X - free.Min.X, Y: min(windowDepth, free.Max.Y-free.Min.Y-windowFoot)}
	box := plane.EmptyBox()
	var last plane.Point
	for _, x := range list {
		p := x.p.Mul(k)
		own := grow(plane.BoundsOf(p), windowRoom+min(x.run*k, windowDepth-2*windowRoom)/2)
		next := box.Join(own)
		if !box.Empty() && (!windowFits(next, most) || p.Dist(last) > windowReach) {
			c.addDetail(box, scale)
			next = own
		}
		box, last = next, p
	}
	c.addDetail(box, scale)
}

func windowFits(b plane.Box, most plane.Point) bool {
	w, h := b.Max.X-b.Min.X, b.Max.Y-b.Min.Y
	return max(w, windowWidth) <= most.X && h <= most.Y
}

// addDetail enters a window given in millimetres at its scale, widened to the least.
func (c *canvas) addDetail(b plane.Box, scale sheet.Scale) {
	if short := windowWidth - (b.Max.X - b.Min.X); short > 0 {
		b.Min.X, b.Max.X = b.Min.X-short/2, b.Max.X+short/2
	}
	k := scale.PerMetre()
	d := detail{letter: c.letter(len(c.details)), box: plane.Box{Min: b.Min.Mul(1 / k), Max: b.Max.Mul(1 / k)}, scale: scale}
	c.onSheet(&d)
	c.details = append(c.details, d)
}

// detailScale is the first preferred scale, at least half as large again as the last, at which all
// but the closest quarter of the crowded marks have their room and the shortest of the crowded runs
// a dimension line; the largest where none gives that. False where the last is nearly the largest.
func (c *canvas) detailScale(list []place, last sheet.Scale) (sheet.Scale, bool) {
	var gaps []float64
	short := 0.0
	for _, x := range list {
		if x.run > 0 && (short == 0 || x.run < short) {
			short = x.run
		}
		if x.mark != "" {
			gaps = append(gaps, c.nextMark(x.p, false))
		}
	}
	sort.Float64s(gaps)
	scales := sheet.Scales(c.fig.feet())
	best, found := last, false
	for i := len(scales) - 1; i >= 0 && scales[i] >= largestDetail; i-- {
		if s := scales[i]; 1.5*s <= last {
			best, found = s, true
			k := s.PerMetre()
			if (len(gaps) == 0 || gaps[len(gaps)/4]*k >= pitchLeast) && (short == 0 || short*k >= shortest) {
				break
			}
		}
	}
	return best, found
}

// largestDetail is the largest scale of a detail, 1:5.
const largestDetail = 5

// nextMark is how far the nearest other mark lies, in metres; of those numbered on the plan where
// only they count.
func (c *canvas) nextMark(p plane.Point, numbered bool) float64 {
	least := 1e9
	for _, m := range c.all {
		if q, ok := c.place(m); ok && q != p && !(numbered && c.skipped[m]) {
			least = min(least, q.Dist(p))
		}
	}
	return least
}
