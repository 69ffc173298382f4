package draft

import (
	"slices"
	"strings"

	"brimline/plane"
	"brimline/sheet"
)

// row is one step of a column of words: it takes height and draws itself from its upper left.
type row struct {
	height float64
	joined bool // stays with the row after it
	space  bool // nothing but room: dropped at the head of a column
	head   bool // the room before a heading
	draw   func(at plane.Point) []sheet.Item
}

// linePitch is the distance of foot lines over the height of the lettering (ISO 3098: at least 1.4).
const linePitch = 1.64

// paragraph wraps a sentence to a width, as rows.
func paragraph(s string, h float64, bold bool, width float64) []row {
	var rows []row
	for _, l := range sheet.Wrap(glued(sheet.Clean(s)), h, bold, width) {
		rows = append(rows, textRow(l, h, bold))
	}
	return rows
}

func textRow(s string, h float64, bold bool) row {
	return row{height: linePitch * h, draw: func(at plane.Point) []sheet.Item {
		return []sheet.Item{{Layer: sheet.LayerWords, Shape: sheet.Text{S: s, At: at.Sub(plane.Point{Y: 1.25 * h}), Height: h, Bold: bold}}}
	}}
}

// heading stands over what follows and stays with it.
func heading(s string, width float64) []row {
	rows := []row{gap(2.6)}
	rows[0].head = true
	for _, r := range paragraph(s, dimHeight, true, width) {
		r.joined = true
		rows = append(rows, r)
	}
	return rows
}

// gap is room between paragraphs.
func gap(h float64) row {
	return row{height: h, space: true, draw: func(plane.Point) []sheet.Item { return nil }}
}

// listed are paragraphs that each begin with a dash, the lines after the first moved in.
func listed(sentences []string, h, width float64) []row {
	const in = 3.6
	var rows []row
	for _, s := range sentences {
		lines := sheet.Wrap(glued(sheet.Clean(s)), h, false, width-in)
		for i, l := range lines {
			first := i == 0
			r := textRow(l, h, false)
			r.joined = i+1 < len(lines)
			draw := r.draw
			r.draw = func(at plane.Point) []sheet.Item {
				var items []sheet.Item
				if first {
					items = append(items, sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: "–", At: at.Sub(plane.Point{Y: 1.25 * h}), Height: h}})
				}
				return append(items, draw(at.Add(plane.Point{X: in}))...)
			}
			rows = append(rows, r)
		}
		rows = append(rows, gap(0.8))
	}
	return rows
}

// pour sets rows into a column; it gives the depth used and the rows that found no room.
func pour(rows []row, box plane.Box) (items []sheet.Item, depth float64, left []row) {
	y := box.Max.Y
	fresh := true
	for i := 0; i < len(rows); i++ {
		r := rows[i]
		if r.space && fresh {
			continue
		}
		need := 0.0
		for k := i; k < len(rows); k++ {
			need += rows[k].height
			if !rows[k].joined && !rows[k].space {
				break
			}
		}
		if y-need < box.Min.Y && !(fresh && need > box.Max.Y-box.Min.Y) && !r.space {
			return items, box.Max.Y - y, rows[i:]
		}
		items = append(items, r.draw(plane.Point{X: box.Min.X, Y: y})...)
		y -= r.height
		fresh = false
	}
	return items, box.Max.Y - y, nil
}

// pourAll fills columns one after another.
func pourAll(rows []row, columns []plane.Box) (items []sheet.Item, left []row) {
	for _, c := range columns {
		var more []sheet.Item
		more, _, rows = pour(rows, shrink(c, inset))
		items = append(items, more...)
	}
	return items, rows
}

// glued keeps figures and their units on one line.
func glued(s string) string {
	w := strings.Split(s, " ")
	out := w[0]
	for i := 1; i < len(w); i++ {
		space := " "
		last := w[i-1]
		if last != "" && last[len(last)-1] >= '0' && last[len(last)-1] <= '9' && slices.Contains(unitWords, strings.TrimRight(w[i], ".,;:)")) {
			space = sheet.Glue
		}
		out += space + w[i]
	}
	return out
}

// unitWords follow figures.
var unitWords = []string{"mm", "m", "cm", "in", "ft", "m²", "ft²", "m³", "ft³", "L", "%", "times"}
