package fieldbook

import (
	"bytes"
	"strings"
)

// cut is a place in the text and what to put there.
type cut struct {
	at   int
	text string
}

// cuts lists the places where items may be put at the end of a list of the file, the likeliest
// first: which of them is right shows when the result is parsed.
func (p *parsed) cuts(key string, items []string) []cut {
	var value *node
	index := -1
	for i, pr := range p.root.pairs {
		if pr.key == key {
			value, index = pr.value, i
		}
	}
	switch {
	case value == nil && p.root.flow:
		return []cut{p.inBrackets(p.root, []string{`"` + key + `": [` + strings.Join(items, ", ") + "]"})}
	case value == nil:
		return p.block(p.after(len(p.root.pairs)-1), append([]string{key + ":"}, dashes(items)...), p.root.at.column)
	case value.flow:
		return []cut{p.inBrackets(value, items)}
	case value.shape == nothing:
		end := p.source.offset(place{value.at.line + 1, 1})
		return p.block([]int{end}, dashes(items), p.root.at.column)
	}
	return p.block(p.after(index), dashes(items), value.at.column)
}

func dashes(items []string) []string {
	var out []string
	for _, it := range items {
		out = append(out, "- "+it)
	}
	return out
}

// inBrackets puts items before a closing bracket.
func (p *parsed) inBrackets(n *node, items []string) cut {
	text := strings.Join(items, ", ")
	switch {
	case n.comma:
		text = " " + text
	case len(n.items)+len(n.pairs) > 0:
		text = ", " + text
	}
	return cut{p.source.offset(n.end), text}
}

// block makes whole lines of the items, with the file's line ends.
func (p *parsed) block(ends []int, lines []string, column int) []cut {
	eol := "\n"
	if i := bytes.IndexByte(p.source.bytes, '\n'); i > 0 && p.source.bytes[i-1] == '\r' {
		eol = "\r\n"
	}
	text := ""
	for _, l := range lines {
		text += strings.Repeat(" ", column-1) + l + eol
	}
	var out []cut
	for _, end := range ends {
		c := cut{end, text}
		if end > 0 && p.source.bytes[end-1] != '\n' {
			c.text = eol + strings.TrimSuffix(text, eol)
		}
		out = append(out, c)
	}
	return out
}

// after gives the offsets where the value of a key of the top may end: behind its last line
// that is neither blank nor a comment, and right before what follows it. (In a block text a line
// that looks like a comment is none; then the second is right.)
func (p *parsed) after(index int) []int {
	stop := len(p.source.lines) + 1 // the line of what follows
	if index+1 < len(p.root.pairs) {
		stop = p.root.pairs[index+1].at.line
	} else {
		for n := stop - 1; n > 0; n-- {
			if l := bytes.TrimRight(p.source.line(n), " \t\r"); string(l) == "..." || bytes.HasPrefix(l, []byte("... ")) {
				stop = n
				break
			}
		}
	}
	last := stop - 1
	for last > 0 {
		l := bytes.TrimSpace(p.source.line(last))
		if len(l) > 0 && l[0] != '#' {
			break
		}
		last--
	}
	return []int{p.source.offset(place{last + 1, 1}), p.source.offset(place{stop, 1})}
}
