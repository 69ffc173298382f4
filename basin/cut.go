package basin

import "math"

// flat is a place in the plane of a cut.
type flat struct{ u, v float64 }

func (a flat) dist(b flat) float64 { return math.Hypot(a.u-b.u, a.v-b.v) }

// piece is where the cut passes through one face, with the water on its left.
type piece struct {
	part     Part
	from, to flat
}

// chain is a run of pieces.
type chain struct {
	part   Part
	points []flat
	closed bool
}

// meet is how near two ends of pieces are the same place (metres): corners of the shell that were
// reckoned on different ways.
const meet = 1e-5

// cut is what a plane leaves of the shell: side is the distance of a place from it, a place in it
// counting as on the positive side; to brings a place in it to its own axes, as an affine map.
func (s *shell) cut(side func(vec) float64, to func(vec) flat, want func(Part) bool) []piece {
	var out []piece
	for _, f := range s.faces {
		if !want(f.part) {
			continue
		}
		var ends []flat
		for i := range f.v {
			a, b := s.vertices[f.v[i]].p, s.vertices[f.v[(i+1)%3]].p
			if a[0] > b[0] || a[0] == b[0] && (a[1] > b[1] || a[1] == b[1] && a[2] > b[2]) {
				a, b = b, a // the same place whichever face asks
			}
			da, db := side(a), side(b)
			if (da >= 0) == (db >= 0) {
				continue
			}
			t := da / (da - db)
			ends = append(ends, to(vec{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2])}))
		}
		if len(ends) != 2 || ends[0].dist(ends[1]) == 0 {
			continue
		}
		p := piece{f.part, ends[0], ends[1]}
		n, zero := to(s.normal(f)), to(vec{})
		if (p.to.u-p.from.u)*(n.v-zero.v)-(p.to.v-p.from.v)*(n.u-zero.u) < 0 {
			p.from, p.to = p.to, p.from
		}
		out = append(out, p)
	}
	return out
}

// link joins pieces to chains, each from a place where no piece ends if it has one, the first from the
// left. With split a chain ends where the part changes.
func link(pieces []piece, split bool) []chain {
	used := make([]bool, len(pieces))
	var out []chain
	for {
		first := start(pieces, used)
		if first < 0 {
			return out
		}
		begin := pieces[first].from
		c := chain{part: pieces[first].part, points: []flat{begin}}
		for next := first; next >= 0; next = following(pieces, used, c) {
			used[next] = true
			if split && pieces[next].part != c.part {
				at := c.points[len(c.points)-1]
				out = append(out, c)
				c = chain{part: pieces[next].part, points: []flat{at}}
			}
			c.points = append(c.points, pieces[next].to)
		}
		if n := len(c.points); n > 3 && begin.dist(c.points[n-1]) <= meet && !split {
			c.closed, c.points = true, c.points[:n-1]
		}
		out = append(out, c)
	}
}

// start is the piece to begin with: of the unused, that furthest to the left, the highest of equals,
// where no other ends; else the first. −1 when all are used.
func start(pieces []piece, used []bool) int {
	first, loose := -1, false
	for i, p := range pieces {
		if used[i] {
			continue
		}
		if first < 0 {
			first = i
		}
		if ends(pieces, used, p.from) {
			continue
		}
		if b := pieces[first].from; !loose || p.from.u < b.u-meet || p.from.u < b.u+meet && p.from.v > b.v {
			first, loose = i, true
		}
	}
	return first
}

// ends says that an unused piece ends at a place.
func ends(pieces []piece, used []bool, at flat) bool {
	for i, p := range pieces {
		if !used[i] && p.to.dist(at) <= meet {
			return true
		}
	}
	return false
}

// following is the unused piece that goes on from the end of a chain, rather of the same part; −1 for
// none.
func following(pieces []piece, used []bool, c chain) int {
	next, at := -1, c.points[len(c.points)-1]
	for i, p := range pieces {
		if !used[i] && p.from.dist(at) <= meet && (next < 0 || p.part == c.part && pieces[next].part != c.part) {
			next = i
		}
	}
	return next
}
