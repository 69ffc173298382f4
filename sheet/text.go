package sheet

import (
	"math"

	"brimline/plane"
)

// Anchor is the part of a text that stands at its point: across L, C or R, up the foot line, the
// middle of the capitals or their head.
type Anchor struct{ Across, Up Align }

// Align is the start, the middle or the end.
type Align int

// The alignments.
const (
	Start Align = iota
	Middle
	End
)

// Anchors by name.
var (
	FootLeft   = Anchor{Start, Start}
	FootCentre = Anchor{Middle, Start}
	FootRight  = Anchor{End, Start}
	MidLeft    = Anchor{Start, Middle}
	MidCentre  = Anchor{Middle, Middle}
	MidRight   = Anchor{End, Middle}
	HeadLeft   = Anchor{Start, End}
)

// Text is one line of lettering. Height is that of the capitals in millimetres (h of ISO 3098),
// Turn the direction of reading, radians counter-clockwise from +x. Struck draws a line through it.
type Text struct {
	S      string
	At     plane.Point
	Height float64
	Anchor Anchor
	Turn   float64
	Bold   bool
	Struck bool
}

// Foot is the left end of the foot line, from which a writer sets the letters.
func (t Text) Foot() plane.Point {
	w := Width(t.S, t.Height, t.Bold)
	shift := plane.Point{X: -share(t.Anchor.Across) * w, Y: -share(t.Anchor.Up) * t.Height}
	return t.At.Add(shift.Turn(t.Turn))
}

func share(a Align) float64 { return float64(a) / 2 }

// Corners are the four corners of the text's room, the lower left first, counter-clockwise: its
// width by the height of the capitals, a quarter of the height lower for tails.
func (t Text) Corners() [4]plane.Point {
	w := Width(t.S, t.Height, t.Bold)
	f := t.Foot()
	along := plane.Point{X: 1}.Turn(t.Turn)
	up := along.Left()
	low, high := f.Sub(up.Mul(0.25*t.Height)), f.Add(up.Mul(t.Height))
	return [4]plane.Point{low, low.Add(along.Mul(w)), high.Add(along.Mul(w)), high}
}

// Upright turns a direction so that a text along it is read from below or from the right: from
// −85° to 95°, so that a figure along a line that is upright but for a little reads upward.
func Upright(turn float64) float64 {
	t := math.Remainder(turn, 2*math.Pi)
	if low := -85 * math.Pi / 180; t <= low || t > low+math.Pi {
		t = math.Remainder(t+math.Pi, 2*math.Pi)
	}
	return t
}

// text cleans a text and draws its strike; an empty one is nothing.
func (it Item) text(t Text) []Item {
	t.S = Clean(t.S)
	if t.S == "" || !(t.Height > 0) {
		return nil
	}
	out := []Item{it.with(t)}
	if t.Struck {
		c := t.Corners()
		a, b := plane.Lerp(c[0], c[3], 0.52), plane.Lerp(c[1], c[2], 0.52)
		out = append(out, Item{Layer: it.Layer, Pen: PenThin, Ink: it.Ink, Shape: Line(a, b)})
	}
	return out
}
