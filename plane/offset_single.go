package plane

import "math"

// A line that meets itself closes a loop, and one that closes a loop with one corner turns by more
// than half a circle; bent is a little less.
const bent = 3.1

// knot is the tree of the runs of a ribbon: node k stands over 2k+1 and 2k+2.
type knot struct {
	ring  Path
	runs  []run
	nodes []run // from and to are runs
	first int   // the first node of the last level
}

// single says that the ring does not meet itself. Stretches that turn too little to do so and pairs
// that lie apart are passed over; what is left is compared piece by piece.
func (r *ribbon) single() bool {
	k := knot{ring: r.Path, runs: r.runs, first: 0}
	size := 1
	for size < len(r.runs) {
		size *= 2
	}
	k.nodes, k.first = make([]run, 2*size-1), size-1
	for i := len(k.nodes) - 1; i >= 0; i-- {
		n := &k.nodes[i]
		switch at := i - k.first; {
		case at >= len(k.runs):
			*n = run{box: EmptyBox(), from: len(k.runs), to: len(k.runs)}
		case at >= 0:
			w := &k.runs[at]
			*n = run{box: w.box.widen(w.rise), turn: w.turn, from: at, to: at + 1}
		default:
			a, b := &k.nodes[2*i+1], &k.nodes[2*i+2]
			*n = run{box: a.box.Join(b.box), turn: a.turn + b.turn, from: a.from, to: max(a.to, b.to)}
		}
	}
	return k.free(0)
}

// free says that a node's stretch does not meet itself.
func (k *knot) free(at int) bool {
	n := &k.nodes[at]
	switch {
	case n.turn < bent:
		return true
	case at >= k.first:
		return k.apart(&k.runs[n.from], &k.runs[n.from])
	}
	return k.free(2*at+1) && k.free(2*at+2) && k.clear(2*at+1, 2*at+2)
}

// clear says that the stretches of two nodes, the first of which comes before, do not meet but where
// one runs on in the other.
func (k *knot) clear(i, j int) bool {
	a, b := &k.nodes[i], &k.nodes[j]
	if a.from == a.to || b.from == b.to || !a.box.Meets(b.box, touch) {
		return true
	}
	runsOn := a.to == b.from || a.from == 0 && b.to == len(k.runs)
	switch {
	case runsOn && a.turn+b.turn < bent:
		return true
	case i >= k.first && j >= k.first:
		return k.apart(&k.runs[a.from], &k.runs[b.from])
	case j >= k.first || i < k.first && a.to-a.from > b.to-b.from:
		return k.clear(2*i+1, j) && k.clear(2*i+2, j)
	}
	return k.clear(i, 2*j+1) && k.clear(i, 2*j+2)
}

// apart says that no two pieces of the runs meet.
func (k *knot) apart(a, b *run) bool {
	for i := a.from; i < a.to; i++ {
		box := k.ring.Segs[i].roughBounds()
		if !box.Meets(b.box.widen(b.rise), touch) {
			continue
		}
		for j := max(i+1, b.from); j < b.to; j++ {
			if box.Meets(k.ring.Segs[j].roughBounds(), touch) && !k.parted(i, j) {
				return false
			}
		}
	}
	return true
}

// parted says that pieces i < j do not meet but where one runs on in the other.
func (k *knot) parted(i, j int) bool {
	s, r := k.ring.Segs[i], k.ring.Segs[j]
	next := j == i+1 || i == 0 && j == len(k.ring.Segs)-1
	if next && len(k.ring.Segs) > 2 && math.Abs(s.Bulge)+math.Abs(r.Bulge) < 0.25 && s.B.Sub(s.A).Dot(r.B.Sub(r.A)) > 0 {
		return true // by their chords they turn no more than a quarter, by their sweeps little
	}
	return k.ring.pair(i, j) == nil
}
