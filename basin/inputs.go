package basin

import (
	"cmp"
	"math"
	"slices"
)

// readInputs numbers everything that heights hang on.
func (b *Basin) readInputs(spec *Spec) {
	b.brink = math.Inf(-1)
	for _, w := range spec.Waters {
		b.brink = math.Max(b.brink, w.Height.Z)
	}
	b.levels = b.line(spec.Levels, WallReadings)
	for _, w := range spec.Walls {
		seg, share, _ := b.rim.Place(b.station(w.S))
		b.wallForm = append(b.wallForm, b.floorHeight(w.Height, w.Name, b.rim.Segs[seg].At(share), 0))
		b.soundAt = append(b.soundAt, len(b.inputs)-1)
		b.brink = math.Max(b.brink, w.Height.Z)
	}
	for _, p := range spec.Floor {
		b.floorForm = append(b.floorForm, b.floorHeight(p.Height, p.Name, p.At, p.Place))
		b.soundAt = append(b.soundAt, len(b.inputs)-1)
		b.brink = math.Max(b.brink, p.Height.Z)
	}
	b.brink += open
	b.sides()
	for range b.sided {
		b.inputs = append(b.inputs, input{index: -1, own: runOut, cause: Spacing})
		b.runout = append(b.runout, len(b.inputs)-1)
	}
}

// open is how far above every height read the walls go on where nobody read the rim (metres): then
// only a lip bounds the water.
const open = 2.0

// line reads a list of heights along the rim, in order round it.
func (b *Basin) line(list []Level, c Cause) []leveled {
	var out []leveled
	for _, l := range list {
		out = append(out, leveled{b.station(l.S), b.height(l.Height, c), l.Name})
	}
	slices.SortStableFunc(out, func(p, q leveled) int { return cmp.Compare(p.s, q.s) })
	return out
}
