package network

import (
	"slices"

	"brimline/fieldbook"
	"brimline/finding"
)

// heights numbers the heights that readings touch and finds what joins them.
type heights struct {
	g     *builder
	at    map[string]int // looked up only: by kind and name, the place in Network.Free
	of    [][]int        // by reading: its height blocks, in the order that its kind touches them
	nodes [][]int        // by reading: of a depth below a line the marks that its foot lies between; nil otherwise
	root  []int          // by place in Free: who stands for its group
}

// number takes a block for every height, then joins what readings in force join, picks the height that
// is held, and at last tells each depth below a line which marks of it have a height.
func (h *heights) number() {
	h.at, h.of, h.nodes = map[string]int{}, make([][]int, len(h.g.book.Readings)), make([][]int, len(h.g.book.Readings))
	for i := range h.g.book.Readings {
		r := &h.g.book.Readings[i]
		h.of[i] = h.blocks(r)
		if inForce(r) {
			h.join(h.of[i])
		}
	}
	h.datum()
	for i := range h.g.book.Readings {
		if r := &h.g.book.Readings[i]; r.Kind == "depth" && r.BelowIs == "line" {
			h.belowLine(i, r)
		}
	}
}

// inForce says that a reading takes part in the solution, so that it holds what it touches.
func inForce(r *fieldbook.Taken) bool {
	return !r.Struck && !r.Check && r.Class != "owner" && r.Class != "drawing"
}

// blocks are the heights of one reading; a depth below a line gets the others later.
func (h *heights) blocks(r *fieldbook.Taken) []int {
	switch r.Kind {
	case "level":
		return []int{h.block("height", r.Marks[0]), h.block("height", r.Marks[1])}
	case "staff":
		out := []int{h.block("sight", r.Setup), h.block("height", r.Marks[0])}
		if h.g.book.Setup(r.Setup).SolveCollimation && h.g.book.Sight(r.Reading) > 0 {
			out = append(out, h.block("collimation", r.Tool))
		}
		return out
	case "water":
		return []int{h.block("height", r.Marks[0]), h.block("water", r.Water)}
	case "seen":
		if len(r.Values) > 2 {
			return []int{h.block("height", r.Marks[0]), h.block("pole", r.Setup)}
		}
	case "depth":
		out := []int{h.block("height", r.Marks[0])}
		switch r.BelowIs {
		case "water":
			return append(out, h.block("water", r.Below))
		case "mark":
			return append(out, h.block("height", r.Marks[len(r.Marks)-1]))
		}
		return out
	}
	return nil
}

func (h *heights) block(kind, name string) int {
	key := kind + " " + name
	i, ok := h.at[key]
	if !ok {
		f := Free{Kind: kind, Name: name, Size: 1}
		if kind == "height" {
			f.Marks = []int{h.g.n.ByName[name]}
		}
		i = h.g.add(f)
		h.at[key] = i
	}
	return i
}

// find is who stands for the group of a block.
func (h *heights) find(i int) int {
	for len(h.root) <= i {
		h.root = append(h.root, len(h.root))
	}
	for h.root[i] != i {
		i = h.root[i]
	}
	return i
}

// join makes one group of the heights of a reading; a collimation is none.
func (h *heights) join(blocks []int) {
	for _, b := range blocks {
		if h.g.n.Free[b].Kind == "collimation" {
			continue
		}
		a, c := h.find(blocks[0]), h.find(b)
		h.root[max(a, c)] = min(a, c)
	}
}

// joined says that a block hangs together with the height that is held.
func (h *heights) joined(b int) bool {
	return h.g.n.Level >= 0 && h.find(b) == h.find(h.g.n.Level)
}

// markJoined says so of a mark.
func (h *heights) markJoined(name string) bool {
	b, ok := h.at["height "+name]
	return ok && h.joined(b)
}

// belowLine gives a depth below a line the heights of those marks of it that have one; where none has,
// the line is taken as level, with one height.
func (h *heights) belowLine(i int, r *fieldbook.Taken) {
	for _, m := range h.g.runsOf(r.Below).MarkNames() {
		k, read := h.g.n.ByName[m]
		if read && m != r.Marks[0] && h.markJoined(m) && !slices.Contains(h.nodes[i], k) {
			h.of[i] = append(h.of[i], h.at["height "+m])
			h.nodes[i] = append(h.nodes[i], k)
		}
	}
	if len(h.nodes[i]) < 2 {
		h.nodes[i] = nil
	}
	if len(h.of[i]) == 1 {
		b := h.block("rim", r.Below)
		h.of[i] = append(h.of[i], b)
		if inForce(r) && h.g.n.Level < 0 {
			h.g.n.Level = b
		}
	}
	if inForce(r) {
		h.join(h.of[i])
	}
}

// apart names the groups of heights that nothing joins to the one that is held, with the reading that
// would.
func (h *heights) apart() {
	n := h.g.n
	if n.Level < 0 {
		return
	}
	said := map[int]bool{}
	for b := range n.Free {
		if _, ok := upKinds[n.Free[b].Kind]; !ok || h.joined(b) || said[h.find(b)] {
			continue
		}
		said[h.find(b)] = true
		var marks []string
		cure := ""
		for c := b; c < len(n.Free); c++ {
			if _, ok := upKinds[n.Free[c].Kind]; !ok || h.find(c) != h.find(b) {
				continue
			}
			if n.Free[c].Kind == "height" && h.inForce(c) {
				marks = append(marks, n.Free[c].Name)
			}
			if cure == "" || n.Free[c].Kind != "height" {
				cure = h.joining(&n.Free[c])
			}
		}
		if len(marks) > 0 {
			h.g.found = append(h.g.found, finding.Finding{Code: "heights-apart", Marks: marks, Words: map[string]string{"cure": cure}})
		}
	}
}

// upKinds are the kinds of blocks that are heights, with the reading that would join one to a mark.
var upKinds = map[string]string{
	"height": "level from {mark} to {name}", "sight": "hold the staff on {mark} as well, from set-up {name}", "water": "read how far water {name} lies under {mark}",
	"rim": "level from {mark} to a mark of line {name}", "pole": "see {mark} from {name} as well, with its height",
}

// Upward says that a free block is a height, metres.
func (f *Free) Upward() bool { return upKinds[f.Kind] != "" }
