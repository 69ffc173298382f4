package simulate

import (
	"fmt"
	"strconv"
	"strings"
)

// book writes the case as a field book.
func book(c Case) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "brimline: 1\njob: {name: \"%s, %s, seed %d\", measured: 2026-05-14}\n", c.Shape.Name(), c.Method.Name(), c.Seed)
	fmt.Fprintf(&b, "units: {length: %s}\ntools:\n", c.Unit)
	for _, t := range c.Tools {
		fmt.Fprintf(&b, "  %s: {sigma: %s%s}\n", t.Name, Millimetres(t.Sigma), partsPerMillion(t.PPM))
	}
	writeMarks(&b, c)
	writeSetups(&b, c.Setups)
	b.WriteString("readings:\n")
	for _, x := range c.Readings {
		fmt.Fprintf(&b, "- %s\n", x.Entry())
	}
	if c.Side != nil {
		fmt.Fprintf(&b, "- {side: %s, of: A B, hand: %s}\n", c.Side.Mark, handName(c.Side.Left))
	}
	writeRim(&b, c.Rim)
	return []byte(b.String())
}

func writeMarks(b *strings.Builder, c Case) {
	b.WriteString("marks:\n")
	for _, p := range c.Pegs {
		fmt.Fprintf(b, "  %s: {kind: peg}\n", p)
	}
	for i, d := range c.Rim.Own {
		fmt.Fprintf(b, "  %s: {kind: rim, definition: %s}\n", c.Order[i], Millimetres(d))
	}
}

func writeSetups(b *strings.Builder, setups []Setup) {
	head := "setups:\n"
	for _, s := range setups {
		if s.Sigma > 0 && !s.Own {
			fmt.Fprintf(b, "%s  %s: {sigma: %s}\n", head, s.Name, Millimetres(s.Sigma))
			head = ""
		}
	}
}

func writeRim(b *strings.Builder, r Rim) {
	fmt.Fprintf(b, "lines:\n  rim:\n    closed: true\n    edge: %s\n    state: found\n", r.Edge)
	if r.Definition > 0 {
		fmt.Fprintf(b, "    definition: %s\n", Millimetres(r.Definition))
	}
	b.WriteString("    runs:\n")
	for _, run := range r.Runs {
		fmt.Fprintf(b, "    - %s\n", run.Entry(r.JointsSaid))
	}
}

// Entry is the run as an item of the book's runs.
func (r Run) Entry(joint bool) string {
	said := ""
	if joint {
		said = ", joint: " + r.Joint
	}
	return fmt.Sprintf("{%s: [%s]%s}", r.Kind, strings.Join(r.Marks, ", "), said)
}

// Entry is the reading as an item of the book's readings.
func (x Reading) Entry() string {
	own := ""
	switch len(x.Own) {
	case 1:
		own = ", sigma: " + Millimetres(x.Own[0])
	case 2:
		own = ", sigma: [" + Millimetres(x.Own[0]) + ", " + Millimetres(x.Own[1]) + "]"
	}
	switch x.Kind {
	case "tie":
		return fmt.Sprintf("{tie: %s %s, is: %s, tool: %s%s%s}", x.Marks[0], x.Marks[1], quoted(x.Text[0]), x.Tool, own, x.signed())
	case "offset":
		return fmt.Sprintf("{offset: %s, line: %s %s, at: %s, %s: %s%s}", x.Marks[0], x.Marks[1], x.Marks[2],
			x.Text[0], handName(x.Typed[1] >= 0), x.Text[1], own)
	case "seen":
		flip := ""
		if x.Flip {
			flip = ", flip: true"
		}
		return fmt.Sprintf("{seen: %s, setup: %s, at: [%s, %s]%s%s}", x.Marks[0], x.Setup, x.Text[0], x.Text[1], flip, own)
	}
	panic("simulate: no such kind of reading: " + x.Kind)
}

// signed is what the entry says of when, by whom and what for.
func (x Reading) signed() string {
	said := ""
	if x.Check {
		said += ", check: true"
	}
	if x.Time != "" {
		said += ", time: \"" + x.Time + "\""
	}
	if x.By != "" {
		said += ", by: " + x.By
	}
	return said
}

// quoted puts feet and inches in quotes; a plain figure stays.
func quoted(text string) string {
	if strings.Contains(text, "'") {
		return "\"" + text + "\""
	}
	return text
}

func handName(left bool) string {
	if left {
		return "left"
	}
	return "right"
}

// Millimetres writes a length as the book states a sigma: "3.5 mm".
func Millimetres(m float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(1000*m, 'f', 1, 64), ".0") + " mm"
}

func partsPerMillion(ppm float64) string {
	if ppm == 0 {
		return ""
	}
	return ", ppm: " + strconv.FormatFloat(ppm, 'f', 0, 64)
}
