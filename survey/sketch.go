package survey

import (
	"math"

	"brimline/network"
)

// unsketch takes the places of marks and set-ups that no reading in use touches: a drawing helped
// to locate them, and is never in the result.
func unsketch(n *network.Network, x network.State) {
	read := make([]bool, len(n.Offset)-1)
	for i := range n.Obs {
		if !n.Obs[i].Use {
			continue
		}
		for _, b := range n.Obs[i].Blocks {
			read[b] = true
		}
	}
	for b, ok := range read {
		if ok {
			continue
		}
		for k := n.Offset[b]; k < n.Offset[b+1]; k++ {
			x[k] = math.NaN()
		}
	}
}
