package advise

import (
	"math"

	"brimline/fieldbook"
	"brimline/network"
	"brimline/plane"
)

// Options of a proposal. Zero values take the defaults, all common practice, no source.
type Options struct {
	Count      int       // proposals wanted; 0: 3
	Alone      bool      // one person only: one end of a tape must hook
	Cannot     [][2]int  // pairs of marks between which no tape can be read
	Longest    float64   // of the tape, metres; 0: 30
	Shortest   float64   // worth taping, metres; 0: 0.3
	Sigma      float64   // sd of a tape reading without definition, metres; 0: the default of a tie
	Definition []float64 // by mark: sd of pointing, metres; nil: none
	Hooks      []bool    // by mark: a tape hooks there; nil: pegs and benchmarks
	Waiting    []int     // marks that wait for a place
	Mirrors    []Mirror  // marks with two possible places
	Factor     float64   // on the sd of the readings, as in Judge; 0: 1
}

// Mirror is a mark that the readings leave in two places, the first the one taken. Lined says that
// the order of the marks along a line chose it: then no tie is spent on the side alone, nor does the
// mark tell the places of others.
type Mirror struct {
	Mark   int
	Places [2]plane.Point
	Lined  bool
}

// Times of a tape reading, minutes: common practice, no source.
const (
	minutesTwo   = 1.5
	minutesAlone = 2.0
	longFrom     = 10.0 // metres from which a tape takes longer
	minutesMetre = 0.1  // for each metre beyond
	mostRead     = 2    // a pair read more often is not proposed
	partners     = 40   // of a mark among the other marks, past which they are thinned evenly
)

func (o Options) filled() Options {
	if o.Count == 0 {
		o.Count = 3
	}
	if o.Longest == 0 {
		o.Longest = 30
	}
	if o.Shortest == 0 {
		o.Shortest = 0.3
	}
	if o.Sigma == 0 {
		o.Sigma = fieldbook.DefaultSigma("tie", "is", "", 0, 0)
	}
	if o.Factor == 0 {
		o.Factor = 1
	}
	return o
}

func (o Options) minutes(about float64) float64 {
	m := minutesTwo
	if o.Alone {
		m = minutesAlone
	}
	if about > longFrom {
		m += minutesMetre * (about - longFrom)
	}
	return m
}

func (o Options) sd(a, b int) float64 {
	v := o.Sigma * o.Sigma
	if o.Definition != nil {
		v += o.Definition[a]*o.Definition[a] + o.Definition[b]*o.Definition[b]
	}
	return math.Sqrt(v)
}

func (o Options) hooks(n *network.Network, a, b int) bool {
	h := o.Hooks
	if h == nil {
		h = n.Pegs
	}
	return h != nil && (h[a] || h[b])
}

func (o Options) cannot(a, b int) bool {
	for _, p := range o.Cannot {
		if p == [2]int{a, b} || p == [2]int{b, a} {
			return true
		}
	}
	return false
}
