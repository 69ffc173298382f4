package draft

import (
	"strings"

	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// readings draws those between two marks: checks with what was read, what the others say and the
// difference; those in doubt with their likeliest cause; the rest on a layer that is off.
func (m *modeller) readings() {
	for _, r := range m.result.Readings {
		if !straightOf(r) {
			continue
		}
		a, okA := m.place(r.Marks[0])
		b, okB := m.place(r.Marks[1])
		if !okA || !okB || a == b {
			continue
		}
		switch {
		case r.State == "agrees" || r.State == "disagrees":
			m.labelled(modelChecks, r, a, b, m.checked(r))
		case stands(r.State):
			m.labelled(modelDoubt, r, a, b, m.doubted(r))
		case tied(r):
			m.add(modelReadings, sheet.Grey, sheet.Line(a, b))
		}
	}
}

// labelled is a line with words along its middle.
func (m *modeller) labelled(l sheet.Layer, r survey.Reading, a, b plane.Point, words string) {
	turn := sheet.Upright(plane.Angle(b.Sub(a)))
	up := plane.Point{X: 1}.Turn(turn).Left()
	m.add(l, look(r.State).ink, sheet.Line(a, b), sheet.Text{
		S: words, At: plane.Lerp(a, b, 0.5).Add(up.Mul(m.mm(1))), Height: m.mm(smallHeight), Anchor: sheet.FootCentre, Turn: turn})
}

// checked says of a check reading: 12 check: read 6.402, computed 6.404, off 2 mm, agrees.
func (m *modeller) checked(r survey.Reading) string {
	fig := m.fig.of(r.Kind)
	t := r.N + " check: read " + fig.length(r.Value)
	if r.Adjusted != nil && r.Residual != nil {
		t += ", computed " + fig.length(*r.Adjusted) + ", off " + fig.whole(abs(*r.Residual))
	}
	return t + ", " + r.State
}

// doubted says of a reading in doubt what it may be.
func (m *modeller) doubted(r survey.Reading) string {
	t := r.N + " " + r.State + ": read " + m.fig.of(r.Kind).length(r.Value)
	if len(r.Likely) > 0 {
		t += ", " + m.likely(r)
	}
	return t
}

// Sizes of the words under a model, in millimetres of paper.
const (
	modelColumn = 120.0
	modelGap    = 12.0
	findingR    = 2.6
)

// findings numbers those that concern marks at their marks, and lists all of them beneath.
func (m *modeller) findings() {
	var lines []string
	for i, f := range m.result.Findings {
		n := itoa(i + 1)
		lines = append(lines, n+" "+f.Severity+": "+sentence(f.Text, f.Cure))
		for _, name := range f.Marks {
			p, ok := m.place(name)
			if !ok {
				continue
			}
			at := p.Add(plane.Point{X: m.mm(findingR), Y: -m.mm(findingR)})
			m.add(modelFindings, sheet.Open, sheet.Circle{Centre: p, R: m.mm(findingR)},
				sheet.Text{S: n, At: at, Height: m.mm(smallHeight), Anchor: sheet.HeadLeft})
		}
	}
	if len(lines) > 0 {
		m.block(modelFindings, modelColumn+modelGap, append([]string{"Findings"}, lines...))
	}
}

// notes say what the file is, how large, and how far it can be trusted.
func (m *modeller) notes(c *canvas) {
	head := m.name()
	if ref := m.book.Job.Ref; ref != "" {
		head += ", " + ref
	}
	lines := []string{head, "Drawn 1:1 in " + m.model.Unit.Name() + ", viewed from above; letters for " + m.model.Scale.String() + "."}
	for _, o := range c.metres {
		lines = append(lines, strings.Join(c.named(o), ", ")+".")
	}
	word := m.result.Shape.State
	if word == "" {
		lines = append(lines, "The shape is not judged yet.")
	} else {
		lines = append(lines, "The shape is "+word+". "+m.meaning(word))
	}
	for _, w := range m.result.Shape.Why {
		lines = append(lines, sentence(w, ""))
	}
	first, rest := m.weakest()
	lines = append(append(lines, first...), rest...)
	lines = append(lines, m.statement(c)...)
	advice := m.reading(c)
	m.block(modelNotes, 0, append(lines, advice[len(advice)-2:]...))
}

// block sets lines beneath the drawing, so many millimetres of paper from its left.
func (m *modeller) block(l sheet.Layer, right float64, lines []string) {
	at := plane.Point{X: m.mm(right), Y: -m.mm(outlineRoom + modelGap)}
	if !m.box.Empty() {
		at = at.Add(m.box.Min)
	}
	for i, line := range lines {
		h := smallHeight
		if i == 0 {
			h = dimHeight
		}
		for _, s := range sheet.Wrap(line, h, false, modelColumn) {
			m.add(l, sheet.Black, sheet.Text{S: s, At: at, Height: m.mm(h)})
			at.Y -= m.mm(1.7 * h)
		}
		at.Y -= m.mm(0.6 * h)
	}
}
