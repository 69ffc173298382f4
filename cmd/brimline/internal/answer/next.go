package answer

import (
	"strings"

	"brimline/survey"
	"brimline/unit"
)

// solvedNext is how many readings the answer proposes.
const solvedNext = 3

// Next lists the readings worth taking, the best first.
func Next(r *survey.Result, u unit.Unit) string {
	m := measure{style: unit.StyleFor(u)}
	text := next("What next?", r.Next, 0, m)
	if text == "" {
		text = "What next?\n- " + nothingNext(Verdict(r)) + "\n"
	}
	return titled(r, Verdict(r)) + "\n" + text
}

// nothingNext is said where no reading is proposed.
func nothingNext(word string) string {
	if word == "ready" {
		return "Nothing: everything is ready."
	}
	return "No reading that can be proposed would help; see what is open in brimline solve."
}

// Checks lists the whole set of check tapes to take besides those that place the marks: fewer than
// were asked for where more would not help. nil: the sketch has too little to plan by.
func Checks(list []survey.Next, asked int, u unit.Unit) string {
	m := measure{style: unit.StyleFor(u)}
	text := next("Check tapes", list, 0, m)
	switch {
	case list == nil:
		return "Check tapes\n" + bullet("None can be proposed from this sketch: it needs two pegs and a line of three marks, with their places")
	case text == "":
		return "Check tapes\n" + bullet("None: with what was taped already, and a tape to each mark from two pegs, no more would help")
	}
	total := 0.0
	for _, n := range list {
		total += n.Minutes
	}
	text += wrap("Together about "+minutes(total)+".", "", "")
	if len(list) < asked {
		text += "More would not help.\n"
	}
	return text
}

// next numbers proposals: what to read, what it gives, what it takes.
func next(title string, list []survey.Next, most int, m measure) string {
	if len(list) == 0 {
		return ""
	}
	if most > 0 && len(list) > most {
		list = list[:most]
	}
	var b strings.Builder
	b.WriteString(title + "\n")
	for i, n := range list {
		lead := itoa(i+1) + ". "
		b.WriteString(wrap(proposal(n, m), lead, strings.Repeat(" ", len(lead))))
	}
	return b.String()
}

func proposal(n survey.Next, m measure) string {
	text := upper(strings.TrimSuffix(n.Text, "."))
	if n.Why != "" {
		text += ": " + strings.TrimSuffix(n.Why, ".")
	}
	var facts []string
	if gain := gained(n, m); gain != "" {
		if n.Order != "" {
			gain += " for " + named(n.Order)
		}
		facts = append(facts, gain)
	}
	if n.Minutes > 0 {
		facts = append(facts, minutes(n.Minutes))
	}
	if !n.Alone {
		facts = append(facts, "two people")
	}
	if len(facts) == 0 {
		return text + "."
	}
	return text + " (" + strings.Join(facts, ", ") + ")."
}

// gained is by how much the worst figure falls; nothing where that would print as nothing.
func gained(n survey.Next, m measure) string {
	switch {
	case n.Gain <= 0 || n.Unit == "m" && n.Gain < m.style.Step()/2:
		return ""
	case n.Unit == "m":
		return "gains " + m.smallUnit(n.Gain)
	case n.Unit == "odds" || n.Unit == "":
		return "gains " + percent(n.Gain)
	}
	return "gains " + decimal(n.Gain, 3) + " " + n.Unit
}

func named(order string) string {
	if order == "shape" {
		return "the shape"
	}
	return order
}

// minutes says a time to the half minute.
func minutes(v float64) string {
	text := strings.TrimSuffix(decimal(float64(int(2*v+0.5))/2, 1), ".0")
	if text == "1" {
		return "1 minute"
	}
	return text + " minutes"
}
