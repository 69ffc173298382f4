package outline

import (
	"math"

	"brimline/finding"
)

// model is a description of a whole line with its weight among those that explain its marks nearly
// as well.
type model struct {
	spec   Spec
	weight float64
	done   *chain // the line, where it has been scored already
}

// chain is the line of a model, ready to be settled.
func (m model) chain(b *block) (*chain, []finding.Finding) {
	c := newChain(b, m.spec)
	found := c.begin()
	if m.done != nil {
		copy(c.q, m.done.q)
	}
	return c, found
}

// slight is by how much a description scores worse that has a hundredth of the evidence.
const slight = 9.2

// scored is the line of a model, settled well enough for its figures.
func (m model) scored(b *block, edge []float64) *chain {
	if m.done != nil {
		return m.done
	}
	c, _ := m.chain(b)
	c.score(edge)
	return c
}

// resolve puts found runs in the place of every run said to be any. The first model is the best;
// the others differ from it in one such run and have at least a hundredth of its evidence.
func resolve(b *block, l Spec, edge []float64) []model {
	plans, first := make([][]plan, len(l.Runs)), make([]int, len(l.Runs))
	for i, r := range l.Runs {
		if r.Kind == "any" {
			plans[i], first[i] = rank(b, newTrail(b, r, edge), edge)
		}
	}
	with := func(run, other int) Spec {
		out := Spec{Name: l.Name, Edge: l.Edge, Closed: l.Closed}
		for i, r := range l.Runs {
			switch {
			case plans[i] == nil:
				out.Runs = append(out.Runs, r)
			case i == run:
				out.Runs = append(out.Runs, plans[i][other].joined(r)...)
			default:
				out.Runs = append(out.Runs, plans[i][first[i]].joined(r)...)
			}
		}
		return out
	}
	models := []model{{spec: with(-1, 0), weight: 1}}
	alone := len(l.Runs) == 1 && plans[0] != nil && l.Closed == l.Runs[0].ring()
	if alone {
		models[0].done = plans[0][first[0]].done
	}
	for i := range plans {
		for k, p := range plans[i] {
			if worse := p.score - plans[i][first[i]].score; k != first[i] && worse < slight {
				m := model{spec: with(i, k), weight: math.Exp(-worse / 2)}
				if alone {
					m.done = p.done
				}
				models = append(models, m)
			}
		}
	}
	return models
}

// joined gives the runs of a plan the joint that the book states where the stretch begins.
func (p plan) joined(r SpecRun) []SpecRun {
	out := append([]SpecRun(nil), p.runs...)
	if r.Joint != "" && out[0].loose == atMark {
		out[0].Joint = r.Joint
	}
	out[0].play = r.play
	for i := range out {
		out[i].found = true
	}
	return out
}

// rank scores the plans of a trail with the full covariance of its marks and says which is best.
// Plans that stand no chance are left at an infinite score: those whose approximate score is far
// behind, variants of a plan that is not the best, and all further ones once some in a row were
// far behind.
func rank(b *block, t *trail, edge []float64) (plans []plan, first int) {
	const enough = 3
	if len(t.marks) < 2 {
		return []plan{{runs: []SpecRun{{Kind: "curve", Marks: t.marks, Names: t.names}}}}, 0
	}
	plans = t.plans()
	behind := 0
	for i := range plans {
		p := &plans[i]
		limit := plans[first].score + slight
		if i > 0 && (p.about > limit || behind >= enough) || p.rivals > 0 && p.rivals != first {
			p.score = math.Inf(1)
			continue
		}
		p.score = p.price
		if !p.free {
			c := newChain(b, Spec{Closed: t.ring, Runs: p.runs})
			c.begin()
			p.score += c.score(edge)
			p.done = c
		}
		if behind++; p.score < limit {
			behind = 0
		}
		if p.score < plans[first].score-tie {
			first = i
		}
	}
	return plans, first
}
