package network

import "math"

// Loop is a closed way over level and staff readings: the sum of their rises should be nothing.
type Loop struct {
	Marks      []int   // in the order walked, from the nearest to the height that is held
	Obs        []int   // readings along it, in that order
	Misclosure float64 // sum of the rises as read, before any adjustment, metres
	Setups     int     // of the level; a `level` reading counts as one
	Sights     float64 // sum of the lengths of sight, metres; NaN where one is not known
}

// leg is a reading as a way from one height to another: places in Free.
type leg struct {
	from, to int
	up       float64
	obs      int
	sight    float64
	staff    bool
}

// legs are the level and staff readings that stand, checks among them.
func (n *Network) legs() []leg {
	var out []leg
	first := n.FreeBlock(0)
	for i := range n.Obs {
		o := &n.Obs[i]
		if !o.Use {
			continue
		}
		switch o.Kind.(type) {
		case Level:
			out = append(out, leg{int(o.Extra[0] - first), int(o.Extra[1] - first), o.Values[0], i, math.NaN(), false})
		case Staff:
			sight := o.Sight
			if sight == 0 {
				sight = math.NaN()
			}
			out = append(out, leg{int(o.Extra[1] - first), int(o.Extra[0] - first), o.Values[0] - o.Zero, i, sight, true})
		}
	}
	return out
}

// Loops is a set of independent loops of level and staff readings, as many as there are readings more
// than the heights need: each reading that closes a way, with the shortest way back from the height that
// is held (the fundamental cycles of a tree grown breadth first: G. Kirchhoff, Annalen der Physik 148,
// 1847). A mark read twice from one set-up is a loop of its own.
func (n *Network) Loops() []Loop {
	legs := n.legs()
	up, deep, inTree := make([]int, len(n.Free)), make([]int, len(n.Free)), make([]bool, len(legs))
	for i := range up {
		up[i], deep[i] = -1, -1
	}
	grow := func(root int) {
		deep[root] = 0
		for queue := []int{root}; len(queue) > 0; queue = queue[1:] {
			for k, l := range legs {
				to := l.to
				if l.to == queue[0] {
					to = l.from
				} else if l.from != queue[0] {
					continue
				}
				if deep[to] < 0 {
					up[to], deep[to], inTree[k] = k, deep[queue[0]]+1, true
					queue = append(queue, to)
				}
			}
		}
	}
	if _, ok := n.Datum(); ok {
		grow(n.Level)
	}
	for _, l := range legs {
		if deep[l.from] < 0 {
			grow(l.from)
		}
	}
	var out []Loop
	for k, l := range legs {
		if !inTree[k] {
			out = append(out, n.loop(legs, up, deep, k, l))
		}
	}
	return out
}

// loop goes from where the ways to both ends of a leg part, over the leg, and back.
func (n *Network) loop(legs []leg, up, deep []int, closing int, l leg) Loop {
	over := func(node, k int) int { return legs[k].from + legs[k].to - node }
	a, b := l.from, l.to
	var out, back []int // legs, from the ends towards the parting
	for a != b {
		if deep[a] >= deep[b] {
			out, a = append(out, up[a]), over(a, up[a])
		} else {
			back, b = append(back, up[b]), over(b, up[b])
		}
	}
	var way []int
	for k := len(out) - 1; k >= 0; k-- {
		way = append(way, out[k])
	}
	way = append(append(way, closing), back...)
	c := Loop{}
	level := map[int]bool{} // counted only: the lines of sight met
	node := a
	for _, k := range way {
		if f := &n.Free[node]; f.Kind == "height" {
			c.Marks = append(c.Marks, f.Marks[0])
		}
		rise := legs[k].up
		if legs[k].to == node {
			rise = -rise
		}
		switch {
		case !legs[k].staff:
			c.Setups++
		case !level[legs[k].to]:
			level[legs[k].to] = true
			c.Setups++
		}
		c.Misclosure, c.Sights, c.Obs = c.Misclosure+rise, c.Sights+legs[k].sight, append(c.Obs, legs[k].obs)
		node = over(node, k)
	}
	return c
}
