package adjust

import (
	"context"
	"slices"

	"brimline/finding"
	"brimline/network"
)

// Change is a variation of a solution.
type Change struct {
	Out    []int         // parts left out besides those that always are
	Parts  []int         // parts that are given other values
	Values []float64     // these
	Held   bool          // the other values take part only where nothing else holds what they hold
	From   network.State // where to begin; nil: at the solution
	Joint  bool          // checks take part as readings do
}

const trySteps = 30

// Try adjusts a variation without saying how sure it is: its weighted sum of squares and its
// state.
func (s *Solution) Try(ctx context.Context, c Change) (cost float64, x network.State, settled bool) {
	t := s.vary(c, true)
	settled = t.iterate(ctx, nil, trySteps)
	return t.cost(t.X), t.X, settled
}

// Again adjusts a variation in full; nil when the context ends.
func (s *Solution) Again(ctx context.Context, c Change) *Solution {
	t := s.vary(c, false)
	t.Converged = t.iterate(ctx, nil, 2*trySteps)
	t.finish()
	t.dropComputed(ctx, trySteps)
	if ctx.Err() != nil {
		return nil
	}
	t.reliability()
	return t
}

// AsRead gives the parts of a variation of s that were to have other values and take no part after
// all the values that were read again, so that what the variation says of them is said of what
// stands in the book.
func (s *Solution) AsRead(variation *Solution, parts []int) {
	any := false
	for _, p := range parts {
		if !variation.Out[p] {
			continue
		}
		i, k := s.partAt(p)
		o := &variation.Net.Obs[i]
		o.Values[k], o.Computed = s.Net.Obs[i].Values[k], s.Net.Obs[i].Computed
		any = true
	}
	if any {
		variation.parts()
		variation.reliability()
	}
}

// vary is a solution of its own that begins where the change says; a brief one shares its working space
// with the next.
func (s *Solution) vary(c Change, brief bool) *Solution {
	t := &Solution{Net: s.changed(c, brief), X: slices.Clone(s.X), Robust: s.Robust, Base: s.Base, In: slices.Clone(s.In),
		Out: slices.Clone(s.Out), Agrees: make([]bool, len(s.In)), Held: s.Held, First: s.First}
	if c.From != nil {
		copy(t.X, c.From)
	}
	if c.Joint {
		for i := range t.Net.Obs {
			if t.Net.Obs[i].Check && s.sys.has[i] {
				t.In[i] = true
				for p := s.First[i]; p < s.First[i+1]; p++ {
					t.Out[p] = false
				}
			}
		}
	}
	for _, p := range c.Out {
		t.Out[p] = true
	}
	switch {
	case brief && s.spare != nil:
		t.sys = s.spare
		t.sys.net, t.sys.out = t.Net, t.Out
		clear(t.sys.weak)
		t.sys.held = s.sys.held
	default:
		t.sys = s.sys.another(t.Net, t.Out)
		if brief {
			s.spare = t.sys
		}
	}
	t.count()
	return t
}

// changed is the network with other values; the network itself stays. A brief one is lent: it holds until
// the next.
func (s *Solution) changed(c Change, brief bool) *network.Network {
	if len(c.Parts) == 0 {
		return s.Net
	}
	n := s.lent
	if n == nil || !brief {
		copied := *s.Net
		copied.Obs = slices.Clone(copied.Obs)
		n = &copied
		if brief {
			s.lent = n
		}
	} else {
		for _, i := range s.lentObs {
			n.Obs[i] = s.Net.Obs[i]
		}
	}
	var mine []int
	for k, p := range c.Parts {
		i, at := s.partAt(p)
		o := &n.Obs[i]
		if len(mine) == 0 || mine[len(mine)-1] != i && !slices.Contains(mine, i) {
			o.Values = slices.Clone(s.Net.Obs[i].Values)
			mine = append(mine, i)
		}
		o.Values[at] = c.Values[k]
		o.Computed = o.Computed || c.Held
	}
	if brief {
		s.lentObs = mine
	}
	return n
}

// Findings is what a person should know of the solution as a whole.
func (s *Solution) Findings() []finding.Finding { return s.findings() }
