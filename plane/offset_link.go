package plane

import (
	"cmp"
	"math"
	"slices"
)

// Distances in metres up to which an end and a start are taken for one place: the same crossing
// worked out twice; a smooth joint; two strands that touch so flatly that only one of them saw it.
var grades = []float64{1e-8, 1e-6, 1e-4}

// pair is an end that may run on in a start.
type pair struct {
	end, start int
	grade      int
	gap, left  float64 // left is the turn from end to start, leftmost first
}

// link says for each strand which one follows it, −1 for none; all says that every one has a
// follower. Nearer places go first; where several meet, the leftmost turn, which keeps rings that
// touch from crossing.
func link(list []strand) (next []int, all bool) {
	next = make([]int, len(list))
	taken := make([]bool, len(list))
	for i := range next {
		next[i] = -1
	}
	count := 0
	for _, c := range pairs(list) {
		if next[c.end] < 0 && !taken[c.start] {
			next[c.end], taken[c.start] = c.start, true
			count++
		}
	}
	return next, count == len(list)
}

// pairs are all ends and starts that are near each other, the likeliest first.
func pairs(list []strand) []pair {
	byX := make([]int, len(list))
	for i := range byX {
		byX[i] = i
	}
	slices.SortStableFunc(byX, func(a, b int) int { return cmp.Compare(list[a].A.X, list[b].A.X) })
	most := grades[len(grades)-1]
	var out []pair
	for e, s := range list {
		k, _ := slices.BinarySearchFunc(byX, s.B.X-most, func(i int, x float64) int { return cmp.Compare(list[i].A.X, x) })
		for ; k < len(byX) && list[byX[k]].A.X <= s.B.X+most; k++ {
			f := list[byX[k]]
			gap := f.A.Dist(s.B)
			if gap > most || byX[k] == e {
				continue
			}
			grade := 0
			for gap > grades[grade] {
				grade++
			}
			out = append(out, pair{e, byX[k], grade, gap, -Between(s.Tangent(1), f.Tangent(0))})
		}
	}
	slices.SortFunc(out, func(a, b pair) int {
		order := cmp.Compare(a.grade, b.grade)
		if order == 0 && a.grade > 0 {
			order = cmp.Compare(a.gap, b.gap)
		}
		return cmp.Or(order, cmp.Compare(a.left, b.left), cmp.Compare(a.end, b.end), cmp.Compare(a.start, b.start))
	})
	return out
}

// collect strings the strands together into paths.
func collect(p Path, list []strand, next []int) Parallel {
	var r Parallel
	for _, chain := range chains(next) {
		path, of := strung(list, chain)
		if len(path.Segs) == 0 || path.Closed && math.Abs(path.Area()) <= 1e-9*path.Length() {
			continue
		}
		r.Paths, r.Of = append(r.Paths, path), append(r.Of, of)
	}
	if p.Closed {
		r.sort()
	}
	beside := make([]bool, len(p.Segs))
	for _, of := range r.Of {
		for _, i := range of {
			if i >= 0 {
				beside[i] = true
			}
		}
	}
	for i, b := range beside {
		if !b {
			r.Gone = append(r.Gone, i)
		}
	}
	return r
}

// sort puts the largest ring first.
func (r *Parallel) sort() {
	at := make([]int, len(r.Paths))
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(a, b int) int {
		return cmp.Compare(math.Abs(r.Paths[b].Area()), math.Abs(r.Paths[a].Area()))
	})
	paths, of := make([]Path, len(at)), make([][]int, len(at))
	for k, i := range at {
		paths[k], of[k] = r.Paths[i], r.Of[i]
	}
	r.Paths, r.Of = paths, of
}

// chain is a run of strands; a ring comes back to its first.
type chain struct {
	strands []int
	ring    bool
}

// chains are the runs that begin nowhere, then the rings, each from its first strand.
func chains(next []int) []chain {
	led := make([]bool, len(next))
	for _, n := range next {
		if n >= 0 {
			led[n] = true
		}
	}
	seen := make([]bool, len(next))
	walk := func(from int) []int {
		var out []int
		for i := from; i >= 0 && !seen[i]; i = next[i] {
			seen[i] = true
			out = append(out, i)
		}
		return out
	}
	var out []chain
	for i := range next {
		if !led[i] {
			out = append(out, chain{walk(i), false})
		}
	}
	for i := range next {
		if !seen[i] {
			out = append(out, chain{walk(i), true})
		}
	}
	return out
}

// strung is a chain as a path: an end and the start it runs on in become the place midway.
func strung(list []strand, c chain) (Path, []int) {
	segs := make([]Segment, len(c.strands))
	for k, i := range c.strands {
		segs[k] = list[i].Segment
	}
	for k := range segs {
		n := (k + 1) % len(segs)
		if n == 0 && !c.ring {
			break
		}
		if segs[k].B != segs[n].A {
			m := Lerp(segs[k].B, segs[n].A, 0.5)
			segs[k].B, segs[n].A = m, m
		}
	}
	return shortless(segs, list, c)
}

// shortless leaves out segments that have become too short to be one.
func shortless(segs []Segment, list []strand, c chain) (Path, []int) {
	p := Path{Closed: c.ring}
	var of []int
	for k, s := range segs {
		if s.Chord() <= joint {
			continue
		}
		if n := len(p.Segs); n > 0 {
			s.A = p.Segs[n-1].B
		}
		p.Segs, of = append(p.Segs, s), append(of, list[c.strands[k]].of)
	}
	if n := len(p.Segs); c.ring && n > 0 {
		p.Segs[n-1].B = p.Segs[0].A
	}
	return p, of
}
