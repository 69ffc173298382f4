package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// pendingNote is a figure that waits for a place beside its run: dimension lines and leaders come
// first, which find one less easily. Of the wordings to try in turn the first ones, so many as
// whole says, give the run's length too; 0 where it stands elsewhere.
type pendingNote struct {
	outline outline
	run     run
	words   []string
	whole   int
}

// radii draws the centre of each arc that lies on the paper, and its radius on a leader; what is too
// short for that waits for a place beside its arc, with the length of an arc too short for a
// dimension line of its own.
func (c *canvas) radii() {
	for _, o := range c.paper {
		if o.derived {
			continue
		}
		texts := c.chain(o.line)
		for i, r := range o.runs {
			if r.Kind == "arc" && len(r.segs) > 0 && c.seesMiddle(r) {
				c.radius(o, r, "arc "+texts[i])
			}
		}
	}
}

func (c *canvas) radius(o outline, r run, length string) {
	short := plane.Path{Segs: r.segs}.Length() < shortestArc
	var words []string
	if r.Centre != nil && r.Radius != nil && !c.onLeader(r) {
		words = c.radiusWords(r)
	}
	if len(words) > 0 || short {
		c.later = append(c.later, pendingNote{outline: o, run: r, words: words})
	}
	if short {
		c.withRadius(r, length)
	}
}

// withRadius adds the length of an arc to the note of its radius; false where there is none.
func (c *canvas) withRadius(r run, length string) bool {
	for i := range c.later {
		n := &c.later[i]
		if &n.run.segs[0] != &r.segs[0] {
			continue
		}
		var with []string
		for _, w := range n.words {
			with = append(with, w+", "+length)
		}
		if len(with) == 0 {
			with = []string{length}
		}
		n.whole, n.words = len(with), append(with, n.words...)
		return true
	}
	return false
}

// onLeader draws a radius from its centre, with the rise of its arc under it; without the rise
// where there is no room for both.
func (c *canvas) onLeader(r run) bool {
	if *r.Radius*c.view.Scale.PerMetre() < shortRadius {
		return false
	}
	centre := c.view.Point(plane.Point{X: r.Centre[0], Y: r.Centre[1]})
	rise := c.riseWords(r)
	return rise != "" && c.put(c.leaders(r, centre, c.radiusText(r), rise), crossThin) ||
		c.put(c.leaders(r, centre, c.radiusText(r), ""), crossThin)
}

func (c *canvas) radiusText(r run) string {
	doubt := 0.0
	if r.RadiusSD != nil {
		doubt = 2 * *r.RadiusSD
	}
	return "R " + c.fig.rounded(*r.Radius, doubt)
}

// riseWords are the rise of an arc over its own chord, "" where it is not known. It may be good where
// the radius is not: it is what a piece must follow.
func (c *canvas) riseWords(r run) string {
	if r.Sagitta == nil || !(*r.Sagitta > 0) {
		return ""
	}
	return "rise " + c.fig.length(*r.Sagitta)
}

// radiusWords are a radius with the rise of its arc, and the radius alone.
func (c *canvas) radiusWords(r run) []string {
	short := c.radiusText(r)
	if rise := c.riseWords(r); rise != "" {
		return []string{short + ", " + rise, short}
	}
	return []string{short}
}

// notes writes the figures that stand beside their runs.
func (c *canvas) notes() {
	for _, n := range c.later {
		said := len(n.words)
		for i, words := range n.words {
			if c.note(n.outline, n.run, words) {
				said = i
				break
			}
		}
		switch {
		case said == len(n.words):
			c.lost(n.run)
		case said >= n.whole && n.whole > 0:
			c.tabled(n.run)
		}
	}
}

// note writes a figure beside an outline with an arrow to the middle of its run, outside it where
// there is room.
func (c *canvas) note(o outline, r run, text string) bool {
	mid, _ := r.middle()
	path := plane.Path{Segs: r.segs}
	var list []candidate
	for i, share := range []float64{0.5, 0.38, 0.62, 0.26, 0.74} {
		at := along(path, share)
		seg, t, _ := path.Nearest(at)
		out := r.segs[seg].Tangent(t).Left().Mul(-1)
		if o.ring < 0 {
			out = out.Mul(-1)
		}
		list = append(list, noteWays(at, out, text, 1.5*float64(i)+c.onMark(at), o.ring != 0)...)
	}
	return c.put(c.besideAxis(mid, list), crossThin)
}

// noteWays are the places of a note whose arrow stands at one place of a run.
func noteWays(at, out plane.Point, text string, cost float64, both bool) []candidate {
	var list []candidate
	for _, d := range []float64{7, 9, 11, 14, 17, 21, 25, 30, 36, 43, 51, 60} {
		for _, a := range []float64{0, 0.35, -0.35, 0.7, -0.7, 1.05, -1.05, 1.3, -1.3} {
			far := cost + 0.4*d + 4*abs(a)
			list = append(list, noteCandidate(at, out.Turn(a), d, text, far))
			if both && d <= 21 {
				list = append(list, noteCandidate(at, out.Turn(a).Mul(-1), d, text, insideNote+far))
			}
		}
	}
	return list
}

// onMark is the cost of an arrow that stands on a mark, whose name and leader it would hide.
func (c *canvas) onMark(at plane.Point) float64 {
	for _, m := range c.marks {
		if p, ok := c.at(m); ok && p.Dist(at) < 2.5 {
			return 4
		}
	}
	return 0
}

// insideNote is what a note inside the pool costs.
const insideNote = 12.0

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
