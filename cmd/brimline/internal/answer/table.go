package answer

import (
	"strings"
	"unicode/utf8"
)

// table is aligned text: a heading, rows of cells, and for each column whether it stands to the
// right (figures) or to the left (words).
type table struct {
	title string
	heads []string
	right []bool
	rows  [][]string
}

func (t *table) add(cells ...string) {
	for i, c := range cells {
		cells[i] = Plain(c)
	}
	t.rows = append(t.rows, cells)
}

// String is empty for a table without rows.
func (t *table) String() string {
	if len(t.rows) == 0 {
		return ""
	}
	width := make([]int, len(t.heads))
	for _, row := range append([][]string{t.heads}, t.rows...) {
		for i, c := range row {
			width[i] = max(width[i], utf8.RuneCountInString(c))
		}
	}
	var b strings.Builder
	b.WriteString(wrap(t.title, "", ""))
	t.line(&b, t.heads, width)
	for _, row := range t.rows {
		t.line(&b, row, width)
	}
	return b.String()
}

// line writes one row with two spaces between columns and none at its end.
func (t *table) line(b *strings.Builder, row []string, width []int) {
	var l strings.Builder
	l.WriteString("  ")
	for i, c := range row {
		if i > 0 {
			l.WriteString("  ")
		}
		fill := strings.Repeat(" ", width[i]-utf8.RuneCountInString(c))
		if t.right[i] {
			l.WriteString(fill + c)
		} else {
			l.WriteString(c + fill)
		}
	}
	b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
}
