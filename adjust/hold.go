package adjust

import (
	"context"
	"math"

	"brimline/finding"
	"brimline/network"
)

// Largest standard deviations with which a solved zero, scale or collimation still says something:
// common practice, no source.
const (
	zeroFrom        = 0.05 // metres
	scaleFrom       = 0.02
	collimationFrom = 0.001 // radians
)

// holdTools holds the zero or scale of a tool, or the collimation of a level, at no error where the
// readings cannot tell it from the shape, scale before zero, and adjusts again.
func (s *Solution) holdTools(ctx context.Context, most int) {
	n := s.Net
	for i := range n.Free {
		f := &n.Free[i]
		b := int(n.FreeBlock(i))
		if f.Kind != "tool" && f.Kind != "collimation" || !n.Placed(s.X, network.Unknown(b)) {
			continue
		}
		for c := f.Size - 1; c >= 0; c-- {
			isScale := c == f.Size-1 && f.Scale
			limit := zeroFrom
			if f.Kind == "collimation" {
				limit = collimationFrom
			} else if isScale {
				limit = scaleFrom
			}
			if !s.sys.weak[b] && s.BlockSD(b, c) <= limit {
				continue
			}
			at := n.Offset[b] + c
			s.X[at] = 0
			if isScale {
				s.X[at] = 1
			}
			s.sys.held = append(s.sys.held, [2]int{b, c})
			s.Held = append(s.Held, i)
			s.Converged = s.iterate(ctx, nil, most)
			s.finish()
		}
	}
}

// heldFindings names the tools whose unknowns are held.
func (s *Solution) heldFindings() []finding.Finding {
	var out []finding.Finding
	done := map[int]bool{}
	for _, i := range s.Held {
		if !done[i] {
			done[i] = true
			if s.Net.Free[i].Kind == "collimation" {
				out = append(out, finding.Finding{Code: "collimation-held"})
				continue
			}
			out = append(out, finding.Finding{Code: "tool-held", Words: map[string]string{"tool": s.Net.Free[i].Name}})
		}
	}
	return out
}

// dropComputed leaves out the corrections that nobody read again, as long as other readings hold
// what they hold: a correction worked out from the others proves nothing. One at a time, the one
// that the others prove best first.
func (s *Solution) dropComputed(ctx context.Context, most int) {
	for ctx.Err() == nil {
		best, worst := -1, LeastRed
		for i := range s.Net.Obs {
			if !s.In[i] || !s.Net.Obs[i].Computed {
				continue
			}
			for p := s.First[i]; p < s.First[i+1]; p++ {
				if !s.Out[p] && !math.IsNaN(s.Redund[p]) && s.Redund[p] >= worst {
					best, worst = p, s.Redund[p]
				}
			}
		}
		if best < 0 {
			return
		}
		s.Out[best] = true
		s.Converged = s.iterate(ctx, nil, most)
		s.finish()
	}
}
