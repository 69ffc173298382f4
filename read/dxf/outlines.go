package dxf

import (
	"errors"
	"fmt"
	"strings"

	"brimline/plane"
)

// Outline is a polyline with the name of its layer, in metres.
type Outline struct {
	Layer string
	Path  plane.Path
}

// Outlines reads the polylines of a file in their order, those of two vertices or more; a vertex at
// the place of the one before is dropped. An error names the line, or says that the file has no unit
// that is known: millimetres or inches, from the header or from the first line.
func Outlines(src []byte) ([]Outline, error) {
	list, err := pairs(src)
	if err != nil {
		return nil, err
	}
	metre, err := unitOf(list)
	if err != nil {
		return nil, err
	}
	r := reader{metre: metre}
	for _, p := range list {
		if err := r.take(p); err != nil {
			return nil, err
		}
	}
	r.finish()
	return r.out, nil
}

// unitOf is the length of the file's unit in metres.
func unitOf(list []pair) (float64, error) {
	for i, p := range list {
		switch {
		case p.code == 999 && strings.HasSuffix(p.value, "1:1 in millimetres"):
			return 0.001, nil
		case p.code == 999 && strings.HasSuffix(p.value, "1:1 in inches"):
			return 0.0254, nil
		case p.code == 9 && p.value == "$INSUNITS" && i+1 < len(list):
			n, err := list[i+1].whole()
			if err != nil {
				return 0, err
			}
			switch n {
			case 1:
				return 0.0254, nil
			case 4:
				return 0.001, nil
			}
			return 0, fmt.Errorf("dxf: line %d: unit code %d is neither millimetres nor inches", list[i+1].line, n)
		}
	}
	return 0, errors.New("dxf: the file does not say its unit")
}

// reader is the state between pairs.
type reader struct {
	metre   float64
	section string
	kind    string // of the object that the pairs belong to
	now     *polyline
	out     []Outline
}

// polyline is one being read.
type polyline struct {
	layer  string
	closed bool
	at     []plane.Point // in the file's unit
	bulges []float64
}

func (r *reader) take(p pair) error {
	if p.code == 0 {
		r.begin(p.value)
		return nil
	}
	if r.kind == "SECTION" && p.code == 2 {
		r.section = p.value
	}
	if r.section != "ENTITIES" || r.now == nil {
		return nil
	}
	switch r.kind {
	case "LWPOLYLINE", "POLYLINE":
		return r.head(p)
	case "VERTEX":
		return r.vertex(p)
	}
	return nil
}

// begin starts the next object; a polyline of the old kind goes on through its vertices.
func (r *reader) begin(kind string) {
	if kind != "VERTEX" {
		r.finish()
	}
	r.kind = kind
	switch {
	case kind == "LWPOLYLINE" || kind == "POLYLINE":
		r.now = &polyline{}
	case kind == "VERTEX" && r.now != nil:
		r.now.add()
	}
}

func (q *polyline) add() {
	q.at, q.bulges = append(q.at, plane.Point{}), append(q.bulges, 0)
}

// head reads what is said of a whole polyline, and the vertices of the new kind.
func (r *reader) head(p pair) error {
	switch p.code {
	case 8:
		r.now.layer = p.value
	case 70:
		n, err := p.whole()
		r.now.closed = n&1 == 1
		return err
	case 10:
		if r.kind == "LWPOLYLINE" {
			r.now.add()
		}
	}
	if r.kind == "LWPOLYLINE" {
		return r.vertex(p)
	}
	return nil
}

// vertex reads a place or a bulge of the last vertex.
func (r *reader) vertex(p pair) error {
	if p.code != 10 && p.code != 20 && p.code != 42 {
		return nil
	}
	x, err := p.number()
	if err != nil {
		return err
	}
	n := len(r.now.at) - 1
	if n < 0 {
		return fmt.Errorf("dxf: line %d: a coordinate before the first vertex", p.line)
	}
	switch p.code {
	case 10:
		r.now.at[n].X = x
	case 20:
		r.now.at[n].Y = x
	case 42:
		r.now.bulges[n] = x
	}
	return nil
}

// finish keeps the polyline that was being read.
func (r *reader) finish() {
	q := r.now
	r.now = nil
	if q == nil || len(q.at) < 2 {
		return
	}
	path := plane.Path{Closed: q.closed}
	for i, a := range q.at {
		if i+1 == len(q.at) && !q.closed {
			break
		}
		s := plane.Segment{A: a.Mul(r.metre), B: q.at[(i+1)%len(q.at)].Mul(r.metre), Bulge: q.bulges[i]}
		if s.A != s.B {
			path.Segs = append(path.Segs, s)
		}
	}
	if len(path.Segs) > 0 {
		r.out = append(r.out, Outline{q.layer, path})
	}
}
