package network

import (
	"math"

	"brimline/fieldbook"
	"brimline/finding"
	"brimline/plane"
)

// Build numbers a book. Files are the bytes that the book names (none in plan readings).
func Build(b *fieldbook.Book, _ fieldbook.Files) (*Network, []finding.Finding) {
	g := &builder{book: b, n: &Network{Base: [2]int{-1, -1}, ByName: map[string]int{}, SetupAt: map[string]int{}}}
	g.number()
	g.shape()
	g.readings()
	g.base()
	g.words()
	return g.n, g.found
}

type builder struct {
	book  *fieldbook.Book
	n     *Network
	found []finding.Finding
}

func (g *builder) mark(name string) int {
	if i, ok := g.n.ByName[name]; ok {
		return i
	}
	i := len(g.n.Marks)
	g.n.ByName[name] = i
	g.n.Marks = append(g.n.Marks, name)
	return i
}

// number gives every mark and set-up that a reading names its place, in the order of the book.
func (g *builder) number() {
	for _, r := range g.book.Readings {
		for _, m := range r.Marks {
			g.mark(m)
		}
		if r.Setup == "" {
			continue
		}
		if _, ok := g.n.SetupAt[r.Setup]; !ok {
			g.n.SetupAt[r.Setup] = len(g.n.Setups)
			g.n.Setups = append(g.n.Setups, r.Setup)
		}
	}
	n := g.n
	n.Offset = make([]int, 0, len(n.Marks)+len(n.Setups)+1)
	at := 0
	for range n.Marks {
		n.Offset = append(n.Offset, at)
		at += 2
	}
	for _, s := range n.Setups {
		n.Offset = append(n.Offset, at)
		at += 3
		if g.book.Setup(s).SolveScale {
			at++
		}
	}
	n.Offset = append(n.Offset, at)
	n.Edge = make([]float64, len(n.Marks))
	n.Pegs = make([]bool, len(n.Marks))
}

// shape takes what the book says of lines: the order of marks, and how sharp they are.
func (g *builder) shape() {
	for _, l := range g.book.Lines {
		p := Path{Name: l.Name, Closed: l.Closed}
		for _, m := range l.MarkNames() {
			if i, ok := g.n.ByName[m]; ok {
				p.Marks = append(p.Marks, i)
				g.n.Edge[i] = math.Max(g.n.Edge[i], l.Fuzz)
			}
		}
		g.n.Paths = append(g.n.Paths, p)
	}
	for i, name := range g.n.Marks {
		m := g.book.Mark(name)
		if m.Edge > 0 {
			g.n.Edge[i] = m.Edge
		}
		g.n.Pegs[i] = m.Kind == "peg" || m.Kind == "benchmark" || (m.Kind == "" && capital(name))
	}
}

// capital: pegs are named with a capital letter by custom.
func capital(name string) bool { return len(name) <= 2 && name[0] >= 'A' && name[0] <= 'Z' }

// definition is the pointing uncertainty of each mark: its own, else that of a line through it.
func (g *builder) definition() []float64 {
	d := make([]float64, len(g.n.Marks))
	for _, l := range g.book.Lines {
		for _, m := range l.MarkNames() {
			if i, ok := g.n.ByName[m]; ok {
				d[i] = math.Max(d[i], l.Definition)
			}
		}
	}
	for _, m := range g.book.Marks {
		if i, ok := g.n.ByName[m.Name]; ok && m.Definition > 0 {
			d[i] = m.Definition
		}
	}
	return d
}

func (g *builder) readings() {
	def := g.definition()
	var owner, sketch, tall, zeroed []string
	for i := range g.book.Readings {
		r := &g.book.Readings[i]
		k, ok := KindNamed(r.Kind)
		if !ok {
			continue
		}
		o := g.obs(i, r, k, def)
		switch {
		case r.Struck:
			o.Use = false
		case r.Class == "owner":
			o.Use = false
			owner = append(owner, r.N)
		case r.Class == "drawing":
			o.Use, o.Sketch = false, true
			sketch = append(sketch, r.N)
		}
		if len(r.Values) > len(o.Values) {
			tall = append(tall, r.N)
		}
		if t, ok := g.book.Tool(r.Tool); ok && k.Name() != "tie" && (t.Zero != 0 || t.Scale != 0 && t.Scale != 1) {
			zeroed = append(zeroed, r.N)
		}
		g.n.Obs = append(g.n.Obs, o)
	}
	if len(tall) > 0 {
		g.found = append(g.found, finding.Finding{Code: "height-unused", Readings: tall})
	}
	if len(zeroed) > 0 {
		g.found = append(g.found, finding.Finding{Code: "zero-ties-only", Readings: zeroed})
	}
	if len(owner) > 0 {
		g.found = append(g.found, finding.Finding{Code: "owner-word", Readings: owner})
	}
	if len(sketch) > 0 {
		g.found = append(g.found, finding.Finding{Code: "sketch", Readings: sketch})
	}
}

func (g *builder) obs(i int, r *fieldbook.Taken, k Kind, def []float64) Obs {
	o := Obs{Kind: k, Reading: i, Setup: -1, Free: -1, Flip: r.Flip, Scale: 1, Use: true}
	for _, m := range r.Marks {
		o.Marks = append(o.Marks, g.n.ByName[m])
	}
	if r.Setup != "" {
		s := g.n.SetupAt[r.Setup]
		o.Setup = int(g.n.SetupBlock(s))
		o.Solve = g.n.Dim(g.n.SetupBlock(s)) == 4
	}
	parts := len(k.Parts(&o))
	for p := range parts {
		o.Values = append(o.Values, r.Values[p].Metres)
	}
	if t, ok := g.book.Tool(r.Tool); ok && k.Name() == "tie" {
		o.Zero = t.Zero
		if t.Scale != 0 {
			o.Scale = t.Scale
		}
	}
	o.SD = make([]float64, parts)
	g.sigma(&o, r, def)
	o.Blocks = k.Touches(&o)
	for _, b := range o.Blocks {
		o.At = append(o.At, g.n.Offset[b])
		o.Size += g.n.Dim(b)
	}
	return o
}

// sigma: the reading's own, else its set-up's or tool's, else the book's rule for the kind, else
// the kind's default; the pointing at each mark is added in squares.
func (g *builder) sigma(o *Obs, r *fieldbook.Taken, def []float64) {
	t, hasTool := g.book.Tool(r.Tool)
	setup := g.book.Setup(r.Setup).Sigma
	rule := g.book.Rules.Sigma[r.Kind]
	drawing := r.Class == "drawing"
	o.Kind.Sigma(o, o.SD)
	for k := range o.SD {
		switch {
		case len(r.Sigma) == 1:
			o.SD[k] = r.Sigma[0]
		case k < len(r.Sigma):
			o.SD[k] = r.Sigma[k]
		case setup > 0:
			o.SD[k] = setup
		case hasTool && t.Sigma > 0:
			o.SD[k] = math.Hypot(t.Sigma, t.PPM*1e-6*o.Values[k])
		case hasTool && t.PPM > 0: // says nothing of the reading itself: the kind's default stays
			o.SD[k] = math.Hypot(o.SD[k], t.PPM*1e-6*o.Values[k])
		case drawing:
			o.SD[k] = fieldbook.DefaultSigma(r.Kind, o.Kind.Parts(o)[k], r.Class, 0, 0)
		case rule > 0:
			o.SD[k] = rule
		}
		for _, m := range o.Kind.Touches(o) {
			if int(m) < len(g.n.Marks) {
				o.SD[k] = math.Hypot(o.SD[k], def[m])
			}
		}
		o.SD[k] = math.Max(o.SD[k], leastSD)
	}
}

// leastSD keeps a stated sigma of nought from making a weight infinite.
const leastSD = 1e-6

// base picks the datum of FORMAT: peg A as origin, else the first mark of the first tie; peg B on
// +x, else that tie's other mark; without tie and peg A the first two marks named. Struck
// readings and drawings do not count.
func (g *builder) base() {
	used := map[int]bool{}
	var first, ofA [2]int
	ties, tiesOfA := false, false
	a, namedA := g.n.ByName["A"]
	for i := range g.n.Obs {
		o := &g.n.Obs[i]
		if !o.Use {
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

// words takes the sides seen, the places wanted, and marks that nothing reads.
func (g *builder) words() {
	for _, s := range g.book.Sides {
		m, ok1 := g.n.ByName[s.Mark]
		a, ok2 := g.n.ByName[s.Line[0]]
		b, ok3 := g.n.ByName[s.Line[1]]
		if ok1 && ok2 && ok3 {
			g.n.Sides = append(g.n.Sides, Side{Mark: m, A: a, B: b, Left: s.Left})
		}
	}
	var unread []string
	for _, m := range g.book.Marks {
		i, ok := g.n.ByName[m.Name]
		if !ok {
			unread = append(unread, m.Name)
			continue
		}
		if len(m.At) >= 2 {
			g.n.Wanted = append(g.n.Wanted, Wanted{Mark: i, At: plane.Point{X: m.At[0], Y: m.At[1]}})
		}
	}
	if len(unread) > 0 {
		g.found = append(g.found, finding.Finding{Code: "mark-unread", Marks: unread})
	}
}
