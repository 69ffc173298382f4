package advise

import (
	"fmt"
	"math"

	"brimline/finding"
	"brimline/mistake"
)

// Names turns numbers into what people call them: marks, readings (by observation) and lengths.
type Names struct {
	Mark    func(mark int) string
	Reading func(obs int) string
	Length  func(metres float64) string
}

func (n Names) marks(list []int) string {
	var out []string
	for _, m := range list {
		out = append(out, n.Mark(m))
	}
	return finding.List(out)
}

func (n Names) readings(list []int) string {
	var out []string
	for _, i := range list {
		out = append(out, n.Reading(i))
	}
	return finding.List(out)
}

// Text is the reason in a few words, without a capital or a full stop.
func (r Reason) Text(n Names) string {
	switch r.Code {
	case "unplaced":
		return r.At + " has no place yet"
	case "outside":
		return fmt.Sprintf("%s is off by %s, more than the %s allowed", r.At, n.Length(r.From), n.Length(r.To))
	case "near":
		return fmt.Sprintf("%s is off by %s, perhaps more than the %s allowed", r.At, n.Length(r.From), n.Length(r.To))
	case "suspect":
		text := "reading " + n.readings(r.Obs) + " is suspect"
		if r.Again {
			text += " and was read again: strike it"
		}
		if math.IsInf(r.From, 1) {
			return text + "; nothing else holds the edge at " + r.At
		}
		return fmt.Sprintf("%s; with it the edge at %s would move by %s", text, r.At, n.Length(r.From))
	case "doubtful":
		if math.IsInf(r.From, 1) {
			return fmt.Sprintf("one of the readings %s is wrong, and the edge at %s hangs on it", n.readings(r.Obs), r.At)
		}
		return fmt.Sprintf("one of the readings %s is wrong; the edge at %s may lie %s elsewhere", n.readings(r.Obs), r.At, n.Length(r.From))
	case "wide":
		if math.IsInf(r.From, 1) {
			return fmt.Sprintf("%s is not held by anything; ±%s is asked", r.At, n.Length(r.To))
		}
		return fmt.Sprintf("%s is known to ±%s only; ±%s is asked", r.At, n.far(r.From), n.Length(r.To))
	case "unseen":
		return r.unseen(n)
	}
	return r.proposal(n)
}

// far says a length that may have no bound.
func (n Names) far(v float64) string {
	if math.IsInf(v, 0) {
		return "any length"
	}
	return n.Length(v)
}

func (r Reason) unseen(n Names) string {
	what := "a mistake (" + causeOf(r.Mistake) + ") in reading " + n.readings(r.Obs)
	if len(r.Obs) > 1 {
		what = "a mistake (" + causeOf(r.Mistake) + ") in the readings " + n.readings(r.Obs)
	}
	what += " could pass unseen"
	if r.At != "" {
		what += " and would move " + r.At
	}
	if r.Sum > 0 {
		what += fmt.Sprintf("; with all the others the odds are %s", odds(r.Sum))
	}
	return what
}

// causeOf is a listed mistake in a few words; its code where the table does not have it.
func causeOf(code string) string {
	for _, p := range mistake.Priors {
		if p.Code == code {
			return p.Cause
		}
	}
	return code
}

// odds as people say them: a share in per cent, or "more likely than not".
func odds(v float64) string {
	switch {
	case v >= 0.5:
		return "1 to 2 or worse"
	case v < 0.0001:
		return "below 0.01 %"
	}
	return fmt.Sprintf("%.2g %%", 100*v)
}

func (r Reason) proposal(n Names) string {
	switch r.Code {
	case "fixes":
		return "fixes " + n.marks(r.Marks)
	case "side":
		return "settles the side of " + n.marks(r.Marks)
	case "tells":
		return "tells which of the readings " + n.readings(r.Obs) + " is wrong"
	case "again":
		return "reading " + n.readings(r.Obs) + " is suspect"
	case "repeat":
		if len(r.Marks) == 0 {
			return "would check reading " + n.readings(r.Obs)
		}
		return "would prove the tie " + n.marks(r.Marks)
	case "base":
		return "would prove the base " + n.marks(r.Marks)
	case "control":
		if len(r.Marks) == 0 {
			return "would check reading " + n.readings(r.Obs)
		}
		return "would control " + n.marks(r.Marks)
	case "smaller":
		return "would show a smaller mistake at " + n.marks(r.Marks)
	case "sharper":
		return fmt.Sprintf("brings %s from ±%s to ±%s", r.At, n.far(r.From), n.far(r.To))
	}
	return r.Code
}
