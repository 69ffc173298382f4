package network

import (
	"math"
	"sort"
)

// step says that one height is above another by some metres, as one reading has it.
type step struct {
	from, to int // offsets in the state
	up       float64
	w        float64 // weight: 1/sd
	with     []int   // offsets of what else must be known: marks of a line
}

// beginHeights fills the heights that readings in use join to the one that is held: first one after
// another, then each as most of its readings have it, so that a wrong one sways none.
func (n *Network) beginHeights(x State) {
	datum, ok := n.Datum()
	if !ok {
		return
	}
	x[n.Offset[datum]] = 0
	steps := n.steps()
	at := map[int][]int{} // looked up only: by offset, the steps there
	var order []int
	for grown := true; grown; {
		grown = false
		for _, s := range steps {
			if ok := s.known(x); ok && math.IsNaN(x[s.to]) && !math.IsNaN(x[s.from]) {
				x[s.to], grown, order = x[s.from]+s.up, true, append(order, s.to)
			} else if ok && math.IsNaN(x[s.from]) && !math.IsNaN(x[s.to]) {
				x[s.from], grown, order = x[s.to]-s.up, true, append(order, s.from)
			}
		}
	}
	for k, s := range steps {
		if s.known(x) && !math.IsNaN(x[s.from]) && !math.IsNaN(x[s.to]) {
			at[s.from], at[s.to] = append(at[s.from], k), append(at[s.to], k)
		}
	}
	for range settleHeights {
		for _, b := range order {
			if len(at[b]) > 2 {
				x[b] = middleStep(x, b, steps, at[b])
			}
		}
	}
}

// settleHeights is how often each height is put where most of its readings have it.
const settleHeights = 8

func (s *step) known(x State) bool {
	for _, at := range s.with {
		if math.IsNaN(x[at]) {
			return false
		}
	}
	return true
}

// middleStep is the weighted median of what the steps at a height say of it.
func middleStep(x State, at int, steps []step, mine []int) float64 {
	type said struct{ z, w float64 }
	var all []said
	sum := 0.0
	for _, k := range mine {
		s := steps[k]
		z := x[s.from] + s.up
		if s.from == at {
			z = x[s.to] - s.up
		}
		all, sum = append(all, said{z, s.w}), sum+s.w
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].z < all[b].z })
	run := 0.0
	for _, a := range all {
		if run += a.w; run >= sum/2 {
			return a.z
		}
	}
	return all[len(all)-1].z
}

// steps are the readings in use as differences of two heights.
func (n *Network) steps() []step {
	var out []step
	for i := range n.Obs {
		o := &n.Obs[i]
		if !o.Use || o.Check || !o.Upright {
			continue
		}
		s := step{from: n.Offset[o.Extra[0]], to: n.Offset[o.Extra[1]], up: o.Values[0], w: 1 / o.SD[0]}
		switch o.Kind.(type) {
		case Staff: // the line of sight stands above the mark
			s.from, s.to, s.up = s.to, s.from, s.up-o.Zero
		case Water, SeenHeight:
			s.from, s.to = s.to, s.from
		case Depth:
			for _, b := range o.Extra[2:] {
				s.with = append(s.with, n.Offset[b])
			}
			if o.Foot != nil {
				s.with = append(s.with, 2*o.Foot.Mark)
				for _, m := range o.Foot.Marks {
					s.with = append(s.with, 2*m)
				}
			}
		}
		out = append(out, s)
	}
	return out
}

// climbs tells each tie along the slope about how far apart its ends are in height.
func (n *Network) climbs() {
	x := n.NewState()
	n.beginHeights(x)
	for i := range n.Obs {
		if o := &n.Obs[i]; o.Slope {
			if d := math.Abs(x[o.At[3]] - x[o.At[2]]); !math.IsNaN(d) {
				o.Climb = d
			}
		}
	}
}
