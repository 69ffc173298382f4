package advise

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/mistake"
)

// doubt is a suspect reading, or one member of a doubtful group, that the solution treats in one
// way and that might have to be treated in the other.
type doubt struct {
	group  int       // 0: a suspect reading
	obs    []int     // the reading, or all readings of the group
	read   int       // the reading itself
	again  bool      // it is suspect and was read again, and what was read then takes part
	chance float64   // that the other way is right
	move   []float64 // of all marks then; nil where it has no bound
	figure []float64 // by probe: what it does to the figure; infinite where nothing else holds it
}

func (d *doubt) code() string {
	if d.group == 0 {
		return "suspect"
	}
	return "doubtful"
}

// suspectChance is the chance that a suspect reading is right after all: a reading is suspect
// from a posterior of 0.95 on.
const suspectChance = 0.05

// doubts works out what the inclusion of each suspect reading would move, and for each doubtful
// group what would move were another of its members the wrong one.
func (g *ground) doubts(odd Odd) []doubt {
	var out []doubt
	for _, i := range odd.Suspect {
		d := doubt{obs: []int{i}, read: i, chance: suspectChance, again: g.readAgain(i)}
		b := g.bench(i)
		switch {
		case b.putIn(i):
			d.move = b.marks()
			d.figure = g.figures(d.move)
		case g.s.In[i]: // it takes part with a value that nobody read
			d.figure = g.unheld(b, i)
		default:
			continue
		}
		out = append(out, d)
	}
	for _, group := range odd.Doubtful {
		out = append(out, g.alternatives(group)...)
	}
	return out
}

// readAgain says that another reading of the same marks takes part.
func (g *ground) readAgain(i int) bool {
	one := &g.s.Net.Obs[i]
	for k := range g.s.Net.Obs {
		o := &g.s.Net.Obs[k]
		if k == i || o.Kind.Name() != one.Kind.Name() || len(o.Marks) != len(one.Marks) || g.leftOut(k) {
			continue
		}
		if slices.Equal(o.Marks, one.Marks) || len(o.Marks) == 2 && ordered(o.Marks[0], o.Marks[1]) == ordered(one.Marks[0], one.Marks[1]) {
			return true
		}
	}
	return false
}

func (g *ground) figures(move []float64) []float64 {
	out := make([]float64, len(g.probes))
	g.moved(move, out)
	return out
}

// unheld is infinite for the figures that stand or fall with a reading.
func (g *ground) unheld(b *bench, i int) []float64 {
	out := make([]float64, len(g.probes))
	for k := range g.s.Net.Obs[i].SD {
		for t, f := range g.figures(b.unit(i, k)) {
			if math.Abs(f) > adjust.Influence {
				out[t] = math.Inf(1)
			}
		}
	}
	return out
}

// alternatives are the members of a group that take part now: for each the reading left out that
// fits best is put back, and the member is left out instead.
func (g *ground) alternatives(group mistake.Group) []doubt {
	var out []doubt
	for k, j := range group.Obs {
		if g.leftOut(j) { // as it stands
			continue
		}
		d := doubt{group: group.Number, obs: group.Obs, read: j, chance: group.Chance[k]}
		least := math.Inf(1)
		for _, i := range group.Obs {
			b := g.bench(i, j)
			if !b.putIn(i) {
				continue
			}
			if !b.takeOut(j) {
				if d.figure == nil {
					d.figure = g.unheld(b, j)
				}
				continue
			}
			if b.cost < least {
				least, d.move = b.cost, b.marks()
				d.figure = g.figures(d.move)
			}
		}
		if d.figure != nil {
			out = append(out, d)
		}
	}
	return out
}

func (g *ground) leftOut(i int) bool {
	if !g.s.In[i] {
		return true
	}
	for p := g.s.First[i]; p < g.s.First[i+1]; p++ {
		if g.s.Out[p] {
			return true
		}
	}
	return false
}

// worstDoubt is the doubt that moves the figure most, and by how much of its tolerance.
func worstDoubt(doubts []doubt, probe int, tolerance float64) (*doubt, float64) {
	var worst *doubt
	far := 0.0
	for k := range doubts {
		if f := math.Abs(doubts[k].figure[probe]) / tolerance; f > far {
			worst, far = &doubts[k], f
		}
	}
	return worst, far
}
