package fieldbook

import "brimline/finding"

// BelowIs says what a name means after `below`: water where some reading, struck or not, is of a
// surface of that name; else line where the book has one; else mark.
func (b *Book) BelowIs(name string) string {
	for _, r := range b.Readings {
		if r.Kind == "water" && r.Water == name {
			return "water"
		}
	}
	if _, ok := b.Line(name); ok {
		return "line"
	}
	return "mark"
}

// Surfaces are the names of the water surfaces that readings in force tell of, in book order.
func (b *Book) Surfaces() []string {
	var out []string
	for _, r := range b.Readings {
		if r.Kind == "water" && !r.Struck && !among(r.Water, out) {
			out = append(out, r.Water)
		}
	}
	return out
}

// below says of every depth what it was read below. A mark is the point that its peg is at the time.
func (b *Book) below(j *judged) {
	moves := j.moves()
	k := -1
	for i, e := range j.items {
		if _, ok := e.Body.(Reading); !ok {
			continue
		}
		k++
		r := &b.Readings[k]
		if r.Kind != "depth" {
			continue
		}
		if r.BelowIs = b.BelowIs(r.Below); r.BelowIs == "mark" {
			r.Marks = append(r.Marks, pointOf(r.Below, moves, e, i))
		}
	}
}

// unreadBody finds what is said of the floor and what stands in the pool whose marks no reading in
// force touches yet; missing gives those of a list.
func (b *Book) unreadBody(missing func([]string) []string) {
	report := func(name string, marks []string) {
		if out := missing(marks); len(out) > 0 {
			b.Findings = append(b.Findings, finding.Finding{Code: "place-order", Marks: out, Words: map[string]string{"name": name}})
		}
	}
	report("floor", b.Floor.MarkNames())
	for _, s := range b.Steps {
		report("steps "+s.Name, append(s.MarkNames(), s.below(b)...))
	}
	for _, l := range b.Ledges {
		report("ledge "+l.Name, append(MarksOf(l.Runs), b.markBelow(l.Down)...))
	}
}

func (b *Book) markBelow(d Down) []string {
	if d.Below == "" || b.BelowIs(d.Below) != "mark" {
		return nil
	}
	return []string{d.Below}
}

func (s Step) below(b *Book) []string {
	var out []string
	for _, t := range s.Treads {
		out = append(out, b.markBelow(t.Down)...)
	}
	return out
}
