package simulate

import "brimline/plane"

// The kinds of pieces, as the book calls its runs.
const (
	straight = "straight"
	arc      = "arc"
	curve    = "curve"
)

// Piece is a stretch of an outline. Tangent speaks of its start, where it leaves the piece
// before. A straight or an arc is one segment; a curve is many short arcs that follow it to
// 1 µm and less.
type Piece struct {
	Kind    string
	Tangent bool
	Segs    []plane.Segment
}

// Figure is a closed outline, piece after piece.
type Figure []Piece

// one is a straight or an arc as a piece.
func one(s plane.Segment, tangent bool) Piece {
	kind := arc
	if s.Straight() {
		kind = straight
	}
	return Piece{Kind: kind, Tangent: tangent, Segs: []plane.Segment{s}}
}

// Path is the outline in the direction of the figure.
func (f Figure) Path() plane.Path {
	p := plane.Path{Closed: true}
	for _, x := range f {
		p.Segs = append(p.Segs, x.Segs...)
	}
	return p
}

// Reverse is the same outline travelled the other way. The joint at the start of a piece was
// that at the start of the piece after it.
func (f Figure) Reverse() Figure {
	n := len(f)
	out := make(Figure, n)
	for i, x := range f {
		back := plane.Path{Segs: x.Segs}.Reverse().Segs
		out[n-1-i] = Piece{Kind: x.Kind, Tangent: f[(i+1)%n].Tangent, Segs: back}
	}
	return out
}

// Mirror is the figure seen in a mirror along x, in the same sense of travel.
func (f Figure) Mirror() Figure {
	out := make(Figure, len(f))
	for i, x := range f {
		y := Piece{Kind: x.Kind, Tangent: x.Tangent, Segs: make([]plane.Segment, len(x.Segs))}
		for k, s := range x.Segs {
			y.Segs[k] = plane.Segment{A: flat(s.A), B: flat(s.B), Bulge: -s.Bulge}
		}
		out[i] = y
	}
	return out.Reverse()
}

func flat(p plane.Point) plane.Point { return plane.Point{X: p.X, Y: -p.Y} }

// Move is the figure shifted and turned.
func (f Figure) Move(m plane.Rigid) Figure {
	out := make(Figure, len(f))
	for i, x := range f {
		out[i] = Piece{x.Kind, x.Tangent, plane.Path{Segs: x.Segs}.Move(m).Segs}
	}
	return out
}

// Length is measured along the piece.
func (x Piece) Length() float64 { return plane.Path{Segs: x.Segs}.Length() }
