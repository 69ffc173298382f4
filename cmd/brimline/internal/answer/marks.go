package answer

import (
	"strings"

	"brimline/survey"
)

// marks tables the places. The ± is the longer semi-axis of the 95 % region.
func marks(r *survey.Result, m measure) string {
	t := table{
		title: "Marks (" + m.style.UnitName() + "; ± 95 % and the largest hidden move in " + m.smallName() + ")",
		heads: []string{"mark", "x", "y", "±", "hidden", ""},
		right: []bool{false, true, true, true, true, false},
	}
	others := listOthers(r)
	for _, name := range r.MarkOrder {
		k := r.Marks[name]
		if k == nil {
			continue
		}
		var plus *float64
		if k.Ellipse95 != nil {
			plus = &k.Ellipse95.Major
		}
		t.add(name, m.place(k.X), m.place(k.Y), m.plus(plus), m.plus(k.Hidden), remark(k, m, others))
	}
	return t.String()
}

// listOthers says whether the second places of marks are worth a remark: where most marks have
// one, the figure as a whole is open and a sentence says so.
func listOthers(r *survey.Result) bool {
	open := 0
	for _, name := range r.MarkOrder {
		if k := r.Marks[name]; k != nil && len(k.Alternatives) > 0 {
			open++
		}
	}
	return 2*open <= len(r.MarkOrder)
}

func remark(k *survey.Mark, m measure, others bool) string {
	if k.X == nil || k.Y == nil {
		return "not fixed yet"
	}
	var words []string
	if !k.Controlled {
		words = append(words, "not controlled")
	}
	if !others {
		return strings.Join(words, "; ")
	}
	for _, a := range k.Alternatives {
		words = append(words, "or "+m.style.Length(a.X)+", "+m.style.Length(a.Y))
	}
	return strings.Join(words, "; ")
}
