package network

import (
	"slices"

	"brimline/fieldbook"
)

// bringAlong lists the free blocks of the readings, in the order of the book.
func (g *builder) bringAlong() {
	g.own, g.tool = make([]int, len(g.book.Readings)), map[string]int{}
	for i := range g.book.Readings {
		r := &g.book.Readings[i]
		g.own[i] = -1
		switch r.Kind {
		case "straight":
			g.own[i] = g.add(Free{Kind: "straight", Size: 2})
		case "arc":
			g.own[i] = g.add(Free{Kind: "arc", Size: 3})
		case "bow":
			if _, ok := g.middle(r.Marks); !ok {
				g.own[i] = g.rise(r)
			}
		}
		if lengthKind(r.Kind) {
			g.solvedTool(r.Tool)
		}
	}
	g.up = heights{g: g}
	g.up.number()
}

func (g *builder) add(f Free) int {
	g.n.Free = append(g.n.Free, f)
	return len(g.n.Free) - 1
}

// lengthKind says that a kind reads one length, to which its tool's zero and scale apply. A width is
// none: a rule has no hook.
func lengthKind(kind string) bool {
	return slices.Contains([]string{"tie", "bow", "along", "round", "clear"}, kind)
}

// rise is the block of a chord: bows of the same chord that bulge the same way, or do not say
// which, share it.
func (g *builder) rise(r *fieldbook.Taken) int {
	a, b := g.n.ByName[r.Marks[0]], g.n.ByName[r.Marks[1]]
	for i := range g.n.Free {
		f := &g.n.Free[i]
		if f.Kind != "bow" || !slices.Contains(f.Marks, a) || !slices.Contains(f.Marks, b) {
			continue
		}
		if f.Toward == "" {
			f.Toward = r.Toward
		}
		if r.Toward == "" || r.Toward == f.Toward {
			return i
		}
	}
	return g.add(Free{Kind: "bow", Size: 1, Marks: []int{a, b}, Toward: r.Toward})
}

// middle is the middle one of the marks that readings name between the ends of a chord, on an arc
// that a line says to join them.
func (g *builder) middle(chord []string) (mark int, ok bool) {
	for _, l := range g.book.Lines {
		for _, run := range l.Runs {
			last := len(run.Marks) - 1
			if run.Kind != "arc" || last < 2 || !slices.Contains(chord, run.Marks[0]) || !slices.Contains(chord, run.Marks[last]) || run.Marks[0] == run.Marks[last] {
				continue
			}
			var inner []int
			for _, m := range run.Marks[1:last] {
				if i, read := g.n.ByName[m]; read {
					inner = append(inner, i)
				}
			}
			if n := len(inner); n > 0 {
				return inner[n/2], true
			}
		}
	}
	return 0, false
}

// solvedTool takes a block for a tool whose zero or scale is to be found.
func (g *builder) solvedTool(name string) {
	t, ok := g.book.Tool(name)
	if _, have := g.tool[name]; !ok || have || !t.SolveZero && !t.SolveScale {
		return
	}
	f := Free{Kind: "tool", Name: name, Zero: t.SolveZero, Scale: t.SolveScale}
	if f.Zero {
		f.Size++
	}
	if f.Scale {
		f.Size++
	}
	g.tool[name] = g.add(f)
}

// extra tells a reading which free blocks it touches, and what of its tool is known.
func (g *builder) extra(o *Obs, r *fieldbook.Taken) {
	if m, ok := g.middle(r.Marks); ok && r.Kind == "bow" {
		o.Marks = append(o.Marks, m)
	}
	if o.Free = g.own[o.Reading]; o.Free >= 0 {
		o.Extra = append(o.Extra, g.n.FreeBlock(o.Free))
	}
	g.slope(o, r)
	t, ok := g.book.Tool(r.Tool)
	if !ok || !lengthKind(r.Kind) {
		return
	}
	o.Zero = t.Zero
	if t.Scale != 0 {
		o.Scale = t.Scale
	}
	o.Scale /= 1 + g.book.Stretch(r.Reading)
	if f, ok := g.tool[r.Tool]; ok {
		o.SolveZero, o.SolveScale = t.SolveZero, t.SolveScale
		o.Extra = append(o.Extra, g.n.FreeBlock(f))
		if o.Free < 0 {
			o.Free = f
		}
	}
}
