package survey

import (
	"context"
	"math"
	"slices"

	"brimline/advise"
	"brimline/locate"
	"brimline/network"
	"brimline/plane"
)

// options of what may be read next.
func (g *gather) options() advise.Options {
	o := advise.Options{Count: g.count, Alone: g.book.Job.Alone, Definition: g.net.Definition, Factor: g.factor, Hooks: g.hooks()}
	if s := g.usualSigma(); s > 0 {
		o.Sigma = s
	}
	o.Cannot = g.cannots()
	var besides []int // marks on no line wait behind the others
	for m := range g.net.Marks {
		p := g.sol.X.Point(m)
		if math.IsNaN(p.X) {
			if g.onLine(m) {
				o.Waiting = append(o.Waiting, m)
			} else {
				besides = append(besides, m)
			}
			continue
		}
		if len(g.start.Other[m]) > 0 && g.openSide(m) {
			if q, ok := g.inner(g.start.Other[m][0]); ok {
				o.Mirrors = append(o.Mirrors, advise.Mirror{Mark: m, Places: [2]plane.Point{p, q}, Lined: g.onLine(m)})
			}
		}
	}
	o.Waiting = append(o.Waiting, besides...)
	return o
}

// cannots are the pairs of marks between which the book says that no tape can be read.
func (g *gather) cannots() [][2]int {
	var out [][2]int
	for _, c := range g.book.Cannots {
		a, ok1 := g.net.ByName[c.Marks[0]]
		b, ok2 := g.net.ByName[c.Marks[1]]
		if ok1 && ok2 {
			out = append(out, [2]int{a, b})
		}
	}
	return out
}

// openSide says that a mark stands where it does by order or custom only, which a tie could settle.
// No tie tells the whole figure from its mirror image.
func (g *gather) openSide(m int) bool {
	for _, f := range g.start.Findings {
		if f.Code == "mirror" && slices.Contains(f.Marks, g.net.Marks[m]) {
			return true
		}
	}
	return false
}

func (g *gather) onLine(m int) bool {
	for _, p := range g.net.Paths {
		if slices.Contains(p.Marks, m) {
			return true
		}
	}
	return false
}

// usualSigma is the sd of a tape reading without definition, by the tool that taped most.
func (g *gather) usualSigma() float64 {
	best, most := 0.0, 0
	for _, t := range g.book.Tools {
		n := 0
		for _, r := range g.book.Readings {
			if r.Tool == t.Name && r.Kind == "tie" {
				n++
			}
		}
		if n > most && t.Sigma > 0 {
			best, most = t.Sigma, n
		}
	}
	if most == 0 {
		return g.book.Rules.Sigma["tie"]
	}
	return best
}

// hooks are the marks that a tape can hook on: pegs, benchmarks and features.
func (g *gather) hooks() []bool {
	out := append([]bool(nil), g.net.Pegs...)
	for m, name := range g.net.Marks {
		if k := g.book.Mark(name); k.Kind == "feature" || k.Lasting != "" {
			out[m] = true
		}
	}
	return out
}

// Leave answers what it would mean to leave now, order by order.
func Leave(ctx context.Context, in Input) ([]Leaving, error) {
	g, err := prepare(ctx, in)
	if err != nil || !g.solved() {
		return []Leaving{}, err
	}
	g.scaleless()
	u := g.forbids()
	orders := []advise.Order{{Name: shapeName, For: "cut", Share: shapeShare, Unseen: shapeUnseen, Cost: 1, Asks: g.asks()}}
	var out []Leaving
	for _, l := range advise.Leave(g.sol, g.listed(), g.odd(), orders, g.options()) {
		one := Leaving{Order: l.Order, State: l.State, Odds: l.Odds, Ways: []Way{}, Buy: g.proposals(l.Buy), Minutes: l.Minutes, Ready: l.Ready}
		switch waits := g.waiting(orders[0]); {
		case len(u.why) > 0: // whatever the odds, the figures must not be used
			one.State, one.Odds, one.Ready = advise.Unfit, 1, false
			out = append(out, one)
			continue
		case len(waits) > 0:
			one.State, one.Ready = advise.Unproven, false
		}
		for _, w := range l.Ways {
			way := Way{Code: w.Code, At: w.At, Odds: w.Odds, Readings: []string{}}
			for _, i := range w.Obs {
				way.Readings = append(way.Readings, g.n(i))
			}
			if w.Size != 0 {
				way.Size = some(w.Size)
			}
			one.Ways = append(one.Ways, way)
		}
		out = append(out, one)
	}
	return out, nil
}

// Checks is the set of n check tapes worth reading besides the ties from two pegs and besides what
// was taped already: for a book that is only a rough sketch, before a visit. It is empty where they
// would be enough, and nil where too little has a place to plan by.
func Checks(ctx context.Context, in Input, n int) ([]Next, error) {
	g := &gather{ctx: ctx, book: in.Book}
	if in.Book == nil {
		return nil, errNoBook
	}
	g.net, _ = network.Build(in.Book, in.Files)
	g.start = locate.Find(g.net)
	k := advise.Sketch{Names: g.net.Marks, Read: g.taped(g.start.X)}
	for m := range g.net.Marks {
		k.At = append(k.At, g.start.X.Point(m))
		if g.net.Pegs[m] && g.net.Taped(m) {
			k.Pegs = append(k.Pegs, m)
		}
	}
	for _, p := range g.net.Paths {
		if len(p.Marks) > len(k.Outline) {
			k.Outline = p.Marks
		}
	}
	o := advise.Options{Alone: in.Book.Job.Alone, Definition: g.net.Definition, Hooks: g.hooks(), Sigma: g.usualSigma(), Cannot: g.cannots()}
	list := advise.Checks(k, n, o)
	if list == nil {
		return nil, ctx.Err()
	}
	return g.proposals(list), ctx.Err()
}

// taped are the pairs of placed marks that were taped, as often as they were.
func (g *gather) taped(x network.State) [][2]int {
	var out [][2]int
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if o.Use && o.Kind.Name() == (network.Tie{}).Name() && g.net.Ready(x, o) {
			out = append(out, [2]int{o.Marks[0], o.Marks[1]})
		}
	}
	return out
}
