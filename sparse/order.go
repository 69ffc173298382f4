package sparse

// Order gives an elimination order of the nodes of an undirected graph that keeps the factor
// sparse: order[k] is the node eliminated k-th. The graph is given as cliques (sets of nodes
// that are mutually joined, such as the unknowns of one reading): node indices of clique c
// stand in idx[ptr[c]:ptr[c+1]].
//
// Method: minimum degree on the quotient graph with approximate external degrees, element
// absorption, mass elimination and indistinguishable nodes (P. Amestoy, T. Davis, I. Duff, "An
// approximate minimum degree ordering algorithm", SIAM J. Matrix Anal. Appl. 17 (1996)). Nodes
// joined to very many others are set aside and eliminated last. Ties go to the node that was
// queued last, so the order is the same every time.
func Order(n int, ptr, idx []int32) []int32 {
	q := newQuotient(n, ptr, idx)
	for q.left > 0 {
		q.eliminate(q.leastDegree())
	}
	return q.finish()
}

type quotient struct {
	n, left  int
	vars     [][]int32 // A_i: joined nodes not yet covered by an element
	elems    [][]int32 // E_i: elements that node i belongs to
	members  [][]int32 // L_e: nodes of element e (index: its pivot)
	weight   []int32   // nodes that a supervariable stands for; 0: absorbed or eliminated
	degree   []int32
	dead     []bool // element absorbed
	joined   [][]int32
	last     []int32 // set aside: dense nodes
	order    []int32
	head     []int32 // degree lists
	next     []int32
	prev     []int32
	least    int
	stamp    []int32 // marks of the current pivot
	now      int32
	overlap  []int32 // |L_e \ L_p| of the current pivot, valid where seen[e] == now
	seen     []int32
	hash     []uint32
	hashHead map[uint32][]int32
}

func newQuotient(n int, ptr, idx []int32) *quotient {
	q := &quotient{
		n: n, vars: neighbours(n, ptr, idx), elems: make([][]int32, n), members: make([][]int32, n),
		weight: make([]int32, n), degree: make([]int32, n), dead: make([]bool, n), joined: make([][]int32, n),
		order: make([]int32, 0, n), head: make([]int32, n+1), next: make([]int32, n), prev: make([]int32, n),
		stamp: make([]int32, n), overlap: make([]int32, n), seen: make([]int32, n), hashHead: map[uint32][]int32{},
	}
	for i := range q.head {
		q.head[i] = -1
	}
	q.setAsideDense()
	for i := n - 1; i >= 0; i-- {
		if q.weight[i] > 0 {
			q.degree[i] = int32(len(q.vars[i]))
			q.enqueue(int32(i))
			q.left++
		}
	}
	return q
}

// neighbours lists each node's neighbours once, from the cliques.
func neighbours(n int, ptr, idx []int32) [][]int32 {
	count := make([]int32, n)
	for c := 0; c+1 < len(ptr); c++ {
		k := ptr[c+1] - ptr[c] - 1
		for _, i := range idx[ptr[c]:ptr[c+1]] {
			count[i] += k
		}
	}
	total := 0
	for _, c := range count {
		total += int(c)
	}
	room := make([]int32, total)
	adj := make([][]int32, n)
	at := 0
	for i := range adj {
		adj[i] = room[at:at:(at + int(count[i]))]
		at += int(count[i])
	}
	for c := 0; c+1 < len(ptr); c++ {
		m := idx[ptr[c]:ptr[c+1]]
		for _, i := range m {
			for _, j := range m {
				if i != j {
					adj[i] = append(adj[i], j)
				}
			}
		}
	}
	mark := make([]int32, n)
	for i := range adj {
		kept := adj[i][:0]
		for _, j := range adj[i] {
			if mark[j] != int32(i)+1 {
				mark[j] = int32(i) + 1
				kept = append(kept, j)
			}
		}
		adj[i] = kept
	}
	return adj
}

// setAsideDense takes nodes with far more neighbours than usual out of the graph: scanning their
// lists at every step would cost a square of the size, and they are eliminated last anyway.
func (q *quotient) setAsideDense() {
	limit := 16
	for limit*limit < 100*q.n {
		limit++
	}
	dense := make([]bool, q.n)
	for i := range q.vars {
		q.weight[i] = 1
		if len(q.vars[i]) > limit {
			dense[i] = true
			q.weight[i] = 0
			q.last = append(q.last, int32(i))
		}
	}
	if len(q.last) == 0 {
		return
	}
	for i := range q.vars {
		kept := q.vars[i][:0]
		for _, j := range q.vars[i] {
			if !dense[j] {
				kept = append(kept, j)
			}
		}
		q.vars[i] = kept
	}
}

func (q *quotient) enqueue(i int32) {
	d := q.degree[i]
	q.prev[i] = -1
	q.next[i] = q.head[d]
	if q.head[d] >= 0 {
		q.prev[q.head[d]] = i
	}
	q.head[d] = i
	if int(d) < q.least {
		q.least = int(d)
	}
}

func (q *quotient) dequeue(i int32) {
	if q.prev[i] >= 0 {
		q.next[q.prev[i]] = q.next[i]
	} else {
		q.head[q.degree[i]] = q.next[i]
	}
	if q.next[i] >= 0 {
		q.prev[q.next[i]] = q.prev[i]
	}
}

func (q *quotient) leastDegree() int32 {
	for q.head[q.least] < 0 {
		q.least++
	}
	return q.head[q.least]
}

// emit puts a supervariable and all that it stands for into the order.
func (q *quotient) emit(i int32) {
	q.order = append(q.order, i)
	for _, j := range q.joined[i] {
		q.emit(j)
	}
}

func (q *quotient) eliminate(p int32) {
	q.dequeue(p)
	q.now++
	lp := q.gather(p)
	q.emit(p)
	q.left -= int(q.weight[p])
	q.weight[p] = 0
	q.members[p] = lp
	q.vars[p], q.elems[p] = nil, nil
	q.countOverlap(lp)
	kept := lp[:0]
	for _, i := range lp {
		if q.update(p, i, lp) {
			kept = append(kept, i)
		}
	}
	q.members[p] = kept
	q.joinEqual(kept)
	final := kept[:0]
	var size int32
	for _, i := range kept {
		if q.weight[i] > 0 {
			final = append(final, i)
			size += q.weight[i]
		}
	}
	q.members[p] = final
	for _, i := range final {
		d := q.degree[i] + size - q.weight[i]
		if most := int32(q.left) - q.weight[i]; d > most {
			d = most
		}
		if d < 0 {
			d = 0
		}
		q.degree[i] = d
		q.enqueue(i)
	}
}

// gather forms the new element: all nodes reached from p directly or through its elements.
func (q *quotient) gather(p int32) []int32 {
	q.stamp[p] = q.now
	var lp []int32
	take := func(list []int32) {
		for _, j := range list {
			if q.weight[j] > 0 && q.stamp[j] != q.now {
				q.stamp[j] = q.now
				lp = append(lp, j)
			}
		}
	}
	size := len(q.vars[p])
	for _, e := range q.elems[p] {
		size += len(q.members[e])
	}
	lp = make([]int32, 0, size)
	take(q.vars[p])
	for _, e := range q.elems[p] {
		if !q.dead[e] {
			take(q.members[e])
			q.dead[e] = true
			q.members[e] = nil
		}
	}
	for _, i := range lp {
		q.dequeue(i)
	}
	return lp
}

// countOverlap finds |L_e \ L_p| for every element met by the members of L_p.
func (q *quotient) countOverlap(lp []int32) {
	for _, i := range lp {
		for _, e := range q.elems[i] {
			if q.dead[e] {
				continue
			}
			if q.seen[e] != q.now {
				q.seen[e] = q.now
				var s int32
				for _, j := range q.members[e] {
					s += q.weight[j]
				}
				q.overlap[e] = s
			}
			q.overlap[e] -= q.weight[i]
		}
	}
}

// update rewrites the lists of node i after the elimination of p and computes its approximate
// degree outside L_p; false when i was eliminated together with p.
func (q *quotient) update(p, i int32, lp []int32) bool {
	var d int32
	es := q.elems[i][:0]
	for _, e := range q.elems[i] {
		switch {
		case q.dead[e]:
		case q.overlap[e] == 0: // covered by the new element
			q.dead[e] = true
			q.members[e] = nil
		default:
			d += q.overlap[e]
			es = append(es, e)
		}
	}
	vs := q.vars[i][:0]
	for _, j := range q.vars[i] {
		if q.weight[j] > 0 && q.stamp[j] != q.now {
			d += q.weight[j]
			vs = append(vs, j)
		}
	}
	q.vars[i] = vs
	if len(vs) == 0 && len(es) == 0 { // reached through p alone
		q.left -= int(q.weight[i])
		q.emit(i)
		q.weight[i] = 0
		return false
	}
	q.elems[i] = append(es, p)
	q.degree[i] = d
	return true
}

// joinEqual merges nodes with the same neighbourhood into one supervariable. Hashes of the
// neighbourhoods tell most apart; the short lists are compared pair by pair, long ones by hash.
func (q *quotient) joinEqual(lp []int32) {
	if len(lp) < 2 {
		return
	}
	const short = 24
	q.hash = q.hash[:0]
	for _, i := range lp {
		q.hash = append(q.hash, q.hashOf(i))
	}
	if len(lp) > short {
		q.joinByHash(lp)
		return
	}
	for k, i := range lp {
		for l, j := range lp[:k] {
			if q.hash[l] == q.hash[k] && q.join(j, i) {
				break
			}
		}
	}
}

func (q *quotient) joinByHash(lp []int32) {
	clear(q.hashHead)
	for k, i := range lp {
		h, merged := q.hash[k], false
		for _, j := range q.hashHead[h] {
			if q.join(j, i) {
				merged = true
				break
			}
		}
		if !merged {
			q.hashHead[h] = append(q.hashHead[h], i)
		}
	}
}

func (q *quotient) hashOf(i int32) uint32 {
	h := uint32(len(q.vars[i]))*2654435761 + uint32(len(q.elems[i]))*40503
	for _, j := range q.vars[i] {
		h += uint32(j) * 2246822519
	}
	for _, e := range q.elems[i] {
		h += uint32(e) * 3266489917
	}
	return h
}

// join takes node i into j when their neighbourhoods are the same.
func (q *quotient) join(j, i int32) bool {
	if q.weight[j] == 0 || !sameSet(q.vars[i], q.vars[j]) || !sameSet(q.elems[i], q.elems[j]) {
		return false
	}
	q.weight[j] += q.weight[i]
	q.weight[i] = 0
	q.joined[j] = append(q.joined[j], i)
	q.vars[i], q.elems[i] = nil, nil
	return true
}

// sameSet compares two short lists without repeats.
func sameSet(a, b []int32) bool {
	if len(a) != len(b) {
		return false
	}
	for _, x := range a {
		found := false
		for _, y := range b {
			if x == y {
				found = true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// finish appends the nodes that were set aside, and any that never had a neighbour.
func (q *quotient) finish() []int32 {
	q.order = append(q.order, q.last...)
	return q.order
}
