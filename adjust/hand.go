package adjust

import (
	"brimline/locate"
	"brimline/network"
)

// Handed gives a state the hand that the book asks for, or custom, where no reading knows left from
// right: see locate.Handed. The second result is false where it is right as it is.
func (s *Solution) Handed(x network.State) (network.State, bool) { return locate.Handed(s.Net, x) }
