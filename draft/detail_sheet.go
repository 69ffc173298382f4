package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// pageInset is the room between the frame of a sheet and what stands on it; shelfGap that between
// windows, frameRoom that between a mark and the frame of its window.
const (
	frameRoom = 4.0
	pageInset = 5.0
	shelfGap  = 7.0
)

// shelf is where the next window goes: from the left in rows, in the order of their letters.
type shelf struct {
	sheets  []sheet.Sheet
	letters []string // on the last sheet
	at      plane.Point
	deep    float64 // of the row
}

// detailPage is the room for windows on a sheet.
func (j *job) detailPage() plane.Box {
	free, _ := tableZones(j.size)
	return shrink(free, pageInset)
}

// onSheet draws a window in the next place that is free.
func (c *canvas) onSheet(d *detail) {
	s, free := &c.shelf, c.detailPage()
	k := d.scale.PerMetre()
	w, h := (d.box.Max.X-d.box.Min.X)*k, (d.box.Max.Y-d.box.Min.Y)*k
	if s.at.X+w > free.Max.X+1e-9 {
		s.at, s.deep = plane.Point{X: free.Min.X, Y: s.at.Y - s.deep}, 0
	}
	if len(s.sheets) == 0 || s.at.Y-h-windowFoot < free.Min.Y-1e-9 {
		s.sheets = append(s.sheets, sheet.Sheet{Size: c.size, Items: c.size.Frame()})
		s.letters, s.at, s.deep = nil, plane.Point{X: free.Min.X, Y: free.Max.Y}, 0
	}
	page := &s.sheets[len(s.sheets)-1]
	s.letters = append(s.letters, d.letter)
	page.Title = detailTitle(s.letters)
	sub := c.enlarged(*d, plane.Box{Min: s.at.Sub(plane.Point{Y: h}), Max: s.at.Add(plane.Point{X: w})})
	page.Views, page.Items = append(page.Views, sub.view), append(page.Items, sub.items...)
	d.numbered = map[string]bool{}
	for _, m := range sub.marks {
		d.numbered[m] = !sub.nameless[m]
	}
	s.at.X += w + shelfGap
	s.deep = max(s.deep, h+windowFoot+shelfGap)
}

func detailTitle(letters []string) string {
	if len(letters) == 1 {
		return "Detail " + letters[0]
	}
	return "Details " + names(letters, 6)
}

// enlarged draws a window in its place on paper.
func (c *canvas) enlarged(d detail, window plane.Box) *canvas {
	j := *c.job
	j.marks = nil
	seen := shrink(d.box, frameRoom/d.scale.PerMetre())
	for _, m := range c.all {
		if p, ok := c.place(m); ok && holds(seen, p) {
			j.marks = append(j.marks, m)
		}
	}
	sub := &canvas{job: &j, metres: c.metres, window: &window}
	sub.view = sheet.View{Name: "detail " + d.letter, Scale: d.scale, Model: d.box.Min, Paper: window.Min}
	sub.lay(shrink(window, 0.8))
	sub.draw(sheet.Item{Layer: sheet.LayerDetails, Pen: sheet.PenThin, Ink: sheet.Grey, Shape: sheet.Rect(window)})
	sub.edges()
	sub.drawMarks()
	sub.drawCorners()
	sub.ellipses()
	sub.kinks()
	sub.radii()
	sub.dimensions()
	sub.notes()
	sub.cornerNames()
	sub.numbers()
	sub.detailFoot(d, window)
	return sub
}

// detailFoot writes what the window is under it, with its scale bar.
func (c *canvas) detailFoot(d detail, window plane.Box) {
	foot := plane.Point{X: window.Min.X, Y: window.Min.Y - 9.5}
	name := "Detail " + d.letter
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: name, At: foot.Add(plane.Point{Y: 3}), Height: dimHeight, Bold: true}})
	at := foot.Add(plane.Point{X: sheet.Width(name, dimHeight, true) + 5, Y: 3})
	c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: d.scale.String(), At: at, Height: dimHeight, Bold: true}})
	if c.symbols.ellipse {
		c.draw(sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: "error ellipses " + c.enlargement(""), At: foot.Sub(plane.Point{Y: 1.6}), Height: smallHeight}})
	}
	c.bar(plane.Point{X: foot.X + 52, Y: foot.Y + 1.5}, 2, 18)
}
