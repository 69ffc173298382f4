package basin

import (
	"brimline/mesh"
	"brimline/plane"
)

// Face is a flat triangle of the body, its corners counter-clockwise seen from the water.
type Face struct {
	Part Part
	At   [3]mesh.Point3
}

// Faces are floor, walls, coves, steps and ledges as they stand, up to the wall tops.
func (b *Basin) Faces() []Face {
	out := make([]Face, len(b.shell.faces))
	for i, f := range b.shell.faces {
		out[i].Part = f.part
		for k, v := range f.v {
			p := b.shell.vertices[v].p
			out[i].At[k] = mesh.Point3{X: p[0], Y: p[1], Z: p[2]}
		}
	}
	return out
}

// Soundings are the depths read that the floor hangs on, below a level.
func (b *Basin) Soundings(level Height) []Depth {
	var out []Depth
	for _, i := range b.soundAt {
		if b.used[i] {
			out = append(out, b.depth(level, i))
		}
	}
	return out
}

// BreakLines are breaks, pad and toes in the order of the Spec, from place to place as they lie in the
// floor, run on to the wall where they end near it.
func (b *Basin) BreakLines() [][]mesh.Point3 {
	out := make([][]mesh.Point3, len(b.breaks))
	for i, line := range b.breaks {
		for _, p := range line {
			out[i] = append(out[i], b.base.Points[p])
		}
	}
	return out
}

// Top is the level area of a tread or a ledge.
type Top struct {
	Name   string
	Part   Part
	Ring   []plane.Point // counter-clockwise
	Height float64
}

// Tops are treads, those of bays too, then ledges, in the order of the Spec.
func (b *Basin) Tops() []Top {
	var out []Top
	for _, list := range [][]solid{b.bays, b.solids} {
		for _, x := range list {
			out = append(out, Top{x.name, x.part, x.ring, x.z})
		}
	}
	return out
}

// Outline is the rim, counter-clockwise.
func (b *Basin) Outline() plane.Path { return b.rim }

// RimAt is the height of the rim at a place, by the nearest place of the outline; false where nobody
// read the rim.
func (b *Basin) RimAt(p plane.Point) (float64, bool) {
	if len(b.levels) == 0 {
		return 0, false
	}
	s := b.wrap(b.rim.Foot(p).Along)
	return b.value(b.along(b.levels, s)), true
}
