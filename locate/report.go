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
		t := g.turned(gr)
		lead := g.lead(t)
		if w, ok := g.withCarried(gr, t); ok {
			if l := g.lead(w); l < lead {
				t, lead = w, l
			}
		}
		if lead < -certainBy {
			g.swap(t)
		}
		if math.Abs(lead) > certainBy {
			continue // a reading decided it after all
		}
		gr.marks = t.marks
		open = append(open, gr)
		for k, m := range t.marks {
			s.Other[m] = []plane.Point{t.other[k]}
		}
	}
	g.settle(6)
	s.X = g.state()
	s.Findings = append(s.Findings, g.openSides(open, s.Other)...)
	s.Findings = append(s.Findings, g.wholeSide(&s)...)
	s.Findings = append(s.Findings, g.unplaced()...)
	return s
}

// turned is a set of marks with their places on the other hand.
type turned struct {
	marks []int
	other []plane.Point
}

func (g *growth) turned(gr group) turned {
	t := turned{marks: append([]int(nil), gr.marks...)}
	for _, m := range gr.marks {
		t.other = append(t.other, g.other[m][0])
	}
	return t
}

// withCarried adds the marks that were placed from a chosen mark: they turn over with it about
// the same two marks, like leaves on a hinge. False when there are none, or no one hinge.
func (g *growth) withCarried(gr group, t turned) (turned, bool) {
	hinge := g.mirror[gr.marks[0]]
	if hinge[0] < 0 {
		return t, false
	}
	in := make([]bool, len(g.pos))
	for _, m := range gr.marks {
		if o := g.mirror[m]; o != hinge && o != [2]int{hinge[1], hinge[0]} {
			return t, false
		}
		in[m] = true
	}
	w := turned{marks: append([]int(nil), t.marks...), other: append([]plane.Point(nil), t.other...)}
	for _, m := range g.order {
		f := g.from[m]
		if in[m] || f[0] < 0 || !in[f[0]] && !in[f[1]] || m == hinge[0] || m == hinge[1] {
			continue
		}
		in[m] = true
		w.marks = append(w.marks, m)
		w.other = append(w.other, reflect(g.pos[m], g.pos[hinge[0]], g.pos[hinge[1]]))
	}
	return w, len(w.marks) > len(t.marks)
}

// lead is how much worse the readings fit with the set on its other hand; infinite where an offset
// or an instrument point of it knows left from right.
func (g *growth) lead(t turned) float64 {
	at := map[int]int{}
	for k, m := range t.marks {
		at[m] = k
	}
	here := func(m int) plane.Point { return g.pos[m] }
	there := func(m int) plane.Point {
		if k, ok := at[m]; ok {
			return t.other[k]
		}
		return g.pos[m]
	}
	known := func(m int) bool { return g.placed[m] }
	sum := 0.0
	for _, m := range t.marks {
		for _, i := range g.of[m] {
			o := &g.n.Obs[i]
			if !o.Use || g.earlier(o, m, at) {
				continue
			}
			switch o.Kind.(type) {
			case network.Offset, network.Seen:
				if g.knowsHand(o) {
					return math.Inf(1)
				}
			}
			now, then := g.off(o, known, here), g.off(o, known, there)
			sum += math.Min(then*then, capAt) - math.Min(now*now, capAt)
		}
	}
	return sum
}

// earlier says that a reading was met already at a mark of the set numbered below m.
func (g *growth) earlier(o *network.Obs, m int, at map[int]int) bool {
	for _, q := range o.Marks {
		if _, both := at[q]; both && q < m {
			return true
		}
	}
	return false
}

// knowsHand says whether an offset or an instrument point is tied into the figure.
func (g *growth) knowsHand(o *network.Obs) bool {
	if _, ok := o.Kind.(network.Seen); ok {
		return g.pose[o.Setup-len(g.n.Marks)] != nil
	}
	for _, m := range o.Marks {
		if !g.placed[m] {
			return false
		}
	}
	return true
}

func (g *growth) swap(t turned) {
	for k, m := range t.marks {
		g.pos[m], t.other[k] = t.other[k], g.pos[m]
	}
}

// eachItsOwn ends the cure where several sets of marks are open.
const eachItsOwn = "; each of the others needs a tape of its own, or a side entry"

// openSides says which marks lie where they do by order or custom only.
func (g *growth) openSides(open []group, other [][]plane.Point) []finding.Finding {
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
		if cure != "" && !strings.HasSuffix(cure, eachItsOwn) {
			cure += eachItsOwn
		}
		if q := g.decider(gr.marks[0], other); cure == "" && q >= 0 && g.n.Taped(gr.marks[0]) {
			cure = "tape " + g.n.Marks[gr.marks[0]] + " to " + g.n.Marks[q]
		}
	}
	say := func(marks []int, side, why string) {
		if len(marks) == 0 {
			return
		}
		sort.Ints(marks)
		var names []string
		for i, m := range marks {
			if i == 0 || m != marks[i-1] {
				names = append(names, g.n.Marks[m])
			}
		}
		out = append(out, finding.Finding{Code: "mirror", Marks: names, Words: map[string]string{"side": side, "why": why, "cure": cure}})
	}
	say(said, "where it was seen", "a side entry says so")
	var along, rest []int
	for _, m := range taken {
		if g.onLine(m) {
			along = append(along, m)
		} else {
			rest = append(rest, m)
		}
	}
	say(along, "with the rest of their line", "that line then does not cross itself")
	say(rest, "with the rest of the figure", "nothing says otherwise")
	return out
}

// decider is the placed mark, not open itself, whose distance would tell the two places of m
// apart best.
func (g *growth) decider(m int, other [][]plane.Point) int {
	best, most := -1, 0.0
	for q, ok := range g.placed {
		if !ok || q == m || len(other[m]) == 0 || len(other[q]) > 0 || !g.n.Taped(q) {
			continue
		}
		if d := math.Abs(g.pos[q].Dist(g.pos[m]) - g.pos[q].Dist(other[m][0])); d > most {
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
	code, mark, base := "mirror-all", first, g.pair(a, b)
	if w, ok := g.saidWell(); ok {
		code, mark, base = "mirror-said", w.Mark, g.pair(w.A, w.B)
	}
	return append(out, finding.Finding{Code: code, Marks: []string{g.n.Marks[mark]},
		Words: map[string]string{"base": base, "mark": g.n.Marks[mark]}})
}

func (g *growth) pair(a, b int) string { return g.n.Marks[a] + "–" + g.n.Marks[b] }

// saidWell is the first side entry that the places satisfy, when more are satisfied than not.
func (g *growth) saidWell() (network.Side, bool) {
	if g.votes() <= 0 {
		return network.Side{}, false
	}
	for _, s := range g.n.Sides {
		if g.placed[s.Mark] && g.placed[s.A] && g.placed[s.B] && g.leftOf(s.Mark, s.A, s.B) == s.Left {
			return s, true
		}
	}
	return network.Side{}, false
}

// unplaced names what the readings do not fix, with a reading that would.
func (g *growth) unplaced() []finding.Finding {
	var out []finding.Finding
	var names []string
	cure := ""
	for _, b := range g.bridged {
		_, _, gap, _ := g.apart(b.mark)
		out = append(out, finding.Finding{Code: "cannot-meet", Marks: []string{g.n.Marks[b.mark]}, Figures: map[string]float64{"gap": gap},
			Words: map[string]string{"first": g.tieName(b.first), "second": g.tieName(b.second)}})
	}
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
		if cure == "" && g.n.Taped(m) {
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

// cure proposes ties from an unfixed mark to placed pegs that it has none to yet, two in all; never
// to where a peg was before it was moved.
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
			if ok && !has[q] && g.n.Taped(q) && (g.n.Pegs[q] || pass == 1) && fixed+len(to) < 2 {
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
