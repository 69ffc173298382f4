package fieldbook

import "strings"

// asRead is the text of the reading that a computed correction stands for: what was read before
// any correction was worked out; "" where the log does not hold it.
func (j *judged) asRead(e Entry) string {
	for range len(j.items) { // a circle of corrections ends
		was, ok := j.byID[e.Replaces]
		if !ok {
			return ""
		}
		r, ok := was.Body.(Reading)
		if !ok {
			return ""
		}
		if !r.Computed {
			return r.typed()
		}
		e = was
	}
	return ""
}

// typed is the values of a reading as typed.
func (r Reading) typed() string {
	var out []string
	for _, v := range r.Values {
		out = append(out, v.Text)
	}
	return strings.Join(out, ", ")
}
