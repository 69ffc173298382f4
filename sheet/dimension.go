package sheet

import (
	"math"

	"brimline/plane"
)

// DimKind is what a dimension measures.
type DimKind int

// The kinds.
const (
	DimStraight DimKind = iota // the straight from A to B
	DimArc                     // the length of the arc from A to B with Bulge
	DimRadius                  // from A, the centre or a point on the way, to B on the arc
)

// Dimension is a dimension line with its figure. The line stands Offset millimetres to the left of
// A to B, negative to the right; for an arc it is concentric and Offset is added to the radius.
// Share is the place of the figure along the line, 0 to 1. Skip is what extension lines leave free
// at the measured points.
type Dimension struct {
	Kind   DimKind
	A, B   plane.Point
	Bulge  float64
	Offset float64
	Skip   float64
	Text   string
	Height float64
	Share  float64
}

// Sizes of dimension lines in millimetres, after ISO 129-1: a closed filled arrowhead, extension
// lines that pass the dimension line by eight line widths.
const (
	arrowLength = 3.0
	arrowHalf   = 0.5
	beyond      = 8 * narrow
	textGap     = 1.45
)

// Parts is a dimension taken apart: its lines (the dimension line last), its filled arrowheads, and its figure.
// Sign is the small arc over the start of an arc's length (ISO 129-1), else empty.
type Parts struct {
	Lines  []plane.Path
	Arrows [][3]plane.Point
	Sign   plane.Path
	Text   Text
}

// Parts takes a dimension apart, for drawing and for keeping other things away from it.
func (d Dimension) Parts() Parts {
	switch d.Kind {
	case DimArc:
		return d.arc()
	case DimRadius:
		return d.radius()
	}
	return d.straight()
}

func (d Dimension) straight() Parts {
	u := d.B.Sub(d.A).Unit()
	side := u.Left()
	a, b := d.A.Add(side.Mul(d.Offset)), d.B.Add(side.Mul(d.Offset))
	var p Parts
	if math.Abs(d.Offset) > d.Skip {
		out := side.Mul(math.Copysign(1, d.Offset))
		p.Lines = append(p.Lines, extension(d.A, a, out, d.Skip), extension(d.B, b, out, d.Skip))
	}
	if a.Dist(b) < 3*arrowLength {
		p.Arrows = [][3]plane.Point{arrow(a, u.Mul(-1)), arrow(b, u)}
		a, b = a.Sub(u.Mul(2*arrowLength)), b.Add(u.Mul(2*arrowLength))
	} else {
		p.Arrows = [][3]plane.Point{arrow(a, u), arrow(b, u.Mul(-1))}
	}
	p.Lines = append(p.Lines, Line(a, b).Path)
	p.Text = d.text(plane.Lerp(a, b, d.Share), Upright(plane.Angle(u)), textGap)
	return p
}

func (d Dimension) radius() Parts {
	u := d.B.Sub(d.A).Unit()
	return Parts{
		Lines:  []plane.Path{Line(d.A, d.B).Path},
		Arrows: [][3]plane.Point{arrow(d.B, u.Mul(-1))},
		Text:   d.text(plane.Lerp(d.A, d.B, d.Share), Upright(plane.Angle(u)), textGap),
	}
}

func (d Dimension) arc() Parts {
	seg := plane.Segment{A: d.A, B: d.B, Bulge: d.Bulge}
	c, r := seg.Centre(), math.Abs(seg.Radius())
	far := func(p plane.Point) plane.Point { return c.Add(p.Sub(c).Unit().Mul(r + d.Offset)) }
	line := plane.Segment{A: far(d.A), B: far(d.B), Bulge: d.Bulge}
	var p Parts
	if math.Abs(d.Offset) > d.Skip {
		sign := math.Copysign(1, d.Offset)
		p.Lines = append(p.Lines,
			extension(d.A, line.A, d.A.Sub(c).Unit().Mul(sign), d.Skip), extension(d.B, line.B, d.B.Sub(c).Unit().Mul(sign), d.Skip))
	}
	share := math.Min(0.5, arrowLength/line.Length())
	p.Arrows = [][3]plane.Point{
		arrow(line.A, line.At(share).Sub(line.A).Unit()), arrow(line.B, line.At(1-share).Sub(line.B).Unit())}
	p.Lines = append(p.Lines, plane.Path{Segs: []plane.Segment{line}})
	at := line.At(d.Share)
	turn := Upright(plane.Angle(line.Tangent(d.Share)))
	gap := textGap
	if up := (plane.Point{X: 1}).Turn(turn).Left(); up.Dot(at.Sub(c)) < 0 {
		gap += rise(d.width()/2, r+d.Offset) // over the hollow side the ends of the text come nearer
	}
	p.Text = d.text(at, turn, gap)
	p.Sign = d.sign(&p.Text)
	return p
}

// rise of an arc of radius r over half a chord.
func rise(half, r float64) float64 {
	if half >= r {
		return r
	}
	return r - math.Sqrt(r*r-half*half)
}

func (d Dimension) width() float64 {
	w := Width(d.Text, d.Height, false)
	if d.Kind == DimArc {
		w += 1.3 * d.Height
	}
	return w
}

// sign makes room before a text and draws the arc sign there.
func (d Dimension) sign(t *Text) plane.Path {
	along := plane.Point{X: 1}.Turn(t.Turn)
	t.At = t.At.Add(along.Mul(0.65 * d.Height))
	left := t.Foot().Sub(along.Mul(1.2 * d.Height)).Add(along.Left().Mul(0.3 * d.Height))
	return plane.Path{Segs: []plane.Segment{{A: left, B: left.Add(along.Mul(0.95 * d.Height)), Bulge: -0.7}}}
}

func (d Dimension) text(at plane.Point, turn, gap float64) Text {
	up := plane.Point{X: 1}.Turn(turn).Left()
	return Text{S: d.Text, At: at.Add(up.Mul(gap)), Height: d.Height, Anchor: FootCentre, Turn: turn}
}

// extension runs from a measured point to just past the dimension line.
func extension(from, to, out plane.Point, skip float64) plane.Path {
	return Line(from.Add(out.Mul(skip)), to.Add(out.Mul(beyond))).Path
}

// arrow has its tip at tip and its body along u.
func arrow(tip, u plane.Point) [3]plane.Point {
	base := tip.Add(u.Mul(arrowLength))
	return [3]plane.Point{tip, base.Add(u.Left().Mul(arrowHalf)), base.Sub(u.Left().Mul(arrowHalf))}
}

func (d Dimension) flat(it Item) []Item {
	p := d.Parts()
	var out []Item
	for _, l := range p.Lines {
		out = append(out, Item{Layer: it.Layer, Pen: it.Pen, Ink: it.Ink, Shape: Path{l}})
	}
	for _, a := range p.Arrows {
		out = append(out, Item{Layer: it.Layer, Ink: it.Ink, Fill: Filled(it.Ink), Shape: Polyline(true, a[:]...)})
	}
	if len(p.Sign.Segs) > 0 {
		out = append(out, Item{Layer: it.Layer, Pen: PenThin, Ink: it.Ink, Shape: Path{p.Sign}})
	}
	return append(out, it.text(p.Text)...)
}
