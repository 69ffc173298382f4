package basin

import (
	"fmt"
	"math"
)

// check refuses what cannot be built.
func (b *Basin) check(spec *Spec) error {
	if err := spec.Rim.Validate(); err != nil {
		return fmt.Errorf("rim: %w", err)
	}
	if !spec.Rim.Closed || spec.Rim.Area() == 0 {
		return fmt.Errorf("rim: it is no ring")
	}
	b.rows = int(math.Round(math.Sqrt(float64(len(spec.Cov)))))
	if b.rows*b.rows != len(spec.Cov) {
		return fmt.Errorf("a covariance of %d numbers is not square", len(spec.Cov))
	}
	for k, line := range spec.polylines() {
		for _, i := range line {
			if i < 0 || i >= len(spec.Floor)+len(spec.Walls) {
				return fmt.Errorf("break %d names point %d of %d", k, i, len(spec.Floor)+len(spec.Walls))
			}
		}
	}
	for _, h := range spec.heights() {
		if h.Index >= b.rows || math.IsNaN(h.Z-h.Z) {
			return fmt.Errorf("height %v with row %d of a covariance of %d rows", h.Z, h.Index, b.rows)
		}
	}
	return nil
}

// heights are all that the spec holds.
func (s *Spec) heights() []Height {
	var out []Height
	levels := func(list []Level) {
		for _, l := range list {
			out = append(out, l.Height)
		}
	}
	levels(s.Levels)
	for _, p := range s.Floor {
		out = append(out, p.Height)
	}
	for _, w := range s.Walls {
		out = append(out, w.Height)
	}
	for _, x := range s.Steps {
		for _, t := range x.Treads {
			out = append(out, t.Height)
		}
	}
	for _, l := range s.Ledges {
		out = append(out, l.Height)
	}
	for _, r := range s.Raised {
		levels(r.Top)
	}
	for _, r := range s.Spills {
		levels(r.Lip)
	}
	for _, w := range s.Waters {
		out = append(out, w.Height)
	}
	return out
}
