package outline

import (
	"math"
	"slices"
)

// way is a description of the whole trail: pieces in order, the joint at the start of each.
type way struct {
	piece []int
	how   []joint
	score float64
}

// label is the best way to or from a piece.
type label struct {
	score float64
	piece int // before or after; −1 none
	how   int // place in the links of the earlier piece
}

// through finds the cheapest way from piece s to itself once round, or along an open trail from
// its first to its last mark (s −1), and, for every piece, the cheapest way that contains it.
func (g *graph) through(s int) (fore, back []label) {
	n := len(g.piece)
	fore, back = make([]label, n), make([]label, n)
	for i := range n {
		fore[i], back[i] = label{math.Inf(1), -1, -1}, label{math.Inf(1), -1, -1}
	}
	order := g.order(s)
	for _, i := range order {
		if s < 0 && g.piece[i].from == 0 {
			fore[i].score = g.cost[i] + g.startCurve(i)
		} else if i == s {
			fore[i].score = g.cost[i]
		}
		for k, l := range g.next[i] {
			if !g.ahead(s, i, l.to) {
				continue
			}
			if v := fore[i].score + l.how.cost + g.cost[l.to]; v < fore[l.to].score-tie {
				fore[l.to] = label{v, i, k}
			}
		}
	}
	for _, i := range slices.Backward(order) {
		if s < 0 && g.piece[i].to == len(g.t.at)-1 {
			back[i].score = 0
		}
		for k, l := range g.next[i] {
			rest := math.Inf(1)
			if l.to == s && g.closes(s, i) {
				rest = 0
			} else if g.ahead(s, i, l.to) {
				rest = back[l.to].score + g.cost[l.to]
			}
			if v := rest + l.how.cost; v < back[i].score-tie {
				back[i] = label{v, l.to, k}
			}
		}
	}
	return fore, back
}

func (g *graph) startCurve(i int) float64 {
	if g.piece[i].kind == "curve" {
		return g.c.curve
	}
	return 0
}

// place is where a piece begins, counted from the start of s round the ring.
func (g *graph) place(s, i int) int {
	if s < 0 {
		return g.piece[i].from
	}
	return g.t.index(g.piece[i].from - g.piece[s].from)
}

// order lists the pieces by where they begin.
func (g *graph) order(s int) []int {
	if s < 0 {
		out := make([]int, len(g.piece))
		for i := range out {
			out[i] = i
		}
		return out
	}
	start := g.first[g.piece[s].from]
	end := g.first[g.piece[s].from+1]
	out := []int{s}
	for k := end; k < start+len(g.piece); k++ {
		out = append(out, k%len(g.piece))
	}
	return out
}

// ahead says that piece j lies after piece i before s is reached again.
func (g *graph) ahead(s, i, j int) bool {
	if s < 0 {
		return true
	}
	a, b := g.place(s, i), g.place(s, j)
	return j != s && b > a && b+g.piece[j].to-g.piece[j].from <= len(g.t.at) && b >= a+g.piece[i].to-g.piece[i].from
}

// closes says that s may follow i once round.
func (g *graph) closes(s, i int) bool {
	end := g.place(s, i) + g.piece[i].to - g.piece[i].from
	return i != s && end <= len(g.t.at) && end >= len(g.t.at)-1-mostFilled
}

// way follows the labels through a piece both ways.
func (g *graph) way(s, i int, fore, back []label) way {
	w := way{score: fore[i].score + back[i].score}
	for k := i; ; {
		w.piece = append(w.piece, k)
		b := fore[k]
		if b.piece < 0 {
			w.how = append(w.how, joint{})
			break
		}
		w.how = append(w.how, g.next[b.piece][b.how].how)
		k = b.piece
	}
	slices.Reverse(w.piece)
	slices.Reverse(w.how)
	for k := i; back[k].piece >= 0; {
		b := back[k]
		how := g.next[k][b.how].how
		if b.piece == s {
			w.how[0] = how
			break
		}
		w.piece, w.how = append(w.piece, b.piece), append(w.how, how)
		k = b.piece
	}
	return w
}
