package adjust

import (
	"math"

	"brimline/network"
	"brimline/sparse"
)

// hold is the weight of the datum conditions, as a multiple of the largest diagonal term.
const hold = 1e10

// system is the normal equations of the observations that take part.
type system struct {
	net    *network.Network
	has    []bool // observation has a place in the pattern
	out    []bool // by part: left out
	base   [2]int
	offset []int // of each block in the reduced vector
	size   int
	sym    *sparse.Symbolic
	m      *sparse.Matrix
	factor *sparse.Factor
	inv    *sparse.Inverse
	slots  []sparse.Slot // of each observation: pairs (a, b), a ≤ b, in order
	slotAt []int32
	diag   []sparse.Slot
	weak   map[int]bool // blocks that get a weak hold of their own
	held   [][2]int     // block and scalar of the unknowns held at their values

	rhs, step, work []float64
	value, force    []float64
	jac, hess       []float64
	block           [64]float64
}

// newSystem lays out the equations of the observations that have a place in them. Blocks without
// a place have no unknowns.
func newSystem(n *network.Network, has, out []bool, base [2]int, x network.State) *system {
	s := &system{net: n, has: has, out: out, base: base, weak: map[int]bool{}}
	blocks := len(n.Offset) - 1
	dims := make([]int, blocks)
	s.offset = make([]int, blocks+1)
	for b := range blocks {
		if n.Placed(x, network.Unknown(b)) {
			dims[b] = n.Dim(network.Unknown(b))
		}
		s.offset[b+1] = s.offset[b] + dims[b]
	}
	s.size = s.offset[blocks]
	s.held = heldHeight(n, x)
	ptr, idx := []int32{0}, make([]int32, 0, 2*len(n.Obs))
	for i := range n.Obs {
		if has[i] {
			for _, b := range n.Obs[i].Blocks {
				idx = append(idx, int32(b))
			}
			ptr = append(ptr, int32(len(idx)))
		}
	}
	s.sym = sparse.Analyze(dims, ptr, idx)
	s.room()
	s.findSlots(blocks)
	return s
}

// room makes the working space.
func (s *system) room() {
	s.m, s.factor = s.sym.NewMatrix(), s.sym.NewFactor()
	s.rhs, s.step, s.work = make([]float64, s.size), make([]float64, s.size), make([]float64, s.size)
	parts, size, jac := 0, 0, 0
	for i := range s.net.Obs {
		o := &s.net.Obs[i]
		parts, size = max(parts, len(o.Values)), max(size, o.Size)
		jac = max(jac, len(o.Values)*o.Size)
	}
	s.value, s.force = make([]float64, parts), make([]float64, parts)
	s.jac, s.hess = make([]float64, jac), make([]float64, size*size)
}

// another has the same pattern and a matrix, factor and choice of parts of its own.
func (s *system) another(n *network.Network, out []bool) *system {
	t := *s
	t.net, t.out, t.inv = n, out, nil
	t.weak = map[int]bool{}
	t.room()
	return &t
}

func (s *system) findSlots(blocks int) {
	s.diag = make([]sparse.Slot, blocks)
	for b := range blocks {
		s.diag[b] = s.sym.Slot(b, b)
	}
	s.slotAt = make([]int32, len(s.net.Obs)+1)
	for i := range s.net.Obs {
		if s.has[i] {
			bl := s.net.Obs[i].Blocks
			for a := range bl {
				for b := a; b < len(bl); b++ {
					if a == b {
						s.slots = append(s.slots, s.diag[bl[a]])
					} else {
						s.slots = append(s.slots, s.sym.Slot(int(bl[a]), int(bl[b])))
					}
				}
			}
		}
		s.slotAt[i+1] = int32(len(s.slots))
	}
}

// assemble fills the normal equations at x; weight multiplies each part's weight (nil: 1).
// second adds the second-order terms of curved kinds. It returns the weighted sum of squares.
func (s *system) assemble(x network.State, weight []float64, first []int, second bool) float64 {
	s.m.Clear()
	clear(s.rhs)
	cost := 0.0
	for i := range s.net.Obs {
		if !s.has[i] || s.allOut(first[i], first[i+1]) {
			continue
		}
		o := &s.net.Obs[i]
		p := len(o.Values)
		o.Kind.Predict(x, o, s.value[:p], s.jac[:p*o.Size])
		for k := range p {
			s.force[k] = 0
			if s.out[first[i]+k] {
				continue
			}
			r := s.value[k] - o.Values[k]
			sd := sdAt(o, k, r)
			w := 1 / (sd * sd)
			if weight != nil {
				w *= weight[first[i]+k]
			}
			cost += w * r * r
			s.force[k] = w * r
			s.add(i, o, s.jac[k*o.Size:(k+1)*o.Size], w, w*r)
		}
		if second {
			s.curve(x, i, o, p)
		}
	}
	s.holdDatum()
	return cost
}

func (s *system) allOut(from, to int) bool {
	for p := from; p < to; p++ {
		if !s.out[p] {
			return false
		}
	}
	return true
}

// sdAt is the standard deviation of part k where predicted − read is r: a reading that can only be
// too long (a tape round something) has a wider one while it is.
func sdAt(o *network.Obs, k int, r float64) float64 {
	if o.Long > 0 && r < 0 {
		return math.Hypot(o.SD[k], o.Long)
	}
	return o.SD[k]
}

func (s *system) add(i int, o *network.Obs, j []float64, w, f float64) {
	slots := s.slots[s.slotAt[i]:s.slotAt[i+1]]
	v := s.m.Values
	if len(slots) == 3 && o.Size == 4 { // two marks
		a, b := s.offset[o.Blocks[0]], s.offset[o.Blocks[1]]
		j0, j1, j2, j3 := j[0], j[1], j[2], j[3]
		s.rhs[a] -= f * j0
		s.rhs[a+1] -= f * j1
		s.rhs[b] -= f * j2
		s.rhs[b+1] -= f * j3
		d := v[slots[0].Base : slots[0].Base+4]
		d[0] += w * j0 * j0
		d[1] += w * j0 * j1
		d[2] += w * j0 * j1
		d[3] += w * j1 * j1
		d = v[slots[2].Base : slots[2].Base+4]
		d[0] += w * j2 * j2
		d[1] += w * j2 * j3
		d[2] += w * j2 * j3
		d[3] += w * j3 * j3
		t := slots[1]
		v[t.Base] += w * j0 * j2
		v[t.Base+t.ColStep] += w * j0 * j3
		v[t.Base+t.RowStep] += w * j1 * j2
		v[t.Base+t.RowStep+t.ColStep] += w * j1 * j3
		return
	}
	at := 0
	for _, b := range o.Blocks {
		d := s.net.Dim(b)
		for c := range d {
			s.rhs[s.offset[b]+c] -= f * j[at+c]
		}
		at += d
	}
	s.addBlocks(o, slots, func(r, c int) float64 { return w * j[r] * j[c] })
}

// addBlocks adds the matrix given entry by entry to the slots of one observation.
func (s *system) addBlocks(o *network.Obs, slots []sparse.Slot, entry func(r, c int) float64) {
	k, ra := 0, 0
	for a := range o.Blocks {
		da := s.net.Dim(o.Blocks[a])
		cb := ra
		for b := a; b < len(o.Blocks); b++ {
			db := s.net.Dim(o.Blocks[b])
			t := slots[k]
			k++
			for r := range da {
				for c := range db {
					s.m.Values[t.Base+int32(r)*t.RowStep+int32(c)*t.ColStep] += entry(ra+r, cb+c)
				}
			}
			cb += db
		}
		ra += da
	}
}

// addTwo adds a 4 × 4 matrix of two marks.
func (s *system) addTwo(slots []sparse.Slot, h []float64) {
	v := s.m.Values
	a, b, t := v[slots[0].Base:slots[0].Base+4], v[slots[2].Base:slots[2].Base+4], slots[1]
	a[0], a[1], a[2], a[3] = a[0]+h[0], a[1]+h[1], a[2]+h[4], a[3]+h[5]
	b[0], b[1], b[2], b[3] = b[0]+h[10], b[1]+h[11], b[2]+h[14], b[3]+h[15]
	v[t.Base] += h[2]
	v[t.Base+t.ColStep] += h[3]
	v[t.Base+t.RowStep] += h[6]
	v[t.Base+t.RowStep+t.ColStep] += h[7]
}

func (s *system) curve(x network.State, i int, o *network.Obs, parts int) {
	k, ok := o.Kind.(network.Curved)
	if !ok {
		return
	}
	h := s.hess[:o.Size*o.Size]
	clear(h)
	k.Curve(x, o, s.force[:parts], h)
	if slots := s.slots[s.slotAt[i]:s.slotAt[i+1]]; len(slots) == 3 && o.Size == 4 {
		s.addTwo(slots, h)
		return
	}
	s.addBlocks(o, s.slots[s.slotAt[i]:s.slotAt[i+1]], func(r, c int) float64 { return h[r*o.Size+c] })
}

// holdDatum holds the first base mark and, across the base (the inner frame's y), the second.
func (s *system) holdDatum() {
	v := s.m.Values
	largest := 0.0
	for b := range s.diag {
		for c := range int32(s.offset[b+1] - s.offset[b]) {
			largest = math.Max(largest, v[s.diag[b].Base+c*(s.diag[b].RowStep+s.diag[b].ColStep)])
		}
	}
	if largest == 0 {
		largest = 1
	}
	a, b := s.base[0], s.base[1]
	if a >= 0 {
		v[s.diag[a].Base] += hold * largest
		v[s.diag[a].Base+3] += hold * largest
	}
	if b >= 0 {
		v[s.diag[b].Base+3] += hold * largest
	}
	for _, h := range s.held {
		d := s.diag[h[0]]
		v[d.Base+int32(h[1])*(d.RowStep+d.ColStep)] += hold * largest
	}
	for b := range s.diag {
		if s.weak[b] {
			for c := range int32(s.offset[b+1] - s.offset[b]) {
				v[s.diag[b].Base+c*(s.diag[b].RowStep+s.diag[b].ColStep)] += weakHold
			}
		}
	}
}

// weakHold is the weight of a hold of 1 km: enough to make a free mark's equations solvable.
const weakHold = 1e-6

// heldHeight is the height that the heights are counted from, where it has a place: held as the base
// mark is in plan.
func heldHeight(n *network.Network, x network.State) [][2]int {
	datum, ok := n.Datum()
	if !ok || !n.Placed(x, datum) {
		return nil
	}
	return [][2]int{{int(datum), 0}}
}
