package plane

// Bend is the fair curve through points with how it answers moves of them: what Fair draws, kept so
// that the derivatives of anything that hangs on its points and tangents can be had.
type Bend struct {
	pts                []Point // no two neighbours equal
	of                 []int   // for each point given its place in pts
	closed             bool
	s                  spans
	half               []float64 // half the sweep of each span as its arc was measured
	tangent            []Point
	turn               []float64 // unknowns: from each chord to the tangent at its beginning
	lower, diag, upper []float64
	start, end         bool // a direction was given there
}

// FairBend is Fair with its workings. ok is false where Fair has no arcs: fewer than two distinct
// points, or two of a closed run.
func FairBend(pts []Point, closed bool, startDir, endDir *Point) (*Bend, bool) {
	b := &Bend{closed: closed, start: startDir != nil, end: endDir != nil}
	b.pts = distinct(pts, closed)
	if n := len(b.pts); n < 2 || n == 2 && closed {
		return nil, false
	}
	k := -1
	for i, p := range pts {
		if i == 0 || p != pts[i-1] {
			k++
		}
		b.of = append(b.of, k%len(b.pts))
	}
	b.s = measure(b.pts, closed)
	b.half = make([]float64, len(b.s.chord))
	for i := range b.half {
		g, _ := b.swept(i)
		b.half[i] = g
	}
	b.lower, b.diag, b.upper, b.turn = fairEquations(b.s, closed, startDir, endDir)
	chords := b.s.chord
	if closed {
		b.turn = solveRing(b.lower, b.diag, b.upper, b.turn)
	} else {
		b.turn = solveBand(b.lower, b.diag, b.upper, b.turn)
		chords = append(chords[:len(chords):len(chords)], chords[len(chords)-1])
	}
	b.tangent = turned(chords, b.turn)
	return b, true
}

// Tangent is the direction of travel at point i as it was given.
func (b *Bend) Tangent(i int) Point { return b.tangent[b.of[i]] }

// Span is the pair of arcs from point i to the next; ok is false where both are one place.
func (b *Bend) Span(i int) (first, second Segment, ok bool) {
	p := b.of[i]
	q := (p + 1) % len(b.pts)
	if p == len(b.pts)-1 && !b.closed || b.of[(i+1)%len(b.of)] == p {
		return first, second, false
	}
	first, second = biarc(b.pts[p], b.tangent[p], b.pts[q], b.tangent[q])
	return first, second, true
}

// swept is half the sweep of span i as measure has it, the mean of the angles under which its
// neighbours see it, and how many these are.
func (b *Bend) swept(i int) (half, seen float64) {
	for _, eye := range b.eyes(i) {
		p, q := b.ends(i)
		half, seen = half+subtended(b.pts[eye], b.pts[p], b.pts[q]), seen+1
	}
	if seen > 0 {
		half /= seen
	}
	return half, seen
}

func (b *Bend) ends(i int) (p, q int) { return i, (i + 1) % len(b.pts) }

// eyes are the points beside span i.
func (b *Bend) eyes(i int) []int {
	n := len(b.pts)
	var out []int
	if b.closed || i > 0 {
		out = append(out, (i-1+n)%n)
	}
	if b.closed || i+2 < n {
		out = append(out, (i+2)%n)
	}
	return out
}

// SpanLength is the length of span i with its derivatives by the directions of the tangents at its
// start and at its end, its points held. A span without length gives zeros.
func (b *Bend) SpanLength(i int) (length, byStart, byEnd float64) {
	at := func(s, e float64) float64 {
		one, two, ok := b.turnedSpan(i, s, e)
		if !ok {
			return 0
		}
		return one.Length() + two.Length()
	}
	return at(0, 0), (at(small, 0) - at(-small, 0)) / (2 * small), (at(0, small) - at(0, -small)) / (2 * small)
}

// SpanPlace is the point at share t of the first (0) or second (1) arc of span i, with its
// derivatives by the same two directions.
func (b *Bend) SpanPlace(i, arc int, t float64) (p, byStart, byEnd Point) {
	at := func(s, e float64) Point {
		one, two, ok := b.turnedSpan(i, s, e)
		switch {
		case !ok:
			return b.pts[b.of[i]]
		case arc == 0:
			return one.At(t)
		}
		return two.At(t)
	}
	half := 1 / (2 * small)
	return at(0, 0), at(small, 0).Sub(at(-small, 0)).Mul(half), at(0, small).Sub(at(0, -small)).Mul(half)
}

// small is the turn of a tangent for central differences, radians: its square, and rounding over
// it, are both far below any use.
const small = 3e-5

// turnedSpan is span i with the tangents at its ends turned.
func (b *Bend) turnedSpan(i int, s, e float64) (first, second Segment, ok bool) {
	first, second, ok = b.Span(i)
	if !ok || s == 0 && e == 0 {
		return first, second, ok
	}
	p := b.of[i]
	q := (p + 1) % len(b.pts)
	first, second = biarc(b.pts[p], b.tangent[p].Turn(s), b.pts[q], b.tangent[q].Turn(e))
	return first, second, true
}
