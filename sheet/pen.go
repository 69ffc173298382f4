package sheet

// Pen is a line by its meaning.
type Pen string

// The pens. PenNone draws no outline.
const (
	PenNone     Pen = ""
	PenFrame    Pen = "frame"
	PenEdge     Pen = "edge"     // the edge, touched
	PenInferred Pen = "inferred" // the edge where nobody touched it
	PenSoft     Pen = "soft"     // the edge where it has no sharp line
	PenThin     Pen = "thin"     // deck, walls, steps, features, dimensions
	PenUnder    Pen = "under"    // under water
	PenAxis     Pen = "axis"     // centre lines, axes, baseline
	PenHair     Pen = "hair"     // readings, error ellipses, rules of tables
	PenNext     Pen = "next"     // the reading proposed next
)

// Stroke is how a pen draws: Width and Dash (strokes and gaps in turn, nil for a whole line) in
// millimetres.
type Stroke struct {
	Pen   Pen
	Width float64
	Dash  []float64
}

// Widths of the line group used, from the series of ISO 128-20, wide and narrow 2:1. The frame is
// 0.7 (ISO 5457), the hairline the thinnest of the series.
const (
	wide   = 0.5
	narrow = 0.25
	hair   = 0.13
	border = 0.7
)

// Strokes is the closed list of pens. Lengths of strokes and gaps are the multiples of the width
// of ISO 128-20: dash 12, gap 3, long dash 24, dot a half.
var Strokes = []Stroke{
	{PenFrame, border, nil},
	{PenEdge, wide, nil},
	{PenInferred, wide, []float64{8 * wide, 4 * wide}},
	{PenSoft, wide, []float64{2 * wide, 2 * wide}},
	{PenThin, narrow, nil},
	{PenUnder, narrow, []float64{12 * narrow, 3 * narrow}},
	{PenAxis, narrow, []float64{24 * narrow, 3 * narrow, 0.5 * narrow, 3 * narrow}},
	{PenHair, hair, nil},
	{PenNext, wide, []float64{24 * wide, 3 * wide}},
}

// Stroke gives the pen's line; false for PenNone and for a pen that is not on the list.
func (p Pen) Stroke() (Stroke, bool) {
	for _, s := range Strokes {
		if s.Pen == p {
			return s, true
		}
	}
	return Stroke{}, false
}
