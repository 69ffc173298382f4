package survey

import (
	"slices"
	"strings"
)

// unknown says of a place that the book has no such name, and which come nearest. rest is what
// stands behind the @ of a line that is known.
func (r *Ruler) unknown(text string, rest ...string) error {
	word, names := text, r.g.net.Marks
	out := &Misplaced{Place: text, Code: "unknown-place", Text: "the book has neither a mark nor a line called " + text}
	on, _, cut := strings.Cut(text, "@")
	switch {
	case len(rest) > 0 && rest[0] == "":
		out.Text, out.Expected = text+": behind the @ a length or a mark is missing", "write "+on+"@3.20 or "+on+"@"+r.example()
		return out
	case len(rest) > 0:
		word = rest[0]
		out.Text = text + ": " + word + " is neither a mark nor a length"
	case cut:
		word, names = on, nil
		out.Text = "the book has no line called " + on
		if slices.Contains(r.g.net.Marks, on) {
			out.Text += ", which is a mark"
		}
	}
	if len(rest) == 0 {
		for _, l := range r.g.lines {
			names = append(names[:len(names):len(names)], l.Name)
		}
	}
	if near := nearest(word, names); len(near) > 0 {
		out.Expected = "near it: " + strings.Join(near, ", ")
	}
	return out
}

// example is a mark of the book.
func (r *Ruler) example() string {
	for _, l := range r.g.lines {
		if len(l.Names) > 0 {
			return l.Names[0]
		}
	}
	return "r1"
}

// nearest are the up to three names that take the fewest letters to change, the nearest first, those
// that take as many in the order given; none of which more than half would have to be changed.
func nearest(word string, names []string) []string {
	type near struct {
		name string
		off  int
	}
	var all []near
	for _, n := range names {
		d := letters(strings.ToLower(word), strings.ToLower(n))
		if 2*d <= max(len([]rune(word)), len([]rune(n))) {
			all = append(all, near{n, d})
		}
	}
	slices.SortStableFunc(all, func(a, b near) int { return a.off - b.off })
	var out []string
	for _, n := range all[:min(3, len(all))] {
		out = append(out, n.name)
	}
	return out
}

// letters is how many letters are put in, left out or changed between two words (V. I. Levenshtein,
// Binary codes capable of correcting deletions, insertions and reversals, Soviet Physics Doklady 10,
// 1966).
func letters(a, b string) int {
	x, y := []rune(a), []rune(b)
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		before := row[0]
		row[0] = i + 1
		for j := range y {
			d := before
			if x[i] != y[j] {
				d++
			}
			before = row[j+1]
			row[j+1] = min(d, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(y)]
}
