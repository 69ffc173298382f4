package survey

import (
	"math"
	"slices"

	"brimline/advise"
	"brimline/finding"
)

// unusable is what forbids the use of figures: why, in words, whether every standard deviation is
// meant, else the marks that nothing holds one way and the lines that cross themselves.
type unusable struct {
	why      []string
	all      bool
	unheld   []int
	crossing []string
}

// forbids gathers the findings that stop, and the marks of lines that nothing holds one way.
func (g *gather) forbids() unusable {
	var u unusable
	for _, f := range g.found {
		if f.Severity() != finding.Stop {
			continue
		}
		u.why = append(u.why, f.Text(g.show()))
		if f.Code == "crossing" {
			u.crossing = append(u.crossing, f.Lines...)
		} else {
			u.all = true
		}
	}
	if !g.solved() {
		return u
	}
	var names []string
	for _, l := range g.sol.Loose {
		if !math.IsInf(l.Move, 1) {
			continue
		}
		u.unheld = append(u.unheld, l.Mark)
		if g.onLine(l.Mark) {
			names = append(names, g.net.Marks[l.Mark])
		}
	}
	if len(names) > 0 {
		u.why = append(u.why, "the readings leave "+finding.List(names)+" free to move one way")
	}
	return u
}

// touches says that the standard deviations of a line mean nothing.
func (u unusable) touches(marks []int) bool {
	return u.all || slices.ContainsFunc(marks, func(m int) bool { return slices.Contains(u.unheld, m) })
}

// blank takes the figures out of the result that must not be used: of a solution that did not
// settle, or that has no size, every standard deviation; those of a mark that nothing holds one way
// and of the lines through it; the area of a line that crosses itself.
func (g *gather) blank(r *Result, u unusable) {
	for i, name := range g.net.Marks {
		if m := r.Marks[name]; u.touches([]int{i}) && m != nil {
			m.SX, m.SY, m.Ellipse95, m.Hidden, m.Controlled = nil, nil, nil, nil, false
		}
	}
	for _, l := range g.lines {
		for _, b := range g.book.Lines {
			if root, ok := g.book.Parent(b.Name); b.Name != l.Name && (!ok || root.Root.Name != l.Name) {
				continue
			}
			g.blankLine(r.Lines[b.Name], u.touches(l.Marks), slices.Contains(u.crossing, l.Name))
		}
	}
}

func (g *gather) blankLine(out *Line, trust, area bool) {
	if out == nil {
		return
	}
	if area {
		out.Area, out.AreaSD = nil, nil
	}
	if !trust {
		return
	}
	out.LengthSD, out.AreaSD = nil, nil
	for i := range out.Runs {
		x := &out.Runs[i]
		x.BearingSD, x.RadiusSD, x.SweepSD, x.SagittaSD = nil, nil, nil, nil
	}
}

// condemn makes the shape unfit where figures must not be used, and says why before anything else.
// Tests, worst place and weakest places of such a solution say nothing.
func (s *Shape) condemn(u unusable) {
	if len(u.why) == 0 {
		return
	}
	s.State = advise.Unfit
	if !u.all && len(u.why) == len(u.crossing) {
		s.Why = append(u.why, s.Why...)
		return
	}
	s.Why, s.Worst, s.At, s.Weakest = u.why, nil, "", []Weak{}
	for i := range s.Tests {
		t := &s.Tests[i]
		t.U95, t.Unseen, t.State, t.Why = nil, nil, advise.Unfit, ""
	}
}
