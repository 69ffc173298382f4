package draft

import (
	"slices"
	"strconv"
	"strings"

	"brimline/mistake"
	"brimline/survey"
)

// mostWeak is how many of the weakest places are said on the sheet.
const mostWeak = 3

// weakest are the sentences about the places where most could hide, the worst first: those under
// the verdict, and those that stand with the statement of accuracy because an upright sheet has
// room for the first alone.
func (j *job) weakest() (first, rest []string) {
	for _, w := range j.result.Shape.Weakest {
		if w.Text == "" || len(first)+len(rest) == mostWeak {
			continue
		}
		if t := sentence(w.Text, ""); j.size.Upright() && len(first) > 0 {
			rest = append(rest, t)
		} else {
			first = append(first, t)
		}
	}
	return first, rest
}

// wrong says which mistakes show: those that have a name, then readings without one, groups that
// cannot be told apart with their likeliest member, checks that disagree.
func (j *job) wrong() []string {
	var out []string
	named := map[string]bool{}
	doubtful := j.doubtful()
	for _, m := range j.result.Mistakes {
		if len(m.Readings) == 1 && doubtful[m.Readings[0]] {
			continue // said with its group
		}
		t := strings.TrimSuffix(m.Text, ".") + " (" + odds(m.Probability) + ")"
		if w := numberWords(m.Readings); len(m.Readings) > 0 && !strings.Contains(t, w) {
			t += "; " + w
		}
		out = append(out, sentence(t, ""))
		for _, n := range m.Readings {
			named[n] = true
		}
	}
	for _, r := range j.result.Readings {
		if r.State == "suspect" && !named[r.N] {
			out = append(out, sentence(j.suspicion(r), ""))
		}
	}
	for _, g := range groupsOf(j.result.Readings) {
		out = append(out, j.groupWords(g))
	}
	for _, r := range j.result.Readings {
		if r.State == "disagrees" {
			out = append(out, sentence(j.disagreement(r), ""))
		}
	}
	return out
}

func (j *job) doubtful() map[string]bool {
	out := map[string]bool{}
	for _, r := range j.result.Readings {
		out[r.N] = r.State == "doubtful"
	}
	return out
}

// groupWords says of a group which readings it is, and which of them is the likeliest where one
// has a cause with odds above a half.
func (j *job) groupWords(ns []string) string {
	t := "One of the readings " + orNames(ns, 8) + " is wrong; which one cannot be told."
	for _, r := range j.result.Readings {
		if slices.Contains(ns, r.N) && len(r.Likely) > 0 && r.Likely[0].Probability > 0.5 {
			t += " Likeliest: " + r.N + ", " + j.likely(r) + "."
		}
	}
	return t
}

// suspicion says of a reading what it may be: Reading 17, tie B–r9, is suspect: one metre long, 6.450 (93 %).
func (j *job) suspicion(r survey.Reading) string {
	t := "reading " + r.N + ", " + readingName(r) + ", is " + r.State
	if len(r.Likely) == 0 {
		return t
	}
	return t + ": " + j.likely(r)
}

// likely is the most likely cause, what the reading would be, and the odds.
func (j *job) likely(r survey.Reading) string {
	l := r.Likely[0]
	t := l.Cause
	if t == "" {
		t = mistakeName(l.Code)
	}
	if l.Value != nil {
		t += ", " + j.fig.of(r.Kind).length(*l.Value)
	}
	return t + " (" + odds(l.Probability) + ")"
}

// mistakeName is a code of the list of human mistakes in words.
func mistakeName(code string) string {
	for _, p := range mistake.Priors {
		if p.Code == code {
			return p.Cause
		}
	}
	return code
}

// disagreement says by how much a check misses what the other readings predict.
func (j *job) disagreement(r survey.Reading) string {
	t := "check reading " + r.N + ", " + readingName(r) + ", disagrees"
	if r.Residual != nil {
		t += " by " + j.fig.of(r.Kind).whole(max(*r.Residual, -*r.Residual))
	}
	return t
}

// numberWords says "reading 17" or "readings 17 and 18".
func numberWords(ns []string) string {
	if len(ns) == 1 {
		return "reading " + ns[0]
	}
	return "readings " + names(ns, 8)
}

// orNames lists names with "or" before the last.
func orNames(list []string, most int) string {
	t := names(list, most)
	if len(list) > most {
		return t
	}
	if i := strings.LastIndex(t, " and "); i >= 0 {
		t = t[:i] + " or " + t[i+len(" and "):]
	}
	return t
}

// groupsOf are the numbers of doubtful readings by group, in the order of their first.
func groupsOf(all []survey.Reading) [][]string {
	var out [][]string
	at := map[int]int{}
	for _, r := range all {
		if r.State != "doubtful" {
			continue
		}
		if r.Group == nil {
			out = append(out, []string{r.N})
			continue
		}
		i, ok := at[*r.Group]
		if !ok {
			i = len(out)
			at[*r.Group], out = i, append(out, nil)
		}
		out[i] = append(out[i], r.N)
	}
	return out
}

// odds says a probability; what would round to nothing or to certainty is said to be less or more.
func odds(p float64) string {
	switch {
	case p > 0 && p < 0.001:
		return "under 0.1 %"
	case p < 0.1:
		return strings.TrimSuffix(strconv.FormatFloat(100*p, 'f', 1, 64), ".0") + " %"
	case p < 1 && p > 0.99:
		return "over 99 %"
	}
	return strconv.FormatFloat(100*p, 'f', 0, 64) + " %"
}

// computed says of a correction that nobody read again what was read and what is used.
func (j *job) computed(r survey.Reading) string {
	used := r.Text
	if used == "" {
		used = j.fig.of(r.Kind).length(r.Value)
	}
	if r.As == "" {
		return "used " + used + ", not re-read"
	}
	return "as read " + r.As + ", used " + used + ", not re-read"
}
