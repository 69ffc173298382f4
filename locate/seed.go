package locate

import (
	"sort"

	"brimline/network"
)

// seed is a beginning: two marks at a distance, or a set-up with the marks seen from it.
type seed struct {
	a, b  int
	dist  float64
	setup int // -1: a pair
}

const mostSeeds = 8

// seeds lists beginnings, the best first: the base, the best-seen set-up, then ties between the
// marks with most readings.
func seeds(n *network.Network) []seed {
	degree := make([]int, len(n.Marks))
	seen := make([]int, len(n.Setups))
	var pairs, loose []seed
	for i := range n.Obs {
		o := &n.Obs[i]
		if !o.Use && !o.Sketch {
			continue
		}
		for _, m := range o.Marks {
			degree[m]++
		}
		switch o.Kind.(type) {
		case network.Tie:
			if s := (seed{a: o.Marks[0], b: o.Marks[1], dist: length(o), setup: -1}); lent(o) || o.Long > 0 {
				loose = append(loose, s)
			} else {
				pairs = append(pairs, s)
			}
		case network.Seen:
			seen[o.Setup-len(n.Marks)]++
		}
	}
	if len(pairs) == 0 {
		pairs = loose
	}
	isBase := func(s seed) bool {
		return s.a == n.Base[0] && s.b == n.Base[1] || s.a == n.Base[1] && s.b == n.Base[0]
	}
	sort.SliceStable(pairs, func(i, j int) bool {
		if isBase(pairs[i]) != isBase(pairs[j]) {
			return isBase(pairs[i])
		}
		return degree[pairs[i].a]+degree[pairs[i].b] > degree[pairs[j].a]+degree[pairs[j].b]
	})
	pairs = middle(pairs)
	var out []seed
	if len(pairs) > 0 && isBase(pairs[0]) {
		out, pairs = append(out, pairs[0]), pairs[1:]
	}
	top := -1
	for s, c := range seen {
		if c >= 2 && (top < 0 || c > seen[top]) {
			top = s
		}
	}
	if top >= 0 {
		out = append(out, seed{setup: top})
	}
	for _, p := range pairs {
		if len(out) < mostSeeds && p.dist > 0.3 {
			out = append(out, p)
		}
	}
	return out
}

// middle keeps one seed for each pair of marks, with the middle of its readings.
func middle(in []seed) []seed {
	type pair struct{ a, b int }
	all := map[pair][]float64{}
	var order []pair
	for _, s := range in {
		k := pair{min(s.a, s.b), max(s.a, s.b)}
		if _, ok := all[k]; !ok {
			order = append(order, k)
		}
		all[k] = append(all[k], s.dist)
	}
	var out []seed
	for _, k := range order {
		d := all[k]
		sort.Float64s(d)
		out = append(out, seed{a: k.a, b: k.b, dist: d[len(d)/2], setup: -1})
	}
	return out
}
