package draft

import (
	"math"
	"strconv"

	"brimline/plane"
	"brimline/sheet"
)

// exaggerations are by how much heights of a profile are drawn larger than lengths, the usual one first;
// the others for lines too far out of level for it.
var exaggerations = []float64{50, 20, 10, 5, 2, 1}

// Room of a profile in millimetres: left for its scale of heights, above and below for figures and names, and
// the most that its line may take.
const (
	chartLeft  = 18.0
	chartRight = 12.0
	chartAbove = 9.0
	chartNames = 20.0
	chartMost  = 70.0
	chartLeast = 8.0
)

// profileChart is the profile of a line in the making: unrolled to the right, heights against the mean of its
// stations, larger.
type profileChart struct {
	*canvas
	profile   Profile
	times     float64
	left      float64 // paper where the line begins
	mean      float64 // and at which its mean runs
	low, high float64 // of the heights against the mean
	names     float64 // paper at which names hang
}

// newProfileChart lays a profile into a strip of paper from its top; deep is the paper that it takes.
func (j *job) newProfileChart(p Profile, strip plane.Box) (c *profileChart, deep float64) {
	c = &profileChart{canvas: &canvas{job: j}, profile: p}
	for _, s := range p.Stations {
		sd := 0.0
		if s.SD != nil {
			sd = cover * *s.SD
		}
		c.low, c.high = min(c.low, s.Off-sd), max(c.high, s.Off+sd)
	}
	width := strip.Max.X - strip.Min.X - chartLeft - chartRight
	for _, s := range sheet.Scales(j.fig.feet()) {
		c.view.Scale = s
		if p.Length*s.PerMetre() <= width {
			break
		}
	}
	for _, t := range exaggerations {
		if c.times = t; c.up(c.high-c.low) <= chartMost {
			break
		}
	}
	c.left = strip.Min.X + chartLeft
	tall := max(chartLeast, c.up(c.high-c.low))
	c.mean = strip.Max.Y - chartAbove - 8 - c.up(c.high)
	c.names = c.mean + c.up(c.high) - tall - 5
	deep = strip.Max.Y - c.names + chartNames
	c.field.area = plane.Box{Min: plane.Point{X: strip.Min.X, Y: strip.Max.Y - deep}, Max: strip.Max}
	return c, deep
}

// up is a height on paper.
func (c *profileChart) up(m float64) float64 { return m * c.view.Scale.PerMetre() * c.times }

// spot is a place along the line with its height against the mean, on paper.
func (c *profileChart) spot(along, off float64) plane.Point {
	return plane.Point{X: c.left + along*c.view.Scale.PerMetre(), Y: c.mean + c.up(off)}
}

// compose draws it.
func (c *profileChart) compose() {
	c.title()
	c.scaleOfHeights()
	c.meanLine()
	c.line()
	c.stations()
	c.stationNames()
	c.values()
}

// title says what the profile is and how it is drawn.
func (c *profileChart) title() {
	p := c.profile
	head := p.Line
	if p.Edge != "" {
		head += ": " + edgeWord(p.Edge)
	}
	at := plane.Point{X: c.field.area.Min.X, Y: c.field.area.Max.Y - 1.3*dimHeight}
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: head, At: at, Height: dimHeight, Bold: true}})
	how := "unrolled along the line; lengths " + c.view.Scale.String() + ", "
	if c.times == 1 {
		how += "heights the same"
	} else {
		how += "heights exaggerated " + strconv.FormatFloat(c.times, 'f', -1, 64) + " times"
	}
	at.X += sheet.Width(sheet.Clean(head), dimHeight, true) + 5
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: how, At: at, Height: smallHeight}})
	end := plane.Point{X: c.field.area.Max.X - 62, Y: at.Y - 1}
	if end.X > at.X+sheet.Width(how, smallHeight, false)+6 {
		c.bar(end, 2, 18)
	}
	c.field.room(boxRoom(plane.Box{Min: plane.Point{X: c.field.area.Min.X, Y: at.Y - 2}, Max: c.field.area.Max}), forbidden, forbidden)
}

// boxRoom is the room of a box.
func boxRoom(b plane.Box) room {
	return room{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}

// scaleOfHeights stands at the left: ticks in small lengths above and below the mean.
func (c *profileChart) scaleOfHeights() {
	unit := 0.001
	if c.fig.feet() {
		unit = 0.0254
	}
	step := sheet.Round(6/c.up(unit)) * unit
	if c.fig.feet() {
		step = inchStep(6 / c.up(unit))
	}
	x := c.left - 6
	first, last := int(math.Floor(c.low/step)), int(math.Ceil(c.high/step))
	for k := first; k <= last; k++ {
		at := plane.Point{X: x, Y: c.spot(0, float64(k)*step).Y}
		c.draw(sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenThin, Shape: sheet.Line(at, at.Add(plane.Point{X: 2}))})
		t := sheet.Text{S: c.signed(float64(k) * step), At: at.Sub(plane.Point{X: 1}), Height: smallHeight, Anchor: sheet.MidRight}
		c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: t})
		c.field.room(roomOf(t, 0.3), forbidden, 0)
	}
	a, b := c.spot(0, float64(first)*step), c.spot(0, float64(last)*step)
	a.X, b.X = x+2, x+2
	if a != b {
		c.draw(sheet.Item{Layer: sheet.LayerWords, Pen: sheet.PenThin, Shape: sheet.Line(a, b)})
	}
	u := sheet.Text{S: c.fig.smallUnit(), At: plane.Point{X: x - 1, Y: max(a.Y, b.Y) + 4.2}, Height: smallHeight, Anchor: sheet.MidRight}
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: u})
	c.field.room(roomOf(u, 0.3), forbidden, 0)
}

// inchStep is the largest of the fractions and multiples of an inch below so many.
func inchStep(most float64) float64 {
	best := 0.25
	for _, s := range []float64{0.25, 0.5, 1, 2, 5, 10} {
		if s <= most {
			best = s
		}
	}
	return best * 0.0254
}

// signed is a height against the mean, with its sign.
func (c *profileChart) signed(m float64) string { return signed(c.fig.small(m)) }

// signed puts a plus before a figure above nothing.
func signed(t string) string {
	for _, r := range t {
		if r == '−' {
			return t
		}
		if r >= '1' && r <= '9' {
			return "+" + t
		}
	}
	return t
}

// meanLine is the axis of the chart.
func (c *profileChart) meanLine() {
	a, b := c.spot(0, 0), c.spot(c.profile.Length, 0)
	c.field.line(a.Sub(plane.Point{X: 3}), b.Add(plane.Point{X: 3}), forbidden, 0)
	c.draw(sheet.Item{Layer: sheet.LayerAxes, Pen: sheet.PenAxis, Shape: sheet.Line(a.Sub(plane.Point{X: 3}), b.Add(plane.Point{X: 3}))})
}

// line is the profile itself, straight between stations; on a closed line from its start to its start.
func (c *profileChart) line() {
	p := c.profile
	mean := p.Stations[0].Z - p.Stations[0].Off
	var pts []plane.Point
	if p.Closed && p.Stations[0].Along > 0 {
		pts = append(pts, c.spot(0, p.at(0)-mean))
	}
	for _, s := range p.Stations {
		pts = append(pts, c.spot(s.Along, s.Off))
	}
	if p.Closed {
		pts = append(pts, c.spot(p.Length, p.at(p.Length)-mean))
	}
	if len(pts) < 2 {
		return
	}
	path := sheet.Polyline(false, pts...)
	c.field.path(path.Path, forbidden, 0)
	c.draw(sheet.Item{Layer: sheet.LayerEdge, Pen: sheet.PenEdge, Shape: path})
}
