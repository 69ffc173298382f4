package answer

import (
	"strings"

	"brimline/survey"
)

// readings tables what was read, as typed, and what the figure makes of it.
func readings(r *survey.Result, m measure) string {
	t := table{
		title: "Readings (off: adjusted less read; could hide: the smallest error that would show; both in " + m.smallName() + ")",
		heads: []string{"no.", "reading", "as read", "off", "w", "could hide", "state"},
		right: []bool{true, false, true, true, true, true, false},
	}
	for _, x := range r.Readings {
		state := x.State
		if x.Why != "" {
			state += ": " + x.Why
		}
		if len(x.Parts) == 0 {
			t.add(x.N, naming(x), read(x.Text, x.Value, m), off(x.Residual, m), ratio(x.W), hides(x.State, x.Detectable, m), state)
			continue
		}
		for i, p := range x.Parts {
			n, name, word := x.N, naming(x)+", "+p.Part, state
			if i > 0 {
				n, name, word = "", "  "+p.Part, ""
			}
			t.add(n, name, read(p.Text, p.Value, m), off(p.Residual, m), ratio(p.W), hides(x.State, p.Detectable, m), word)
		}
	}
	return t.String()
}

// naming is a reading in the words of the book.
func naming(x survey.Reading) string {
	switch {
	case x.Kind == "offset" && len(x.Marks) == 3:
		return "offset " + x.Marks[0] + " from " + x.Marks[1] + " " + x.Marks[2]
	case x.Setup != "":
		return x.Kind + " " + strings.Join(x.Marks, " ") + " from " + x.Setup
	}
	return x.Kind + " " + strings.Join(x.Marks, " ")
}

// read is the text as typed, else the value.
func read(text string, value float64, m measure) string {
	if text != "" {
		return text
	}
	return m.style.Length(value)
}

func off(v *float64, m measure) string {
	if v == nil {
		return nothing
	}
	return m.small(*v)
}

func ratio(v *float64) string {
	if v == nil {
		return nothing
	}
	return decimal(*v, 1)
}

// hides is "any" where nothing would show a mistake.
func hides(state string, v *float64, m measure) string {
	if v == nil && state == "lone" {
		return "any"
	}
	return m.plus(v)
}
