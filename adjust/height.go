package adjust

import (
	"math"

	"brimline/network"
)

// HeightBlock is the block of the height of a mark; false where no reading of it is in the network.
func HeightBlock(n *network.Network, mark int) (network.Unknown, bool) {
	for i := range n.Free {
		if f := &n.Free[i]; f.Kind == "height" && f.Marks[0] == mark {
			return n.FreeBlock(i), true
		}
	}
	return 0, false
}

// UpBlock is the block of a height of another kind: the line of sight or the zero of a set-up, a water
// surface, a line taken as level.
func UpBlock(n *network.Network, kind, name string) (network.Unknown, bool) {
	for i := range n.Free {
		if f := &n.Free[i]; f.Kind == kind && f.Name == name {
			return n.FreeBlock(i), true
		}
	}
	return 0, false
}

// Height is the height in a block of one, metres above the one that is held; false where the readings
// in the solution do not hold it.
func (s *Solution) Height(b network.Unknown) (z float64, ok bool) {
	if s.sys == nil || !s.Net.Placed(s.X, b) || s.sys.weak[int(b)] {
		return math.NaN(), false
	}
	return s.X[s.Net.Offset[b]], true
}

// HeightCov is the covariance of heights, k × k row-major, metres squared, against the one that is held.
func (s *Solution) HeightCov(blocks ...network.Unknown) []float64 {
	at := make([]int, len(blocks))
	for k, b := range blocks {
		at[k] = int(b)
	}
	return s.blocksCov(at)
}
