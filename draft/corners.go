package draft

import (
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// corner is one that could not be reached, in metres: where it is found to lie.
type corner struct {
	name string
	at   plane.Point
}

// cornersOf are those of a line.
func cornersOf(l *survey.Line) []corner {
	out := make([]corner, len(l.Corners))
	for i, k := range l.Corners {
		out[i] = corner{k.Name, plane.Point{X: k.X, Y: k.Y}}
	}
	return out
}

// cornerHalf is half the side of its square on paper, in millimetres.
const cornerHalf = 1.3

// cornerSymbol is an open square.
func cornerSymbol(p plane.Point) []sheet.Item {
	half := plane.Point{X: cornerHalf, Y: cornerHalf}
	return []sheet.Item{{Layer: sheet.LayerMarks, Pen: sheet.PenThin, Fill: sheet.Filled(sheet.White),
		Shape: sheet.Rect(plane.Box{Min: p.Sub(half), Max: p.Add(half)})}}
}

// drawCorners draws the corners that could not be reached.
func (c *canvas) drawCorners() {
	for _, o := range c.metres {
		for _, k := range cornersOf(o.line) {
			p := c.view.Point(k.at)
			if !k.at.Finite() || !c.sees(p) {
				continue
			}
			c.symbols.corner = true
			c.field.room(square(p, cornerHalf+0.4), forbidden, throughDot)
			c.draw(cornerSymbol(p)...)
		}
	}
}

// cornerNames name them, unless they are marks and have their numbers.
func (c *canvas) cornerNames() {
	for _, o := range c.metres {
		for _, k := range cornersOf(o.line) {
			p := c.view.Point(k.at)
			if !k.at.Finite() || !c.sees(p) || c.result.Marks[k.name] != nil {
				continue
			}
			text := sheet.Text{S: k.name, Height: smallHeight, Anchor: sheet.MidCentre}
			out, turns, _ := c.numberSide(p)
			var list []candidate
			for _, d := range []float64{0.6, 1.4, 2.4, 4, 6, 9, 13} {
				for _, a := range turns {
					list = append(list, numberCandidate(sheet.LayerNumbers, text, p, out.Turn(a), nearNumber+d, 0.4*d+1.6*abs(a)))
				}
			}
			if !c.put(list, crossThin) {
				c.unplaced = append(c.unplaced, k.name)
			}
		}
	}
}

// pastCorners are the spans of an outline from the last mark before each unreached corner to the
// first after it: nobody touched the edge between.
func (c *canvas) pastCorners(i int) []span {
	o := c.paper[i]
	var out []span
	for _, k := range cornersOf(o.line) {
		seg, t, _ := o.path.Nearest(c.view.Point(k.at))
		if seg < 0 {
			continue
		}
		if s, ok := c.between(o, float64(seg)+t); ok {
			out = append(out, s)
		}
	}
	return out
}

// between is the span between the two marks of an outline on both sides of a place.
func (c *canvas) between(o outline, at float64) (span, bool) {
	n := float64(len(o.path.Segs))
	before, after := -n, 3*n
	for _, m := range c.alongEdge(o) {
		x, ok := c.where(o, m)
		if !ok {
			continue
		}
		for _, y := range []float64{x - n, x, x + n} {
			if !o.line.Closed && y != x {
				continue
			}
			if y <= at {
				before = max(before, y)
			} else {
				after = min(after, y)
			}
		}
	}
	if before <= -n || after >= 3*n {
		return span{}, false
	}
	if before < 0 {
		before, after = before+n, after+n
	}
	return span{before, after}, true
}
