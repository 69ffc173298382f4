package sheet

import "brimline/plane"

// Size is a trimmed sheet as it lies on the table: W across, H up, in millimetres.
type Size struct {
	Name string
	W, H float64
}

// inch in millimetres (exact).
const inch = 25.4

// Sizes is the closed list. The A sizes are those of ISO 216, A4 and ANSI A upright and the
// others lying, as ISO 5457 has them; the ANSI sizes are those of ASME Y14.1.
var Sizes = []Size{
	{"A4", 210, 297},
	{"A3", 420, 297},
	{"A2", 594, 420},
	{"A1", 841, 594},
	{"ANSI A", 8.5 * inch, 11 * inch},
	{"ANSI B", 17 * inch, 11 * inch},
	{"ANSI C", 22 * inch, 17 * inch},
	{"ANSI D", 34 * inch, 22 * inch},
}

// Paper gives the size of that name; false when the list has none.
func Paper(name string) (Size, bool) {
	for _, s := range Sizes {
		if s.Name == name {
			return s, true
		}
	}
	return Size{}, false
}

// Turned lays an upright sheet down and stands a lying one up.
func (s Size) Turned() Size { return Size{s.Name, s.H, s.W} }

// Upright says that the sheet is higher than wide.
func (s Size) Upright() bool { return s.H > s.W }

// Margins of the frame in millimetres: ISO 5457 leaves 20 on the filing side, the left, and 10
// on the others.
const (
	filing = 20
	margin = 10
)

// Space is the drawing space inside the frame.
func (s Size) Space() plane.Box {
	return plane.Box{Min: plane.Point{X: filing, Y: margin}, Max: plane.Point{X: s.W - margin, Y: s.H - margin}}
}

// Frame draws the border of the drawing space and four centring marks 5 mm long outside it, for
// whoever photographs or copies the sheet (ISO 5457, 4.3 as recalled; there they also run inward).
func (s Size) Frame() []Item {
	b := s.Space()
	items := []Item{{Layer: LayerFrame, Pen: PenFrame, Shape: Rect(b)}}
	cx, cy := s.W/2, s.H/2
	for _, l := range [][2]plane.Point{
		{{X: cx, Y: b.Min.Y - 5}, {X: cx, Y: b.Min.Y}}, {{X: cx, Y: b.Max.Y}, {X: cx, Y: b.Max.Y + 5}},
		{{X: b.Min.X - 5, Y: cy}, {X: b.Min.X, Y: cy}}, {{X: b.Max.X, Y: cy}, {X: b.Max.X + 5, Y: cy}},
	} {
		items = append(items, Item{Layer: LayerFrame, Pen: PenFrame, Shape: Line(l[0], l[1])})
	}
	return items
}
