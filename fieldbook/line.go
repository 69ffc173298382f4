package fieldbook

// MarkNames lists the marks of a line in its order, each joint once; a closed line does not
// repeat its first mark.
func (l Line) MarkNames() []string {
	var out []string
	for _, r := range l.Runs {
		m := r.Marks
		if len(out) > 0 && len(m) > 0 && out[len(out)-1] == m[0] {
			m = m[1:]
		}
		out = append(out, m...)
	}
	if l.Closed && len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}
