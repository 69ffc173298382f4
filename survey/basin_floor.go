package survey

import (
	"math"

	"brimline/basin"
	"brimline/fieldbook"
	"brimline/finding"
)

// soundings are the points of the floor: marks that the book's floor names, marks of the kind floor, and
// marks with a depth that stand in no line but a wall foot, and in no step or ledge. They need a place and a height.
func (y *body) soundings() {
	g := y.g
	floor := y.floorMarks()
	rim := g.sol.FitFrame(y.line.Marks) // a place counts against the rim, whatever the book's frame holds
	var open []string
	for i, name := range g.net.Marks {
		if !floor[name] {
			continue
		}
		h, held := y.up.mark(i)
		p, placed := y.at(name)
		switch {
		case held && !placed:
			open = append(open, name)
		case held:
			c := rim.MarkCov(i)
			y.point[name] = len(y.spec.Floor)
			y.spec.Floor = append(y.spec.Floor, basin.Sounding{Name: name, At: p, Height: h, Place: g.factor * math.Sqrt(math.Max(0, (c[0]+c[2])/2))})
		}
	}
	if len(open) > 0 {
		g.found = append(g.found, finding.Finding{Code: "depth-placeless", Marks: open})
	}
}

// floorMarks are the names of the marks that may be points of the floor.
func (y *body) floorMarks() map[string]bool {
	b := y.g.book
	out, stands := map[string]bool{}, map[string]bool{}
	for _, l := range b.Lines {
		for _, m := range l.MarkNames() {
			stands[m] = stands[m] || l.Edge != "wall-foot"
		}
	}
	for _, s := range b.Steps {
		for _, m := range s.MarkNames() {
			stands[m] = true
		}
	}
	for _, l := range b.Ledges {
		for _, m := range fieldbook.MarksOf(l.Runs) {
			stands[m] = true
		}
	}
	for i := range b.Readings {
		if r := &b.Readings[i]; r.Kind == "depth" && counts(r) && !stands[r.Marks[0]] {
			out[r.Marks[0]] = true
		}
	}
	for _, m := range b.Marks {
		if m.Kind == "floor" {
			out[m.Name] = true
		}
	}
	for _, m := range b.Floor.MarkNames() {
		if !among(y.line.Names, m) {
			out[m] = true
		}
	}
	return out
}

// creases are breaks, pad and toe, by the points that have a place and a depth.
func (y *body) creases() {
	f := y.g.book.Floor
	for _, b := range f.Breaks {
		if list := y.points(b); len(list) > 1 {
			y.spec.Breaks = append(y.spec.Breaks, list)
		}
	}
	y.spec.Pad = y.points(f.Pad)
	if n := len(y.spec.Pad); n > 1 && y.spec.Pad[0] == y.spec.Pad[n-1] {
		y.spec.Pad = y.spec.Pad[:n-1]
	}
	if list := y.points(f.Toe); len(list) > 1 {
		y.spec.Toes = append(y.spec.Toes, list)
	}
}

func (y *body) points(marks []string) []int {
	var out []int
	for _, m := range marks {
		if i, ok := y.point[m]; ok {
			out = append(out, i)
		}
	}
	return out
}

// coves lie below the rim, from one of its marks to another in the direction of its line.
func (y *body) coves() {
	for _, c := range y.g.book.Floor.Coves {
		root := c.Line
		if l, ok := y.g.book.Parent(c.Line); ok {
			root = l.Root.Name
		}
		if c.Line != "" && root != y.line.Name {
			continue
		}
		out := basin.Cove{Round: c.Shape != "bevel", Size: c.Size}
		if c.From != "" || c.To != "" {
			var from, to bool
			out.From, _, from = y.station(c.From)
			out.To, _, to = y.station(c.To)
			if !from || !to {
				continue
			}
		}
		y.spec.Coves = append(y.spec.Coves, out)
	}
}
