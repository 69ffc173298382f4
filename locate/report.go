package locate

import (
	"math"
	"sort"
	"strings"

	"brimline/finding"
	"brimline/network"
	"brimline/plane"
)

// report re-asks every choice now that all marks are placed, and says what stays open.
func (g *growth) report() Start {
	s := Start{Other: make([][]plane.Point, len(g.pos))}
	var open []group
	for _, gr := range g.kept {
		lead := g.lead(gr)
		if lead < -certainBy {
			g.swap(gr)
		}
		if math.Abs(lead) > certainBy {
			continue // a reading decided it after all
		}
		open = append(open, gr)
		for _, m := range gr.marks {
			s.Other[m] = g.other[m]
		}
	}
	g.settle(6)
	s.X = g.state()
	s.Findings = append(s.Findings, g.openSides(open)...)
	s.Findings = append(s.Findings, g.wholeSide(&s)...)
	s.Findings = append(s.Findings, g.unplaced()...)
	return s
}

// lead is how much worse the readings fit with the group in its other places.
func (g *growth) lead(gr group) float64 {
	in := map[int]int{}
	for k, m := range gr.marks {
		in[m] = k
	}
	place := func(m int, swapped bool) plane.Point {
		if _, ok := in[m]; ok && swapped {
			return g.other[m][0]
		}
		return g.pos[m]
	}
	sum := 0.0
	for _, m := range gr.marks {
		for _, i := range g.of[m] {
			o := &g.n.Obs[i]
			if _, ok := o.Kind.(network.Tie); !ok || !o.Use || !g.placed[o.Marks[0]] || !g.placed[o.Marks[1]] {
				continue
			}
			q := o.Marks[0] + o.Marks[1] - m
			if _, both := in[q]; both && q < m {
				continue
			}
			for _, swapped := range []bool{false, true} {
				u := (place(m, swapped).Dist(place(q, swapped)) - length(o)) / widened(o.SD[0])
				e := math.Min(u*u, capAt)
				if swapped {
					sum += e
				} else {
					sum -= e
				}
			}
		}
	}
	return sum
}

func (g *growth) swap(gr group) {
	for _, m := range gr.marks {
		g.pos[m], g.other[m] = g.other[m][0], []plane.Point{g.pos[m]}
	}
}

// openSides says which marks lie where they do by order or custom only.
func (g *growth) openSides(open []group) []finding.Finding {
	var out []finding.Finding
	if len(open) == 0 {
		return nil
	}
	var said, taken []int
	cure := ""
	for _, gr := range open {
		if gr.locked {
			said = append(said, gr.marks...)
		} else {
			taken = append(taken, gr.marks...)
		}
		if q := g.decider(gr.marks[0]); cure == "" && q >= 0 {
			cure = "tape " + g.n.Marks[gr.marks[0]] + " to " + g.n.Marks[q]
		}
	}
	say := func(marks []int, side, why string) {
		if len(marks) == 0 {
			return
		}
		sort.Ints(marks)
		var names []string
		for _, m := range marks {
			names = append(names, g.n.Marks[m])
		}
		out = append(out, finding.Finding{Code: "mirror", Marks: names, Words: map[string]string{"side": side, "why": why, "cure": cure}})
	}
	say(said, "where it was seen", "a side entry says so")
	say(taken, "with the rest of their line", "that line then does not cross itself")
	return out
}

// decider is the placed mark whose distance would tell the two places of m apart best.
func (g *growth) decider(m int) int {
	best, most := -1, 0.0
	for q, ok := range g.placed {
		if !ok || q == m || len(g.other[m]) == 0 || g.chosen[q] {
			continue
		}
		if d := math.Abs(g.pos[q].Dist(g.pos[m]) - g.pos[q].Dist(g.other[m][0])); d > most {
			best, most = q, d
		}
	}
	return best
}

// wholeSide says what the hand of the whole figure rests on, and contradictions of `side`.
func (g *growth) wholeSide(s *Start) []finding.Finding {
	var out []finding.Finding
	for _, w := range g.n.Sides {
		if g.placed[w.Mark] && g.placed[w.A] && g.placed[w.B] && g.leftOf(w.Mark, w.A, w.B) != w.Left {
			out = append(out, finding.Finding{Code: "side-against", Marks: []string{g.n.Marks[w.Mark]},
				Words: map[string]string{"base": g.n.Marks[w.A] + "–" + g.n.Marks[w.B]}})
		}
	}
	a, b := g.n.Base[0], g.n.Base[1]
	if g.pinned || a < 0 || b < 0 || !g.placed[a] || !g.placed[b] {
		return out
	}
	first := g.firstOff(a, b)
	if first < 0 {
		return out
	}
	for m, ok := range g.placed {
		if ok && m != a && m != b && len(s.Other[m]) == 0 {
			s.Other[m] = []plane.Point{reflect(g.pos[m], g.pos[a], g.pos[b])}
		}
	}
	code := "mirror-all"
	if g.votes() > 0 {
		code = "mirror-said"
	}
	return append(out, finding.Finding{Code: code, Marks: []string{g.n.Marks[first]},
		Words: map[string]string{"base": g.n.Marks[a] + "–" + g.n.Marks[b], "mark": g.n.Marks[first]}})
}

// unplaced names what the readings do not fix, with a reading that would.
func (g *growth) unplaced() []finding.Finding {
	var out []finding.Finding
	var names []string
	cure := ""
	for m, ok := range g.placed {
		if ok || len(g.of[m]) == 0 {
			continue
		}
		if i, j, gap, missed := g.apart(m); missed {
			out = append(out, finding.Finding{Code: "cannot-meet", Marks: []string{g.n.Marks[m]}, Figures: map[string]float64{"gap": gap},
				Words: map[string]string{"first": g.tieName(i), "second": g.tieName(j)}})
			continue
		}
		names = append(names, g.n.Marks[m])
		if cure == "" {
			cure = g.cure(m)
		}
	}
	if len(names) > 0 {
		out = append(out, finding.Finding{Code: "unfixed", Marks: names, Words: map[string]string{"cure": cure}})
	}
	for i, p := range g.pose {
		if p == nil {
			out = append(out, finding.Finding{Code: "setup-open", Words: map[string]string{"setup": g.n.Setups[i]}})
		}
	}
	return out
}

// cure proposes ties from an unfixed mark to placed pegs that it has none to yet, two in all.
func (g *growth) cure(m int) string {
	has := map[int]bool{}
	fixed := 0
	for _, i := range g.of[m] {
		for _, q := range g.n.Obs[i].Marks {
			if q != m && g.placed[q] && !has[q] {
				has[q] = true
				fixed++
			}
		}
	}
	var to []string
	for pass := range 2 {
		for q, ok := range g.placed {
			if ok && !has[q] && (g.n.Pegs[q] || pass == 1) && fixed+len(to) < 2 {
				has[q] = true
				to = append(to, g.n.Marks[q])
			}
		}
	}
	if len(to) == 0 {
		return "tape from " + g.n.Marks[m] + " to another fixed mark"
	}
	return "tape from " + g.n.Marks[m] + " to " + strings.Join(to, " and to ")
}

func (g *growth) tieName(i int) string {
	o := &g.n.Obs[i]
	return g.n.Marks[o.Marks[0]] + "–" + g.n.Marks[o.Marks[1]]
}
