package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// row is one step of a column of words: it takes height and draws itself from its upper left.
type row struct {
	height float64
	joined bool // stays with the row after it
	space  bool // nothing but room: dropped at the head of a column
	draw   func(at plane.Point) []sheet.Item
}

// linePitch is the distance of foot lines of lettering h high (ISO 3098: at least 1.4 h; 1.7 reads
// better in long lines).
const linePitch = 1.72

// paragraph wraps a sentence to a width, as rows.
func paragraph(s string, h float64, bold bool, width float64) []row {
	var rows []row
	for _, l := range sheet.Wrap(sheet.Clean(s), h, bold, width) {
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
		for i, l := range sheet.Wrap(sheet.Clean(s), h, false, width-in) {
			first := i == 0
			r := textRow(l, h, false)
			draw := r.draw
			r.draw = func(at plane.Point) []sheet.Item {
				items := draw(at.Add(plane.Point{X: in}))
				if first {
					items = append(items, sheet.Item{Layer: sheet.LayerWords, Shape: sheet.Text{S: "–", At: at.Sub(plane.Point{Y: 1.25 * h}), Height: h}})
				}
				return items
			}
			rows = append(rows, r)
		}
		rows = append(rows, gap(0.8))
	}
	return rows
}

// pour sets rows into a column and gives those that found no room.
func pour(rows []row, box plane.Box) (items []sheet.Item, left []row) {
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
			return items, rows[i:]
		}
		items = append(items, r.draw(plane.Point{X: box.Min.X, Y: y})...)
		y -= r.height
		fresh = false
	}
	return items, nil
}

// pourAll fills columns one after another.
func pourAll(rows []row, columns []plane.Box) (items []sheet.Item, left []row) {
	for _, c := range columns {
		var more []sheet.Item
		more, rows = pour(rows, shrink(c, inset))
		items = append(items, more...)
	}
	return items, rows
}

// wordSheets carry the words that found no room on the plan, in columns.
func (j *job) wordSheets(rows []row) []sheet.Sheet {
	var out []sheet.Sheet
	for len(rows) > 0 {
		free, _ := tableZones(j.size)
		columns := 1 + int((free.Max.X-free.Min.X)/250)
		w := (free.Max.X - free.Min.X) / float64(columns)
		s := sheet.Sheet{Title: "Notes to the plan", Size: j.size, Items: j.size.Frame()}
		var boxes []plane.Box
		for i := 0; i < columns; i++ {
			x := free.Min.X + float64(i)*w
			boxes = append(boxes, plane.Box{Min: plane.Point{X: x, Y: free.Min.Y}, Max: plane.Point{X: x + w, Y: free.Max.Y}})
		}
		items, left := pourAll(rows, boxes)
		s.Items = append(s.Items, items...)
		out = append(out, s)
		if len(left) == len(rows) {
			break // cannot happen: an empty column takes any row
		}
		rows = left
	}
	return out
}
