package network

import (
	"strings"

	"brimline/fieldbook"
)

// datum picks the height that is held at 0: that of the first mark whose `at` has three numbers, else
// of the first mark of a level or staff reading, else of the first mark under water, else of the first
// seen with a height; else what the first depth was read below. The heights that the book wants are
// listed beside it.
func (h *heights) datum() {
	n := h.g.n
	n.Level = -1
	for _, m := range h.g.book.Marks {
		b, ok := h.at["height "+m.Name]
		if !ok || len(m.At) < 3 || !h.inForce(b) {
			continue
		}
		if n.Level < 0 {
			n.Level = b
		}
		n.Heights = append(n.Heights, WantedHeight{Mark: n.ByName[m.Name], Z: m.At[2]})
	}
	for _, kinds := range [][]string{{"level", "staff"}, {"water"}, {"seen"}} {
		if n.Level < 0 {
			n.Level = h.first(kinds)
		}
	}
	for i := range h.g.book.Readings {
		if r := &h.g.book.Readings[i]; n.Level < 0 && inForce(r) && r.Kind == "depth" && len(h.of[i]) > 1 {
			n.Level = h.of[i][1]
		}
	}
}

// first is the height of the mark of the first reading in force of some kinds; −1 without one.
func (h *heights) first(kinds []string) int {
	for i := range h.g.book.Readings {
		r := &h.g.book.Readings[i]
		for _, k := range kinds {
			if r.Kind == k && inForce(r) && len(h.of[i]) > 0 {
				return h.at["height "+r.Marks[0]]
			}
		}
	}
	return -1
}

// inForce says that a reading in force touches a block.
func (h *heights) inForce(b int) bool {
	for i := range h.g.book.Readings {
		if !inForce(&h.g.book.Readings[i]) {
			continue
		}
		for _, c := range h.of[i] {
			if c == b {
				return true
			}
		}
	}
	return false
}

// joining is the reading that would join a block to the height that is held.
func (h *heights) joining(f *Free) string {
	at := &h.g.n.Free[h.g.n.Level]
	mark := at.Name
	if at.Kind != "height" {
		mark = "a mark whose height is known"
	}
	return strings.NewReplacer("{mark}", mark, "{name}", f.Name).Replace(upKinds[f.Kind])
}

// climbs gives the blocks of the heights of both ends of a tie along the slope; false where they are
// not solved.
func (h *heights) climbs(r *fieldbook.Taken) (a, b int, ok bool) {
	if !h.markJoined(r.Marks[0]) || !h.markJoined(r.Marks[1]) {
		return 0, 0, false
	}
	return h.at["height "+r.Marks[0]], h.at["height "+r.Marks[1]], true
}
