package mistake

import (
	"math"

	"brimline/network"
)

// slantRange is by how much a depth read along the slope of the floor or the wall is too long at most,
// metres: common practice, no source.
const slantRange = 0.5

// slants adds that a depth was read along the slope: by an amount that nothing lists, too long.
func (f *finder) slants(out []way, o *network.Obs) []way {
	if _, depth := o.Kind.(network.Depth); !depth || o.Foot != nil && o.Foot.Slant {
		return out
	}
	ln := math.Log(odds(f.book, "depth-slope"))
	return append(out, way{candidate: candidate{"depth-slope", "the depth read along the slope", math.NaN(), ln}, peg: -1, width: slantRange, open: true, over: true})
}
