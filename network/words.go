package network

import (
	"math"

	"brimline/fieldbook"
	"brimline/finding"
	"brimline/plane"
)

// shape takes what the book says of lines: the order of marks, and how sharp they are.
func (g *builder) shape() {
	for _, l := range g.book.Lines {
		if l.From != "" {
			continue
		}
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
		if m.Edge > 0 || m.NoEdge {
			g.n.Edge[i] = m.Edge
		}
		g.n.Pegs[i] = m.Kind == "peg" || m.Kind == "benchmark" || (m.Kind == "" && capital(fieldbook.Peg(name)))
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
	for i, name := range g.n.Marks {
		if m := g.book.Mark(name); m.Definition > 0 || m.NoDefinition {
			d[i] = m.Definition
		}
	}
	return d
}

// words takes the sides seen, the points that are gone, the places wanted, and marks that nothing reads.
func (g *builder) words() {
	for _, s := range g.book.Sides {
		m, ok1 := g.n.ByName[s.Mark]
		a, ok2 := g.n.ByName[s.Line[0]]
		b, ok3 := g.n.ByName[s.Line[1]]
		if ok1 && ok2 && ok3 {
			g.n.Sides = append(g.n.Sides, Side{Mark: m, A: a, B: b, Left: s.Left})
		}
	}
	for _, name := range g.book.Gone {
		if i, ok := g.n.ByName[name]; ok {
			if g.n.Gone == nil {
				g.n.Gone = make([]bool, len(g.n.Marks))
			}
			g.n.Gone[i] = true
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
