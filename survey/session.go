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

// memory is the last state by name.
type memory struct {
	marks  map[string]plane.Point
	setups map[string][]float64
}

func remember(n *network.Network, s *adjust.Solution) *memory {
	m := &memory{marks: map[string]plane.Point{}, setups: map[string][]float64{}}
	for i, name := range n.Marks {
		if p := s.X.Point(i); !math.IsNaN(p.X) {
			m.marks[name] = p
		}
	}
	for i, name := range n.Setups {
		b := n.SetupBlock(i)
		if n.Placed(s.X, b) {
			m.setups[name] = append([]float64(nil), s.X[n.Offset[b]:n.Offset[b+1]]...)
		}
	}
	return m
}

// near is how far a remembered place may lie from the located one to be the same (metres). Two
// places that the readings allow can be closer than a foot; a mark further off begins cold.
const near = 0.05

// apply puts remembered places into a located start where both mean the same figure: the
// remembered marks are laid on the located ones, and any that lie elsewhere are not used.
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
		p, ok := m.marks[name]
		if q := located.Point(i); ok && r.Apply(p).Dist(q) < near {
			x.SetPoint(i, r.Apply(p))
		}
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
