package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// zones are the parts of a sheet inside its frame, in millimetres.
type zones struct {
	plan    plane.Box   // the drawing with its scale bar
	columns []plane.Box // words, in the order of reading
	title   plane.Box
}

// Sizes of the zones in millimetres (our own choice).
const (
	columnWidth = 120.0
	titleHeight = 64.0 // of the block in the column
	stripHeight = 36.0 // of the block across an upright sheet
	wordsHeight = 88.0 // under the plan of an upright sheet
	inset       = 4.0  // between a border and words
)

// planZones divides the first sheet: a lying sheet has the words and the title block in a column
// on the right; an upright one has them under the plan.
func planZones(s sheet.Size) zones {
	b := s.Space()
	if s.Upright() {
		title := plane.Box{Min: b.Min, Max: plane.Point{X: b.Max.X, Y: b.Min.Y + stripHeight}}
		words := plane.Box{Min: plane.Point{X: b.Min.X, Y: title.Max.Y}, Max: plane.Point{X: b.Max.X, Y: title.Max.Y + wordsHeight}}
		left, right := halves(words)
		return zones{plane.Box{Min: plane.Point{X: b.Min.X, Y: words.Max.Y}, Max: b.Max}, []plane.Box{left, right}, title}
	}
	x := b.Max.X - columnWidth
	title := plane.Box{Min: plane.Point{X: x, Y: b.Min.Y}, Max: plane.Point{X: b.Max.X, Y: b.Min.Y + titleHeight}}
	words := plane.Box{Min: plane.Point{X: x, Y: title.Max.Y}, Max: b.Max}
	return zones{plane.Box{Min: b.Min, Max: plane.Point{X: x, Y: b.Max.Y}}, []plane.Box{words}, title}
}

// tableZones divides the sheets of tables and words: one strip at the foot, the rest is free.
func tableZones(s sheet.Size) (free, title plane.Box) {
	b := s.Space()
	h := 12.0
	if s.Upright() {
		h = 2 * 11.5
	}
	title = plane.Box{Min: b.Min, Max: plane.Point{X: b.Max.X, Y: b.Min.Y + h}}
	return plane.Box{Min: plane.Point{X: b.Min.X, Y: title.Max.Y}, Max: b.Max}, title
}

func halves(b plane.Box) (left, right plane.Box) {
	mid := (b.Min.X + b.Max.X) / 2
	left, right = b, b
	left.Max.X, right.Min.X = mid, mid
	return left, right
}

// shrink takes d off all sides.
func shrink(b plane.Box, d float64) plane.Box {
	return plane.Box{Min: plane.Point{X: b.Min.X + d, Y: b.Min.Y + d}, Max: plane.Point{X: b.Max.X - d, Y: b.Max.Y - d}}
}

func grow(b plane.Box, d float64) plane.Box { return shrink(b, -d) }
