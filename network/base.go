package network

// base picks the datum of FORMAT: peg A as origin, else the first mark of the first tie; peg B on
// +x, else that tie's other mark; without tie and peg A the first two marks named. Struck
// readings and drawings do not count; checks and computed corrections only where nothing else
// gives a base.
func (g *builder) base() {
	if g.baseOf(func(o *Obs) bool { return o.Use && !o.Check && !o.Computed }); g.n.Base[0] < 0 {
		g.baseOf(func(o *Obs) bool { return o.Use })
	}
}

// baseOf picks it from the readings that count.
func (g *builder) baseOf(counts func(*Obs) bool) {
	used := map[int]bool{}
	var first, ofA [2]int
	ties, tiesOfA := false, false
	a, namedA := g.n.ByName["A"]
	for i := range g.n.Obs {
		o := &g.n.Obs[i]
		if !counts(o) {
			continue
		}
		for _, m := range o.Marks {
			used[m] = true
		}
		if _, tie := o.Kind.(Tie); !tie {
			continue
		}
		t := [2]int{o.Marks[0], o.Marks[1]}
		if !ties {
			first, ties = t, true
		}
		if namedA && !tiesOfA && (t[0] == a || t[1] == a) {
			ofA, tiesOfA = t, true
		}
	}
	b, namedB := g.n.ByName["B"]
	hasA, hasB := namedA && used[a], namedB && used[b]
	other := func(t [2]int, m int) int { return t[0] + t[1] - m }
	switch {
	case hasA && hasB:
		g.n.Base = [2]int{a, b}
	case hasA && tiesOfA:
		g.n.Base = [2]int{a, other(ofA, a)}
	case !hasA && ties && hasB && first[0] != b:
		g.n.Base = [2]int{first[0], b}
	case !hasA && ties:
		g.n.Base = first
	default:
		g.firstTwo(used, a, hasA)
	}
}

// firstTwo takes the first two marks named by readings in use, A before any other.
func (g *builder) firstTwo(used map[int]bool, a int, hasA bool) {
	var two []int
	if hasA {
		two = append(two, a)
	}
	for m := range g.n.Marks {
		if used[m] && len(two) < 2 && !(hasA && m == a) {
			two = append(two, m)
		}
	}
	if len(two) == 2 {
		g.n.Base = [2]int{two[0], two[1]}
	}
}
