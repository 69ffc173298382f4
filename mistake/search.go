package mistake

import "brimline/network"

// mostGroups is how many group mistakes are looked for in one book.
const mostGroups = 3

// search explains the book by single mistakes alone and then, where several readings misfit, by
// each likely group with the single mistakes that remain, and keeps what explains it best.
func (f *finder) search(x network.State) setting {
	best := f.singly(setting{x: x})
	for range mostGroups {
		if !f.suggested(best, len(groupsOf(best.taken))) {
			break
		}
		now := f.ends(f.withGroup(best, x))
		for _, s := range f.turned(now) {
			if s = f.ends(f.singly(s)); s.score-s.odd > now.score-now.odd {
				now = s
			}
		}
		if now.score == best.score {
			break
		}
		f.weighAgainst(now, best)
		best, x = now, now.x
	}
	return f.coarse(best)
}

// withGroup is the best setting with one group more, or the one given: from where the search began,
// from where it is, and from the pegs.
func (f *finder) withGroup(best setting, x network.State) setting {
	groups := groupsOf(best.taken)
	now := best
	for _, from := range distinct(x, best.x, f.byPegs(x)) {
		sp := f.model(from, groups)
		for _, g := range f.promising(sp, groups) {
			with := append(append([]*hypothesis(nil), groups...), g)
			more := 0.0
			if f.sparse && g.Code != "columns" && g.Code != "water-moved" {
				if g.Code != "slip" || g.Peg < 0 || g.r.to-g.r.from+1 < manyRows {
					continue
				}
				more = plain
			}
			if f.atBest(with, best.taken, g) <= now.score-slack(g) {
				continue
			}
			if s := f.singly(setting{taken: with, x: g.x}); s.score > now.score+more {
				now = s
			}
		}
	}
	return now
}

// slack is by how much the most that a group may score is held too low: single mistakes kept beside
// it can stand in its way, most in a run of rows, each of which they may have explained away.
func slack(g *hypothesis) float64 {
	if g.v != nil || g.Code == "water-moved" {
		return 1000
	}
	return 200
}

// plain is by how much a slipped column must explain such a book better all the same, in log odds.
const plain = 12.0

// manyRows is how many rows such a slip must cover.
const manyRows = 5

// atBest is the most that a setting with group g may score: with the single mistakes found beside it,
// as if it made all of them needless.
func (f *finder) atBest(with, found []*hypothesis, g *hypothesis) float64 {
	in := map[int]bool{}
	for _, p := range g.parts {
		in[p] = true
	}
	spared := 0.0
	for _, h := range found {
		if len(h.why) > 0 && !in[h.parts[0]] {
			with = append(with[:len(with):len(with)], h)
			spared -= h.ln
		}
	}
	return f.assess(setting{taken: with, x: g.x}).score + spared
}

// weighAgainst notes of the groups that are new in a setting by how much it beats the old one, and by
// what that explained the book.
func (f *finder) weighAgainst(now, old setting) {
	for _, h := range groupsOf(now.taken) {
		if holds(old.taken, h) {
			continue
		}
		h.margin = now.score - old.score
		for _, g := range old.taken {
			if !holds(now.taken, g) {
				h.rival = append(h.rival, g)
			}
		}
	}
}

func holds(all []*hypothesis, h *hypothesis) bool {
	for _, g := range all {
		if sameParts(g, h) {
			return true
		}
	}
	return false
}
