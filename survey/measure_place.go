package survey

import (
	"errors"
	"slices"
	"strings"

	"brimline/outline"
	"brimline/plane"
	"brimline/unit"
)

// Misplaced says why a place cannot be measured from or to.
type Misplaced struct {
	Place    string `json:"place"` // as asked
	Code     string `json:"code"`
	Text     string `json:"text"`
	Expected string `json:"expected"` // what to write or to read instead
}

// Error is the text, with what is expected.
func (e *Misplaced) Error() string {
	if e.Expected == "" {
		return e.Text
	}
	return e.Text + "; " + e.Expected
}

// end is one end of a check line: a mark, a spot on a line, or (whole) a line.
type end struct {
	label string
	mark  int // of the mark, or whose foot the spot is; −1 none
	spot  *outline.Spot
	line  int // of a spot, or the whole line; −1 none
	whole bool
	at    plane.Point // inner datum
}

// add puts the end into a figure.
func (e end) add(f *outline.Measure, by plane.Point) {
	if e.spot != nil {
		f.Spot(e.spot, by)
	} else {
		f.Mark(e.mark, by)
	}
}

// find understands a place. A mark's name goes before everything else; text behind @ that is a
// mark's name means the mark, else a length.
func (r *Ruler) find(text string) (end, error) {
	if i := r.cornered(text); i >= 0 {
		return r.onLine(text, i, text)
	}
	if r.known(text) {
		return r.atMark(text)
	}
	for i, l := range r.g.lines {
		if text == l.Name {
			_, err := r.line(text, i)
			return end{label: text, mark: -1, line: i, whole: true}, err
		}
		if on, rest, ok := strings.Cut(text, "@"); ok && on == l.Name {
			return r.onLine(text, i, strings.TrimSpace(rest))
		}
	}
	for _, l := range r.g.book.Lines {
		if on, _, _ := strings.Cut(text, "@"); on == l.Name {
			return end{}, r.pointless(text, l.Name)
		}
	}
	return end{}, r.unknown(text)
}

// pointless is a line whose points nothing can be said of.
func (r *Ruler) pointless(text, line string) error {
	return &Misplaced{text, "no-points", "line " + line + " has no points of its own to measure from: its marks lie in one place, or it runs beside another line",
		"name a mark, or the line that it runs beside"}
}

func (r *Ruler) atMark(text string) (end, error) {
	m, ok := r.g.net.ByName[text]
	if !ok || r.Marks[text].X == nil {
		return end{}, r.g.unfixed(text, text)
	}
	return end{label: text, mark: m, line: -1, at: r.g.sol.X.Point(m)}, nil
}

// line readies a line for questions.
func (r *Ruler) line(text string, i int) (*outline.Held, error) {
	l := r.g.lines[i]
	if len(l.Waits) > 0 || !r.g.solved() {
		return nil, r.g.unfixed(text, l.Waits...)
	}
	if r.held[i] == nil {
		r.held[i] = outline.Hold(l)
	}
	if r.held[i] == nil {
		return nil, r.pointless(text, l.Name)
	}
	return r.held[i], nil
}

func (r *Ruler) onLine(text string, i int, rest string) (end, error) {
	h, err := r.line(text, i)
	if err != nil {
		return end{}, err
	}
	l := r.g.lines[i]
	if r.cornered(rest) == i {
		return atCorner(h, text, rest, i)
	}
	if r.known(rest) {
		e, err := r.atMark(rest)
		if err != nil {
			err.(*Misplaced).Place = text
			return end{}, err
		}
		spot, _ := h.Foot(e.mark)
		return end{label: l.Name + "@" + rest, mark: e.mark, spot: spot, line: i, at: spot.At}, nil
	}
	style := unit.StyleFor(r.g.book.Units.Length)
	metres, err := unit.ParseLength(rest, r.g.book.Units.Length)
	if err != nil {
		return end{}, r.unread(text, rest, err)
	}
	spot, ok := h.Along(metres)
	if !ok {
		return end{}, &Misplaced{text, "off-line", "there is no point " + style.LengthUnit(metres) + " along line " + l.Name + " from its first mark, " + l.Names[0],
			"choose 0 to " + style.LengthUnit(h.Reach())}
	}
	return end{label: l.Name + "@" + style.LengthUnit(metres), mark: -1, spot: spot, line: i, at: spot.At}, nil
}

// cornered is the line that has an unreached corner of a name, −1 none.
func (r *Ruler) cornered(name string) int {
	return slices.IndexFunc(r.g.lines, func(l *outline.Line) bool {
		return slices.ContainsFunc(l.Corners, func(c outline.CornerFound) bool { return c.Name == name })
	})
}

func atCorner(h *outline.Held, text, name string, line int) (end, error) {
	spot, ok := h.Corner(name)
	if !ok {
		l := h.Line().Name
		return end{}, &Misplaced{text, "rounded", "corner " + name + " of line " + l + " is rounded, so that no point of the edge is there", "name a point of its arc by its length: " + l + "@3.20"}
	}
	return end{label: name, mark: -1, spot: spot, line: line, at: spot.At}, nil
}

// unread is text behind @ that is neither a mark nor a length.
func (r *Ruler) unread(text, rest string, err error) error {
	var e *unit.Error
	if !errors.As(err, &e) || e.Code == unit.Unreadable || e.Code == unit.Empty {
		return r.unknown(text, rest)
	}
	return &Misplaced{text, e.Code, text + ": " + e.Error(), ""}
}

// known says that the book has a mark of the name, with or without a place.
func (r *Ruler) known(name string) bool {
	if _, ok := r.g.net.ByName[name]; ok {
		return true
	}
	return slices.Contains(r.g.unread(), name)
}

// unread are the marks that the book names and no reading touches.
func (g *gather) unread() []string {
	var out []string
	for _, l := range g.book.Lines {
		out = append(out, l.MarkNames()...)
	}
	for _, f := range g.found {
		if f.Code == "mark-unread" {
			out = append(out, f.Marks...)
		}
	}
	return slices.DeleteFunc(out, func(n string) bool { _, ok := g.net.ByName[n]; return ok })
}

// unfixed says of marks what has to be read before they can be measured to.
func (g *gather) unfixed(text string, marks ...string) *Misplaced {
	out := &Misplaced{Place: text, Code: "unfixed", Text: "the readings do not fix " + strings.Join(marks, ", ") + " yet", Expected: "tape to it from two marks that are fixed"}
	for _, f := range g.found {
		if !slices.ContainsFunc(f.Marks, func(m string) bool { return slices.Contains(marks, m) }) || f.Cure(nil) == "" {
			continue
		}
		switch f.Code {
		case "unfixed":
			out.Expected = f.Cure(g.show())
			return out
		case "mark-unread", "not-used", "cannot-meet":
			out.Expected = f.Text(g.show()) + ": " + f.Cure(g.show())
			return out
		}
	}
	return out
}

// sizeless is an error where nothing in the book gives a length.
func (g *gather) sizeless() error {
	for _, f := range g.found {
		if f.Code == "no-scale" {
			return &Misplaced{Code: f.Code, Text: f.Text(g.show()), Expected: f.Cure(g.show())}
		}
	}
	return nil
}
