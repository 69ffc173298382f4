package fieldbook

import (
	"sort"
	"strings"
)

// namedLines is what a file says of its lines, for checking what names them: of each the
// description that holds, and the marks that any of its descriptions has.
type namedLines struct {
	said  map[string][]Entry
	holds map[string]Line
	marks map[string][]string
}

func newNamedLines(settings []draft) *namedLines {
	n := &namedLines{said: map[string][]Entry{}, holds: map[string]Line{}, marks: map[string][]string{}}
	for _, d := range settings {
		if l, ok := d.entry.Body.(Line); ok {
			n.said[l.Name] = append(n.said[l.Name], d.entry)
			n.holds[l.Name] = latest(n.said[l.Name]).Body.(Line)
			n.marks[l.Name] = append(n.marks[l.Name], l.MarkNames()...)
		}
	}
	return n
}

// names lists them for a message.
func (n *namedLines) names() string {
	var out []string
	for name := range n.holds { // sorted below
		out = append(out, name)
	}
	sort.Strings(out)
	if len(out) == 0 {
		return "a line of the block lines"
	}
	return "one of " + strings.Join(out, ", ")
}

// root is the line with runs that a line derives from, itself where it has its own; "" where a
// line on the way is missing or they derive from each other in a circle.
func (n *namedLines) root(name string) string {
	for range len(n.holds) + 1 {
		l, ok := n.holds[name]
		switch {
		case !ok:
			return ""
		case l.From == "":
			return name
		}
		name = l.From
	}
	return ""
}

// inCircle says that a line derives from itself over others.
func (n *namedLines) inCircle(name string) bool {
	at := name
	for range len(n.holds) {
		if at = n.holds[at].From; at == name || at == "" {
			break
		}
	}
	return at == name
}

// linesNamed checks that parents of derived lines are there and derive from nothing of theirs, and
// that readings along or to a line name one, and marks of it.
func (b *builder) linesNamed(settings, items []draft) {
	n := newNamedLines(settings)
	for _, d := range settings {
		b.settingLines(n, d)
		l, ok := d.entry.Body.(Line)
		if !ok || l.From == "" || l.From == l.Name {
			continue
		}
		if from, there := n.holds[l.From]; there && l.Profile && from.Edge == "" {
			b.fault(d.at, "missing-key", "line "+quoted(l.Name)+" lies where the profiles say, and "+quoted(l.From)+" says no edge that they begin at", "edge for line "+l.From)
		}
		if _, there := n.holds[l.From]; !there {
			b.fault(d.at, "no-such", "line "+quoted(l.Name)+" derives from "+quoted(l.From)+", which is no line", n.names())
		} else if n.inCircle(l.Name) {
			b.fault(d.at, "cycle", "line "+quoted(l.Name)+" derives from itself over "+quoted(l.From), "a line with runs of its own at the bottom")
		}
	}
	for _, d := range items {
		if r, ok := d.entry.Body.(Reading); ok && d.line.given() {
			b.readAlong(n, d.line, r)
		}
	}
}

// readAlong checks one reading that names a line.
func (b *builder) readAlong(n *namedLines, line Name, r Reading) {
	if _, ok := n.holds[line.text]; !ok {
		b.fault(line.at, "no-such", "no line is called "+quoted(line.text), n.names())
		return
	}
	root := n.root(line.text)
	if root == "" {
		return // answered where the line stands
	}
	if r.Kind == "round" && !n.holds[root].Closed {
		b.fault(line.at, "not-here", "line "+quoted(line.text)+" is open: nothing goes round it", "along two of its marks, or closed: true for the line")
	}
	for _, m := range r.Marks {
		if m == "" {
			continue // answered where it stands
		}
		on := among(m, n.marks[root])
		switch {
		case r.Kind == "clear" && on:
			b.fault(line.at, "self", quoted(m)+" is a mark of "+quoted(line.text)+" itself", "a mark off the line")
		case r.Kind != "clear" && !on:
			b.fault(line.at, "not-on-line", quoted(m)+" is no mark of line "+quoted(line.text), "two marks of that line")
		}
	}
}
