package advise

import (
	"context"
	"math"
	"slices"

	"brimline/adjust"
	"brimline/mistake"
	"brimline/network"
	"brimline/plane"
)

// Sketch is what is known before a visit: about where the marks are, from a rough sketch, and how
// they will be tied. Outline lists the marks of the rim in order; Ties are the pairs that will be
// read anyway; nil: the pegs among themselves and every mark of the outline from the first two.
type Sketch struct {
	Names         []string
	At            []plane.Point // NaN: not in the sketch
	Pegs          []int
	Outline       []int
	Ties          [][2]int
	Read          [][2]int // pairs that were taped already, once or more, besides the ties
	Slips         []Slip   // listed mistakes of one tie; nil: Slips
	Tolerance     float64  // of the edge, metres; 0: 25 mm (common practice, no source)
	Share, Unseen float64  // as in Order; 0: 0.5 and 1 %
}

// Slip is a human mistake of a fixed size in one reading, either way, with its prior odds.
type Slip struct {
	Code string
	Size float64 // metres
	Odds float64
}

// Slips are those that a tape invites whatever it reads. Common practice, no source.
var Slips = []Slip{{"foot", 0.3048, 0.002}, {"metre", 1, 0.002}, {"tenth", 0.1, 0.002}, {"inch", 0.0254, 0.001}, {"digits", 0.09, 0.002}}

// Checks is the set of n check tapes to read besides the ties, chosen one after another so that
// each lowers the risk of the outline most, two ahead, with the marks where the sketch has them
// and everything read without error. It stops short of n where the outline would be ready, and is empty
// where it is; nil where the sketch has fewer than two pegs or three marks.
func Checks(k Sketch, n int, o Options) []Proposal {
	k.Outline = slices.DeleteFunc(slices.Clone(k.Outline), func(m int) bool { return !k.At[m].Finite() })
	if len(k.Pegs) < 2 || len(k.Outline) < 3 {
		return nil
	}
	o = o.filled()
	o.Count = n
	net, x := k.network(o)
	s, _ := adjust.Solve(context.Background(), net, x, adjust.Options{NoRobust: true})
	if s == nil || s.Rows == 0 {
		return nil
	}
	tolerance, share, unseen := k.Tolerance, k.Share, k.Unseen
	if tolerance == 0 {
		tolerance = 0.025
	}
	if share == 0 {
		share = 0.5
	}
	if unseen == 0 {
		unseen = 0.01
	}
	order := Order{Name: "shape", For: "cut", Share: share, Unseen: unseen, Cost: 1, Asks: Edges(s, k.Outline, k.normals(s), nil, tolerance)}
	return append([]Proposal{}, Next(s, k.listed(s), Odd{}, []Order{order}, o)...)
}

// network is the sketch as a network of exact ties.
func (k Sketch) network(o Options) (*network.Network, network.State) {
	n := &network.Network{Base: [2]int{k.Pegs[0], k.Pegs[1]}, ByName: map[string]int{}, SetupAt: map[string]int{}, Pegs: make([]bool, len(k.At))}
	var x network.State
	for i, p := range k.At {
		n.Marks = append(n.Marks, k.Names[i])
		n.ByName[k.Names[i]] = i
		n.Offset = append(n.Offset, len(x))
		x = append(x, p.X, p.Y)
	}
	n.Offset = append(n.Offset, len(x))
	for _, m := range k.Pegs {
		n.Pegs[m] = true
	}
	for _, t := range k.taken() {
		if !o.cannot(t[0], t[1]) && k.At[t[0]] != k.At[t[1]] {
			n.Obs = append(n.Obs, exactTie(n, len(n.Obs), t, k.At, o.sd(t[0], t[1])))
		}
	}
	tied := make([]bool, len(k.At))
	for i := range n.Obs {
		tied[n.Obs[i].Marks[0]], tied[n.Obs[i].Marks[1]] = true, true
	}
	for m, ok := range tied {
		if !ok {
			x.SetPoint(m, plane.Point{X: math.NaN(), Y: math.NaN()})
		}
	}
	return n, x
}

func exactTie(n *network.Network, reading int, t [2]int, at []plane.Point, sd float64) network.Obs {
	o := network.Obs{Kind: network.Tie{}, Reading: reading, Marks: []int{t[0], t[1]}, Setup: -1, Scale: 1, Free: -1, Use: true,
		Values: []float64{at[t[0]].Dist(at[t[1]])}, SD: []float64{sd}}
	o.Blocks = o.Kind.Touches(&o)
	for _, b := range o.Blocks {
		o.At = append(o.At, n.Offset[b])
		o.Size += n.Dim(b)
	}
	return o
}

func (k Sketch) ties() [][2]int {
	if k.Ties != nil {
		return k.Ties
	}
	var out [][2]int
	for i, a := range k.Pegs {
		for _, b := range k.Pegs[i+1:] {
			out = append(out, [2]int{a, b})
		}
	}
	for _, m := range k.Outline {
		for _, a := range k.Pegs[:2] {
			if a != m {
				out = append(out, [2]int{a, m})
			}
		}
	}
	return out
}

// taken are the ties that will be read anyway and those that were read, each pair at least once and
// as often as it was read.
func (k Sketch) taken() [][2]int {
	out := slices.Clone(k.Read)
	for _, t := range k.ties() {
		if !slices.Contains(k.Read, t) && !slices.Contains(k.Read, [2]int{t[1], t[0]}) {
			out = append(out, t)
		}
	}
	return out
}

// normals of the outline where no line is fitted yet: across the chord from the mark before to
// the mark after.
func (k Sketch) normals(s *adjust.Solution) []plane.Point {
	n := len(k.Outline)
	out := make([]plane.Point, n)
	for i := range k.Outline {
		before, after := s.X.Point(k.Outline[(i+n-1)%n]), s.X.Point(k.Outline[(i+1)%n])
		out[i] = after.Sub(before).Unit().Left()
	}
	return out
}

func (k Sketch) listed(s *adjust.Solution) []mistake.Hypothesis {
	slips := k.Slips
	if slips == nil {
		slips = Slips
	}
	total := 0.0
	for _, l := range slips {
		total += l.Odds
	}
	var out []mistake.Hypothesis
	for p := range s.First[len(s.In)] {
		for _, l := range slips {
			for _, e := range []float64{l.Size, -l.Size} {
				out = append(out, mistake.Hypothesis{Code: l.Code, Parts: []int{p}, Size: []float64{e}, LnPrior: math.Log(l.Odds / 2 / (1 - total))})
			}
		}
	}
	return out
}
