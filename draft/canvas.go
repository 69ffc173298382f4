package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// canvas is the plan in the making.
type canvas struct {
	*job
	view        sheet.View
	field       field
	items       []sheet.Item
	metres      []outline // as measured
	paper       []outline // on paper
	owner       int       // the last one given out
	unplaced    []string  // runs and marks that found no room for their figures
	factor      float64   // of the error ellipses
	symbols     keySymbols
	otherPlaces []otherPlace
	skipped     map[string]bool // marks between those that are numbered
	every       int             // of so many marks one is numbered; 0 or 1: all
	later       []pendingNote
	window      *plane.Box // of a detail, on paper; nil for the whole plan
	details     []detail
	shelf       shelf
	cramped     []place         // of runs and corners whose figures found no room
	nameless    map[string]bool // marks whose names found none
}

// Room in millimetres kept round the outline for numbers and dimensions, and round other marks.
const (
	outlineRoom = 20.0
	markRoom    = 9.0
	footRoom    = 16.0 // for the scale bar
)

// newCanvas chooses the scale and the place of the model on the plan zone; false when there is
// nothing to draw.
func (j *job) newCanvas(zone plane.Box) (*canvas, bool) {
	c := &canvas{job: j, metres: j.outlines()}
	free := shrink(zone, 2)
	free.Min.Y += footRoom
	for _, s := range sheet.Scales(j.fig.feet()) {
		box := c.extent(s)
		if box.Empty() {
			return c, false
		}
		w, h := box.Max.X-box.Min.X, box.Max.Y-box.Min.Y
		if w > free.Max.X-free.Min.X || h > free.Max.Y-free.Min.Y {
			continue
		}
		c.view = sheet.View{Name: "plan", Scale: s, Model: middleOf(box).Mul(1 / s.PerMetre()), Paper: middleOf(free)}
		break
	}
	if c.view.Scale == 0 {
		return c, false
	}
	c.lay(free)
	return c, true
}

// lay lays the outlines on paper, of which that area is free.
func (c *canvas) lay(area plane.Box) {
	c.field.area = area
	for _, o := range c.metres {
		c.paper = append(c.paper, c.onPaper(o))
	}
}

// extent is the paper that the model takes at a scale, with the room for its figures, about the
// model's origin.
func (c *canvas) extent(s sheet.Scale) plane.Box {
	k := s.PerMetre()
	box := plane.EmptyBox()
	for _, o := range c.metres {
		b := o.path.Bounds()
		box = box.Join(grow(plane.Box{Min: b.Min.Mul(k), Max: b.Max.Mul(k)}, outlineRoom))
	}
	for _, m := range c.marks {
		if p, ok := c.place(m); ok {
			box = box.Join(grow(plane.BoundsOf(p.Mul(k)), markRoom))
		}
	}
	return box
}

func middleOf(b plane.Box) plane.Point { return b.Min.Add(b.Max).Mul(0.5) }

// onPaper lays an outline on paper.
func (c *canvas) onPaper(o outline) outline {
	o.path = c.view.Path(o.path)
	runs := make([]run, len(o.runs))
	for i, r := range o.runs {
		runs[i] = run{r.LineRun, c.view.Path(plane.Path{Segs: r.segs}).Segs}
	}
	o.runs = runs
	return o
}

// at is a mark's place on paper.
func (c *canvas) at(mark string) (plane.Point, bool) {
	p, ok := c.place(mark)
	return c.view.Point(p), ok
}

func (c *canvas) draw(items ...sheet.Item) { c.items = append(c.items, items...) }

// next is a new owner's number.
func (c *canvas) next() int {
	c.owner++
	return c.owner
}

// put places the best candidate for good; false when none is allowed.
func (c *canvas) put(list []candidate, cross float64) bool { return c.putUnder(list, cross, forbidden) }

// putUnder does so where the best costs less than most.
func (c *canvas) putUnder(list []candidate, cross, most float64) bool {
	best, ok := c.field.best(list, 0, most)
	if ok {
		c.field.keep(best, 0, cross)
		c.draw(best.draw()...)
	}
	return ok
}

// nearest is the outline next to a point, with the place on it; −1 when there is no outline.
func (c *canvas) nearest(p plane.Point) (at, seg int, t float64, foot plane.Point) {
	at = -1
	least := 0.0
	for i, o := range c.paper {
		s, share, q := o.path.Nearest(p)
		if d := q.Dist(p); s >= 0 && (at < 0 || d < least) {
			at, seg, t, foot, least = i, s, share, q, d
		}
	}
	return at, seg, t, foot
}

// inPool says that a point lies inside a closed outline.
func (c *canvas) inPool(p plane.Point) bool {
	for _, o := range c.paper {
		if o.ring != 0 && o.path.Contains(p) {
			return true
		}
	}
	return false
}
