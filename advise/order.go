package advise

import (
	"brimline/adjust"
	"brimline/mistake"
)

// Ask is one figure that an order needs. At names the mark it belongs to, as the network does.
// With Fit the figure is of moves that are left after the best rigid fit on those marks (a
// line's own datum), which keeps Func short: see Edges. Open is the standard deviation of what
// stays open about the edge there, Value the figure itself (0 where only its trust counts) and
// Tolerance what it may be off, for cutting; all in metres, or in the unit of the figure.
type Ask struct {
	Name, At  string
	Func      adjust.Functional
	Fit       []int
	Open      float64
	Value     float64
	Tolerance float64
}

// Order is what is to be made. For is cut, stock or price: what will be done with the numbers.
// Share is the part of a tolerance that the 95 % uncertainty may use, Unseen the odds allowed
// that a listed mistake passes unseen and spoils the piece, Cost the relative loss then.
type Order struct {
	Name, For           string
	Share, Unseen, Cost float64
	Asks                []Ask
}

// Odd is what does not fit: observations that are suspect and left out, and the doubtful groups,
// of which one member is left out.
type Odd struct {
	Suspect  []int
	Doubtful []mistake.Group
}

// States of a test and of an order, the worst last.
const (
	Ready    = "ready"
	Unproven = "unproven"
	Unfit    = "unfit"
)

// Verdict on one order. Unseen is the sum over distinct listed mistakes that would spoil any of
// its tests; Worst is the place in Tests of the test that decides, −1 where there is none.
type Verdict struct {
	Name   string
	State  string
	Unseen float64
	Tests  []Test
	Worst  int
	Why    []Reason // what keeps it from being ready, the weightiest first
}

// Test is one figure of an order held against its tolerance (already widened for stock or price).
type Test struct {
	Name, At         string
	Value            float64
	U95              float64 // 1.96 standard deviations; +Inf where a mark has no place
	Tolerance, Share float64
	Unseen           float64 // odds that a listed mistake passes unseen and spoils it, at most 1
	State            string
	Why              Reason
}

// Widen is the factor on tolerances by what will be done with the numbers: 4 for a price, 2 for
// stock, 1 for cutting. Common practice, no source.
func Widen(use string) float64 {
	switch use {
	case "price":
		return 4
	case "stock":
		return 2
	}
	return 1
}

// two95 is the two-sided 95 % quantile of the normal distribution.
const two95 = 1.959963984540054

// moveShare is the part of a tolerance by which a suspect or doubtful reading may move a figure.
const moveShare = 1.0 / 3

func rank(state string) int {
	switch state {
	case Unfit:
		return 2
	case Unproven:
		return 1
	}
	return 0
}
