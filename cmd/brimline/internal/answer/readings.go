package answer

import (
	"strings"

	"brimline/fieldbook"
	"brimline/survey"
	"brimline/unit"
)

// readings tables what was read, as typed, and what the figure makes of it.
func readings(r *survey.Result, m measure) string {
	t := table{
		title: "Readings (off: adjusted less read; could hide: the smallest error that would show; both in " + m.smallName() + ")",
		heads: []string{"no.", "reading", "as read", "off", "w", "could hide", "state"},
		right: []bool{true, false, true, true, true, true, false},
	}
	for _, x := range r.Readings {
		f, state := m.of(x.Kind), stateWords(x, m)
		if len(x.Parts) == 0 {
			t.add(x.N, naming(x), asRead(x, f), off(x.Residual, f), ratio(x.W), hides(x.State, x.Detectable, f), state)
			continue
		}
		for i, p := range x.Parts {
			n, name, word := x.N, naming(x)+", "+p.Part, state
			if i > 0 {
				n, name, word = "", "  "+p.Part, ""
			}
			was := nothing // nobody read a figure of what is asserted
			if asserted[x.Kind] == "" {
				was = read(p.Text, p.Value, f)
			}
			t.add(n, name, was, off(p.Residual, f), ratio(p.W), hides(x.State, p.Detectable, f), word)
		}
	}
	return t.String()
}

// asRead is what stood on the tape: of a correction that nobody read, what it corrects.
func asRead(x survey.Reading, f figure) string {
	if x.Computed && x.As != "" {
		return x.As
	}
	if word := asserted[x.Kind]; word != "" && x.Text == "" {
		return word
	}
	return read(x.Text, x.Value, f)
}

// asserted are the words for what a kind says without a figure.
var asserted = map[string]string{"straight": "in line", "arc": "circle", "square": "square"}

// stateWords is the state with its shape, then what a person should know of it.
func stateWords(x survey.Reading, m measure) string {
	text := "  " + x.State
	if s := shapeOf(x.State); s != "" {
		text = s + " " + x.State
	}
	if x.Group != nil {
		text += " (" + itoa(*x.Group) + ")"
	}
	if x.Computed {
		text += ": " + NotReRead(x, m.style)
	}
	if x.Why != "" {
		text += ": " + x.Why
	}
	return text
}

// shapeOf is the shape that goes with the word of a state: filled, half filled, or barred.
func shapeOf(state string) string {
	switch state {
	case "ready", "good", "agrees":
		return "■"
	case "unproven", "lone", "doubtful":
		return "◧"
	case "unfit", "suspect", "disagrees":
		return "⊠"
	}
	return ""
}

// NotReRead says of a correction that nobody went back for what was read and what is used.
func NotReRead(x survey.Reading, style unit.Style) string {
	used := read(x.Text, x.Value, measure{style}.of(x.Kind))
	if x.As == "" {
		return "used " + used + ", not re-read"
	}
	return "as read " + x.As + ", used " + used + ", not re-read"
}

// naming is a reading in the words of the book.
func naming(x survey.Reading) string {
	switch {
	case x.Kind == "offset" && len(x.Marks) == 3:
		return "offset " + x.Marks[0] + " from " + x.Marks[1] + " " + x.Marks[2]
	case fieldbook.Angular(x.Kind) && len(x.Marks) == 3:
		return x.Kind + " " + x.Marks[0] + " " + x.Marks[2] + " at " + x.Marks[1]
	case x.Setup != "":
		return x.Kind + " " + strings.Join(x.Marks, " ") + " from " + x.Setup
	case x.Line+x.Until != "":
		return ofLine(x)
	}
	return x.Kind + " " + strings.Join(x.Marks, " ")
}

// ofLine is a tape along or round a line, or the clear distance to one or to what stands there.
func ofLine(x survey.Reading) string {
	marks := strings.Join(x.Marks, " ")
	switch {
	case x.Until != "":
		return x.Kind + " " + marks + " until " + x.Until
	case x.Kind == "clear":
		return x.Kind + " " + marks + " to " + x.Line
	case x.Kind == "round" && marks != "":
		return x.Kind + " " + x.Line + ", from " + x.Marks[0]
	case x.Kind == "round":
		return x.Kind + " " + x.Line
	}
	return x.Kind + " " + x.Line + ", " + marks
}

// read is the text as typed, else the value.
func read(text string, value float64, f figure) string {
	if text != "" {
		return text
	}
	return f.value(value)
}

func off(v *float64, f figure) string {
	if v == nil {
		return nothing
	}
	return f.small(*v)
}

func ratio(v *float64) string {
	if v == nil {
		return nothing
	}
	return decimal(*v, 1)
}

// hides is "any" where nothing would show a mistake.
func hides(state string, v *float64, f figure) string {
	if v == nil && state == "lone" {
		return "any"
	}
	return f.plus(v)
}
