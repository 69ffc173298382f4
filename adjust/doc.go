// Package adjust finds the places that agree best with all readings together, by weighted least
// squares, and says how far each can be trusted: covariance, redundancy numbers, tests, the
// smallest error that would show and what a hidden one could do.
//
// In: a network and start coordinates (package locate). Out: a Solution in the inner datum, in
// which the network's base mark is held and the direction to its second mark is held; Frame
// gives covariances in another datum. Metres and radians.
//
// Main source: P. Teunissen, Testing Theory (2006), for tests and reliability (after W. Baarda,
// A Testing Procedure for Use in Geodetic Networks, 1968).
package adjust

import "brimline/network"

// Critical values: two-sided w-test at 0.001, and the shift it finds with power 0.80.
const (
	WLimit     = 3.29
	Shift      = 4.13 // square root of the non-centrality 17.07
	LeastRed   = 0.01 // below this redundancy a mistake shows nowhere
	Influence  = 0.05 // move of a mark, as a share of the error, that makes it uncontrolled
	Radius95   = 2.4477468306808166
	convergeAt = 1e-9 // metres
)

// Options of a solution.
type Options struct {
	MaxSteps int           // 0: 60
	NoRobust bool          // skip the robust start even when readings disagree
	Fallback network.State // where a robust start begins; nil: at the start given
}

// Loose is a mark that the readings leave free to move.
type Loose struct {
	Mark    int
	Move    float64 // semi-axis of the 95 % region, metres; +Inf where nothing holds it, or past the size of the whole figure
	Bearing float64 // direction of the move, clockwise from +y, 0 to π
}

// Solution is the adjusted figure. Per-part slices run over the parts of all observations:
// observation i has parts First[i] to First[i+1].
type Solution struct {
	Net    *network.Network
	X      network.State
	Robust network.State // where gross errors pull least; nil where nothing disagreed
	Base   [2]int
	In     []bool // observation takes part
	Out    []bool // part is left out of an observation that could take part
	Agrees []bool // check reading that agrees with its prediction
	Held   []int  // network.Free whose unknowns the readings cannot tell apart: held at no error
	First  []int

	// By part. SD is the one in force (a bent reading's is larger while it is too long). Redund
	// and Detectable count the checks that agree; Own is the redundancy without them, on which W
	// rests.
	SD, Adjusted, Residual, W, Redund, Own, Detectable []float64

	Rows, Unknowns, Redundancy int
	Cost                       float64 // sum of squared whitened residuals
	ReferenceSD                float64
	ChiLow, ChiHigh            float64 // 95 % two-sided, valid when Redundancy > 0
	Iterations                 int
	Converged                  bool
	Loose                      []Loose

	sys     *system
	spare   *system          // of brief variations, one after another
	lent    *network.Network // of brief variations, with the observations that the last one changed
	lentObs []int
	jac     []float64 // of all parts, at the solution
	jat     []int     // where the rows of observation i begin in jac
	proof   *Space    // of the solution with the checks that agree
	whole   []float64 // see Whole
}
