package outline

import "slices"

// plan is one description of a trail as runs, with its price beside the sum of squares.
type plan struct {
	runs  []SpecRun
	price float64
	about float64 // score by the search
	score float64 // price and sum of squares
	done  *chain  // once it is scored
	// rivals, where positive, is the place of a plan of which this one is a variant.
	rivals int
	free   bool // all one fair curve
}

// fair is the fair curve through all marks.
func (g *graph) fair() plan {
	p := plan{free: true, price: g.c.curve}
	for i, q := range g.piece {
		if q.kind == "curve" {
			p.price += g.cost[i]
		}
	}
	skipped := g.t.longest()
	for _, q := range g.piece {
		if q.kind == "curve" {
			skipped--
		}
	}
	p.price += float64(skipped) * g.c.curveMark // where no joint may be no step was listed
	p.runs = []SpecRun{{Kind: "curve", Marks: g.t.marks, Names: g.t.names}}
	if g.t.ring {
		r := &p.runs[0]
		r.Marks, r.Names = append(slices.Clone(r.Marks), r.Marks[0]), append(slices.Clone(r.Names), r.Names[0])
	}
	return p
}

// circle is the whole ring as one circle.
func (g *graph) circle() (plan, bool) {
	if !g.t.ring || len(g.t.at) < 5 {
		return plan{}, false
	}
	f, _ := fitArc(g.t, 0, len(g.t.at)*3/4)
	for i := range g.t.at {
		d := f.left(g.t.point(i))
		if d*d > 30*(g.t.variance(i, g.t.across(i))+f.spread(f.shifts(g.t.point(i)), f.shifts(g.t.point(i)))) {
			return plan{}, false
		}
	}
	p := g.fair()
	p.free, p.price = false, g.c.arc
	p.runs[0].Kind = "arc"
	return p, true
}

// plan makes runs of a way.
func (g *graph) plan(w way) plan {
	p := plan{about: w.score}
	for k, i := range w.piece {
		q, how := &g.piece[i], w.how[k]
		p.price += g.structure(q, how, w, k)
		if last := len(p.runs) - 1; q.kind == "curve" && last >= 0 && p.runs[last].Kind == "curve" {
			g.extend(&p.runs[last], q)
			continue
		}
		if how.kind == "fillet" {
			p.runs = append(p.runs, g.filled(g.before(w, k), q))
			how.kind = "tangent"
		}
		r := SpecRun{Kind: q.kind, Joint: how.kind, loose: how.loose, Marks: nil}
		for m := q.from; m <= q.to; m++ {
			r.Marks, r.Names = append(r.Marks, g.t.marks[g.t.index(m)]), append(r.Names, g.t.names[g.t.index(m)])
		}
		p.runs = append(p.runs, r)
	}
	p.runs = g.turnedTo(p.runs)
	p.free = len(p.runs) == 1 && p.runs[0].Kind == "curve"
	return p
}

func (g *graph) extend(r *SpecRun, q *primitive) {
	m := g.t.index(q.to)
	r.Marks, r.Names = append(r.Marks, g.t.marks[m]), append(r.Names, g.t.names[m])
}

// before is the piece before the k-th of a way, round a ring the last before the first.
func (g *graph) before(w way, k int) *primitive {
	return &g.piece[w.piece[(k+len(w.piece)-1)%len(w.piece)]]
}

// structure is the price of a piece and of the joint before it, without what the marks' noise
// needs.
func (g *graph) structure(q *primitive, how joint, w way, k int) float64 {
	v := g.price(q) - q.chi
	before := g.before(w, k)
	if k == 0 && !g.t.ring {
		return v + g.startCurve(w.piece[0])
	}
	if q.kind == "curve" && before.kind != "curve" {
		v += g.c.curve
	}
	switch {
	case q.kind == "curve" && before.kind == "curve":
		return v
	case how.kind == "fillet":
		return v + g.c.fillet
	case how.kind == "tangent":
		return v + g.c.tangent
	case how.loose == between:
		return v + g.c.open
	}
	return v + g.c.bent(before, q)
}

// turnedTo lets the runs of a ring begin with the one whose start is first in the order of the
// marks; two parts of one curve that met there are joined.
func (g *graph) turnedTo(runs []SpecRun) []SpecRun {
	n := len(runs)
	if !g.t.ring || n < 2 {
		return runs
	}
	if runs[0].Kind == "curve" && runs[n-1].Kind == "curve" && runs[0].loose == atMark {
		last := &runs[n-1]
		last.Marks, last.Names = append(last.Marks, runs[0].Marks[1:]...), append(last.Names, runs[0].Names[1:]...)
		runs = runs[1:]
	}
	place := map[int]int{}
	for i, m := range g.t.marks {
		place[m] = i
	}
	first := 0
	for i := range runs {
		if place[runs[i].Marks[0]] < place[runs[first].Marks[0]] {
			first = i
		}
	}
	return append(slices.Clone(runs[first:]), runs[:first]...)
}
