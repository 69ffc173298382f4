package survey

import (
	"math"

	"brimline/basin"
	"brimline/fieldbook"
	"brimline/plane"
)

// RuleLine is one figure of the rule set that the book chose, beside what was measured. Lengths in
// metres, slopes rise over level length. Verdict: meets the geometric figure as measured, undecided, or
// beyond the figure as measured, each at 95 %.
type RuleLine struct {
	What    string   `json:"what"` // a code of fieldbook.DepthRules
	Clause  string   `json:"clause"`
	Least   bool     `json:"least"` // the figure is to be reached, else not to be passed
	Figure  float64  `json:"figure"`
	Value   *float64 `json:"value"` // null where the book does not tell it
	SD      *float64 `json:"sd"`
	At      *Spot    `json:"at"`
	Verdict string   `json:"verdict"` // "" where there is no value
	Source  string   `json:"source"`
}

// shallowWater is the depth up to which a floor counts as shallow: five feet, as the rule sets of package
// basin have it.
const shallowWater = 5 * 0.3048

// compare sets the basin beside the rule set that the book names.
func (y *body) compare(b *basin.Basin, level basin.Height, out *Water) {
	set, ok := y.g.book.DepthRule()
	if !ok {
		return
	}
	out.RuleSet, out.Edition, out.Caution = set.Name, set.Edition, basin.Caution
	for _, l := range set.Limits {
		line := RuleLine{What: l.What, Clause: l.Clause, Least: l.Least, Figure: l.Figure, Source: l.Source}
		if l.What == fieldbook.FirstChange {
			y.firstChange(b, l, &line)
		} else if c, ok := ruled(b, level, l); ok {
			line.Value, line.SD, line.Verdict = some(c.Value), some(c.SD), string(c.Verdict)
			at := spotAt(c.Where.Name, c.Where.At)
			line.At = &at
		}
		out.Rules = append(out.Rules, line)
	}
}

// ruled compares by the means of the basin.
func ruled(b *basin.Basin, level basin.Height, l fieldbook.DepthLimit) (basin.Compared, bool) {
	r := basin.Rule{Clause: l.Clause, Limit: l.Figure, Source: l.Source}
	switch l.What {
	case fieldbook.ShallowSlope:
		r.Figure, r.Deep = basin.SlopeMost, shallowWater
	case fieldbook.DeepSlope:
		r.Figure, r.Shallow = basin.SlopeMost, shallowWater
	default:
		r.Figure = basin.DepthLeast
	}
	list := b.Compare(level, basin.RuleSet{Rules: []basin.Rule{r}})
	if len(list) == 0 {
		return basin.Compared{}, false
	}
	return list[0], true
}

// firstChange measures from the wall at the shallow end to the first slope break, along the axis from the
// shallow to the deep end. Its standard deviation is that of the place of the marks of the break.
func (y *body) firstChange(b *basin.Basin, l fieldbook.DepthLimit, line *RuleLine) {
	from, to := b.Axis()
	way := to.Sub(from).Unit()
	axis := plane.Segment{A: from.Sub(way.Mul(y.path.Bounds().Diagonal())), B: to}
	wall := math.Inf(1)
	for _, s := range y.path.Segs {
		for _, q := range axis.Meet(s) {
			wall = math.Min(wall, q.Sub(from).Dot(way))
		}
	}
	best, sd := math.Inf(1), 0.0
	var at Spot
	for _, list := range y.spec.Breaks {
		for k := 1; k < len(list); k++ {
			p, q := y.breakPoint(list[k-1]), y.breakPoint(list[k])
			for _, m := range (plane.Segment{A: p.At, B: q.At}).Meet(axis) {
				if d := m.Sub(from).Dot(way) - wall; d > 0 && d < best {
					best, sd, at = d, math.Max(p.Place, q.Place), spotAt("", m)
				}
			}
		}
	}
	if math.IsInf(best, 1) {
		return
	}
	line.Value, line.SD, line.At = some(best), some(sd), &at
	switch by := best - l.Figure; {
	case by >= normal95*sd:
		line.Verdict = string(basin.Meets)
	case by <= -normal95*sd:
		line.Verdict = string(basin.Beyond)
	default:
		line.Verdict = string(basin.Undecided)
	}
}

// breakPoint is a point that breaks name.
func (y *body) breakPoint(i int) basin.Sounding {
	if i < len(y.spec.Floor) {
		return y.spec.Floor[i]
	}
	w := y.spec.Walls[i-len(y.spec.Floor)]
	p, _ := y.at(w.Name)
	return basin.Sounding{At: p}
}
