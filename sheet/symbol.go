package sheet

import "brimline/plane"

// Symbol is the shape of a state, drawn and not lettered, so that it stands in black and white too.
type Symbol int

// The symbols.
const (
	NoSymbol     Symbol = iota
	FilledSquare        // ready, good, agrees
	HalfSquare          // unproven, lone, doubtful
	BarredSquare        // unfit, suspect, disagrees
)

// Draw gives the symbol with its lower left corner at foot, size millimetres wide and high.
func (s Symbol) Draw(layer Layer, ink Ink, foot plane.Point, size float64) []Item {
	box := plane.Box{Min: foot, Max: foot.Add(plane.Point{X: size, Y: size})}
	line := Item{Layer: layer, Pen: PenThin, Ink: ink, Shape: Rect(box)}
	switch s {
	case FilledSquare:
		line.Fill = Filled(ink)
		return []Item{line}
	case HalfSquare:
		half := box
		half.Max.X = foot.X + size/2
		return []Item{{Layer: layer, Ink: ink, Fill: Filled(ink), Shape: Rect(half)}, line}
	case BarredSquare:
		over := plane.Point{X: 0.3 * size, Y: 0.3 * size}
		bar := Item{Layer: layer, Pen: PenEdge, Ink: ink, Shape: Line(box.Min.Sub(over), box.Max.Add(over))}
		return []Item{line, bar}
	}
	return nil
}
