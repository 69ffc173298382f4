package survey

import (
	"context"
	"math"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/network"
	"brimline/plane"
)

// Session keeps a growing log and the last coordinates, so that the next answer begins from
// them. A warm answer equals a cold one: every choice (which marks are fixed, which mirror image
// holds) is made afresh; only the start of the adjustment is remembered.
type Session struct {
	Log  fieldbook.Log
	last *memory
}

// Add takes entries into the log and answers for the whole of it. On an error the log keeps the
// entries (facts are never lost), and the next call answers.
func (s *Session) Add(ctx context.Context, e ...fieldbook.Entry) (*Result, error) {
	s.Log, _ = fieldbook.Merge(s.Log, e)
	book, _ := s.Log.Book()
	r, last, err := run(ctx, Input{Book: &book}, s.last, nil)
	if err != nil {
		return nil, err
	}
	s.last = last
	return r, nil
}

// memory is the last state by name, kept only when it was sound.
type memory struct {
	marks  map[string]plane.Point
	setups map[string][]float64
}

// soundWithin is the largest standard semi-axis of a mark in a state worth beginning from
// (metres). A softer mark may have two places near each other, and which of them the adjustment
// reaches depends on where it begins.
const soundWithin = 0.02

// remember keeps a state that settled, passed its test and is firm at every mark; else nil, and
// the next answer begins cold.
func remember(n *network.Network, s *adjust.Solution) *memory {
	if s.Rows == 0 || !s.Converged || s.Redundancy > 0 && s.Cost > s.ChiHigh {
		return nil
	}
	m := &memory{marks: map[string]plane.Point{}, setups: map[string][]float64{}}
	for i, name := range n.Marks {
		p := s.X.Point(i)
		if math.IsNaN(p.X) {
			continue
		}
		c := s.MarkCov(i)
		if major, _, _ := adjust.Axes(c[0], c[1], c[2]); major > soundWithin {
			return nil
		}
		m.marks[name] = p
	}
	for i, name := range n.Setups {
		b := n.SetupBlock(i)
		if n.Placed(s.X, b) {
			m.setups[name] = append([]float64(nil), s.X[n.Offset[b]:n.Offset[b+1]]...)
		}
	}
	return m
}

// near is how far a remembered place may lie from the located one to be the same (metres).
const near = 0.05

// apply puts remembered places into a located start when all marks of the start are remembered
// near where they were located; with a new or a moved mark the answer begins cold.
func (m *memory) apply(n *network.Network, located network.State) network.State {
	if m == nil {
		return located
	}
	var from, to []plane.Point
	for i, name := range n.Marks {
		p, ok := m.marks[name]
		if q := located.Point(i); ok && !math.IsNaN(q.X) {
			from, to = append(from, p), append(to, q)
		}
	}
	r, ok := plane.FitRigid(from, to, nil)
	if !ok {
		return located
	}
	x := append(network.State(nil), located...)
	for i, name := range n.Marks {
		q := located.Point(i)
		if math.IsNaN(q.X) {
			continue
		}
		p, ok := m.marks[name]
		if !ok || r.Apply(p).Dist(q) >= near {
			return located
		}
		x.SetPoint(i, r.Apply(p))
	}
	sameHand(n, located, x)
	for i, name := range n.Setups {
		b := n.SetupBlock(i)
		at := n.Offset[b]
		v, ok := m.setups[name]
		if !ok || len(v) != n.Dim(b) || !n.Placed(located, b) {
			continue
		}
		p := r.Apply(plane.Point{X: v[0], Y: v[1]})
		if p.Dist(plane.Point{X: located[at], Y: located[at+1]}) < near {
			copy(x[at:], v)
			x[at], x[at+1], x[at+2] = p.X, p.Y, v[2]+r.Angle()
		}
	}
	return x
}
