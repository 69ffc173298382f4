package network

import (
	"brimline/fieldbook"
	"brimline/finding"
)

// Build numbers a book. Files are the bytes that the book names (none in plan readings).
func Build(b *fieldbook.Book, f fieldbook.Files) (*Network, []finding.Finding) {
	return build(b, f, nil)
}

// build numbers a book in which the runs of some lines are held as given.
func build(b *fieldbook.Book, _ fieldbook.Files, held []Line) (*Network, []finding.Finding) {
	g := &builder{book: b, held: held, n: &Network{Base: [2]int{-1, -1}, Level: -1, ByName: map[string]int{}, SetupAt: map[string]int{}}}
	g.number()
	g.shape()
	g.lines()
	g.readings()
	g.base()
	g.words()
	g.up.apart()
	g.n.climbs()
	return g.n, g.found
}

type builder struct {
	book  *fieldbook.Book
	n     *Network
	found []finding.Finding
	own   []int  // by reading: its place in Network.Free, -1 none
	held  []Line // lines whose runs are held
	up    heights
	level []string       // readings along the slope that are taken as level
	tool  map[string]int // by name of a tool that is solved: its place in Network.Free
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
		if r.Setup == "" || r.Kind == "staff" {
			continue
		}
		if _, ok := g.n.SetupAt[r.Setup]; !ok {
			g.n.SetupAt[r.Setup] = len(g.n.Setups)
			g.n.Setups = append(g.n.Setups, r.Setup)
		}
	}
	g.bringAlong()
	n := g.n
	n.Offset = make([]int, 0, len(n.Marks)+len(n.Setups)+len(n.Free)+1)
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
	for _, f := range n.Free {
		n.Offset = append(n.Offset, at)
		at += f.Size
	}
	n.Offset = append(n.Offset, at)
	n.Edge = make([]float64, len(n.Marks))
	n.Pegs = make([]bool, len(n.Marks))
}
