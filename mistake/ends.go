package mistake

import (
	"slices"

	"brimline/network"
)

// nearEnds are the changes of both ends of a run that are tried.
var nearEnds = [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, 1}, {-1, 1}, {1, -1}}

// ends looks for better ends of the runs found, a row at a time.
func (f *finder) ends(s setting) setting {
	for range 2 * len(f.s.Net.Marks) {
		top := s
		groups := groupsOf(s.taken)
		for _, j := range f.joined(s, groups) {
			if n := f.singly(j); n.score-n.odd > top.score-top.odd {
				top = n
			}
		}
		for k, h := range groups {
			if h.v == nil {
				continue
			}
			for _, d := range nearEnds {
				r := run{from: h.r.from + d[0], to: h.r.to + d[1]}
				if g, x, ok := f.regrown(s, h, r); ok {
					others := without(groups, k)
					if n := f.singly(setting{taken: append(others[:len(others):len(others)], g), x: x}); n.score-n.odd > top.score-top.odd {
						top = n
					}
				}
			}
		}
		if top.score-top.odd <= s.score-s.odd+1e-6 || f.ctx.Err() != nil {
			break
		}
		s = top
	}
	return s
}

// joined are the settings in which two runs of one variant, a few rows apart, are one.
func (f *finder) joined(s setting, groups []*hypothesis) []setting {
	const near = 3 // rows between them
	var out []setting
	for a, h := range groups {
		for b, g := range groups {
			if h.v == nil || g.v == nil || !sameVariant(h, g) {
				continue
			}
			gap := slices.Index(h.v.mark, g.v.mark[g.r.from]) - h.r.to
			to := slices.Index(h.v.mark, g.v.mark[g.r.to])
			if gap < 1 || gap > near+1 || to < h.r.to {
				continue
			}
			if n, x, ok := f.regrown(s, h, run{from: h.r.from, to: to}); ok {
				rest := without(groups, a, b)
				out = append(out, setting{taken: append(rest[:len(rest):len(rest)], n), x: x})
			}
		}
	}
	return out
}

func sameVariant(h, g *hypothesis) bool {
	return h != g && h.Code == g.Code && h.Peg == g.Peg && h.Other == g.Other && h.v.step == g.v.step
}

// regrown is a run with one row more or less, with the state in which that row stands as it then
// was read.
func (f *finder) regrown(s setting, h *hypothesis, r run) (*hypothesis, network.State, bool) {
	v := h.v
	if r.from < 0 || r.to >= len(v.mark) || r.to < r.from || v.code == "slip" && r.to-r.from+1 < leastSlip {
		return nil, nil, false
	}
	for k := r.from; k <= r.to; k++ {
		if len(v.parts[k]) == 0 {
			return nil, nil, false
		}
	}
	sc := f.scene(s.x, f.model(s.x, nil).Member)
	x := append(network.State(nil), s.x...)
	for k := min(r.from, h.r.from); k <= max(r.to, h.r.to); k++ {
		was, is := k >= h.r.from && k <= h.r.to, k >= r.from && k <= r.to
		if was == is {
			continue
		}
		sc.asRead()
		if is {
			for n, p := range v.parts[k] {
				sc.take(p, v.values[k][n])
			}
		}
		_, at := sc.best(v.mark[k], f.imagined(sc, v, k, s.x.Point(v.mark[k])))
		x.SetPoint(v.mark[k], at)
	}
	return f.plainRun(v, r), x, true
}
