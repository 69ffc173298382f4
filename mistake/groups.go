package mistake

import "brimline/adjust"

// groups weighs every mistake that makes several readings wrong at once. The list of families: runs
// of rows (columns swapped, numbering slipped), a peg moved, the zero of a tape, another edge, a water surface moved.
func (f *finder) groups(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	var out []*hypothesis
	for _, family := range []func(*adjust.Space, []*hypothesis) []*hypothesis{f.sequences, f.pegsMoved, f.zeros, f.edges, f.watersMoved} {
		out = append(out, family(sp, taken)...)
	}
	return out
}
