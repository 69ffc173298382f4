package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// planTitle is the title of the first sheet.
const planTitle = "Plan as measured"

// planSheet is the first sheet, the sheets of its details, and the words that found no room on it
// with the width they are set for.
func (j *job) planSheet() ([]sheet.Sheet, []row, float64) {
	z := planZones(j.size)
	s := sheet.Sheet{Title: planTitle, Size: j.size, Items: j.size.Frame()}
	s.Items = append(s.Items, zoneRules(z)...)
	c, ok := j.newCanvas(z.plan)
	if ok {
		c.compose(z.plan)
		s.Views = []sheet.View{c.view}
		s.Items = append(s.Items, c.items...)
	} else {
		s.Items = append(s.Items, sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{
			S: "No mark has a place yet: see what to read next.", At: middleOf(z.plan), Height: dimHeight, Anchor: sheet.MidCentre}})
	}
	width := z.columns[0].Max.X - z.columns[0].Min.X - 2*inset
	items, left := pourAll(j.words(c, width), z.columns)
	s.Items = append(s.Items, items...)
	return append([]sheet.Sheet{s}, c.shelf.sheets...), left, width
}

// compose draws the plan: what cannot move first, then what looks for room, the most bound first.
func (c *canvas) compose(zone plane.Box) {
	c.thin()
	c.edges()
	c.walls()
	c.ties()
	c.oddLines()
	c.nextLine()
	c.drawMarks()
	c.drawCorners()
	c.ellipses()
	c.alternatives()
	c.baseline()
	c.kinks()
	c.nextWords()
	c.inside()
	c.oddWords()
	c.otherWords()
	c.radii()
	c.dimensions()
	c.notes()
	c.beside()
	c.cornerNames()
	c.ends()
	c.numbers()
	c.chooseDetails()
	c.frames()
	c.north(zone)
	c.scaleBar(zone)
	c.ground()
}

// zoneRules part the plan from the words.
func zoneRules(z zones) []sheet.Item {
	words := z.columns[0]
	a, b := words.Min, plane.Point{X: words.Min.X, Y: words.Max.Y}
	if len(z.columns) > 1 {
		a, b = plane.Point{X: z.plan.Min.X, Y: z.plan.Min.Y}, plane.Point{X: z.plan.Max.X, Y: z.plan.Min.Y}
	} else {
		a.Y = z.title.Min.Y
	}
	return []sheet.Item{{Layer: sheet.LayerFrame, Pen: sheet.PenThin, Shape: sheet.Line(a, b)}}
}
