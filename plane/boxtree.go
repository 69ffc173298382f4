package plane

// boxTree finds boxes near a place. Neighbours in the list should be neighbours in the plane, as
// the segments of a path are: node k stands over nodes 2k+1 and 2k+2, and the last level over runs
// of leafSize boxes.
type boxTree struct {
	boxes []Box
	nodes []Box
	first int // the first node of the last level
}

const leafSize = 4

func newBoxTree(boxes []Box) boxTree {
	runs := 1
	for runs*leafSize < len(boxes) {
		runs *= 2
	}
	t := boxTree{boxes, make([]Box, 2*runs-1), runs - 1}
	for k := len(t.nodes) - 1; k >= 0; k-- {
		b := EmptyBox()
		if k < t.first {
			b = t.nodes[2*k+1].Join(t.nodes[2*k+2])
		} else {
			for _, x := range t.run(k) {
				b = b.Join(x)
			}
		}
		t.nodes[k] = b
	}
	return t
}

// run are the boxes under a node of the last level.
func (t boxTree) run(node int) []Box {
	from := min((node-t.first)*leafSize, len(t.boxes))
	return t.boxes[from:min(from+leafSize, len(t.boxes))]
}

// each calls f for every box that comes nearer than reach to b, in order, until f says stop.
func (t boxTree) each(b Box, reach float64, f func(i int) (stop bool)) {
	var open [64]int
	n := 1 // the root, node 0
	for n > 0 {
		n--
		k := open[n]
		if t.nodes[k].gap2(b) >= reach*reach {
			continue
		}
		if k < t.first {
			open[n], open[n+1] = 2*k+2, 2*k+1
			n += 2
			continue
		}
		for i, x := range t.run(k) {
			if x.gap2(b) < reach*reach && f((k-t.first)*leafSize+i) {
				return
			}
		}
	}
}

// nearest gives the box whose contents lie nearest to q by distance, which is asked only where it
// may matter; ok is false when none lies nearer than most.
func (t boxTree) nearest(q Point, most float64, distance func(i int) float64) (best int, ok bool) {
	at := Box{q, q}
	var open [64]int
	n := 1
	for n > 0 {
		n--
		k := open[n]
		if t.nodes[k].gap2(at) >= most*most {
			continue
		}
		if k < t.first {
			near, far := 2*k+1, 2*k+2
			if t.nodes[far].gap2(at) < t.nodes[near].gap2(at) {
				near, far = far, near
			}
			open[n], open[n+1] = far, near
			n += 2
			continue
		}
		for i, x := range t.run(k) {
			if x.gap2(at) >= most*most {
				continue
			}
			j := (k-t.first)*leafSize + i
			if d := distance(j); d < most {
				most, best, ok = d, j, true
			}
		}
	}
	return best, ok
}

// gap2 is the square of the distance between two boxes, 0 where they meet.
func (b Box) gap2(o Box) float64 {
	x := max(0, o.Min.X-b.Max.X, b.Min.X-o.Max.X)
	y := max(0, o.Min.Y-b.Max.Y, b.Min.Y-o.Max.Y)
	return x*x + y*y
}
