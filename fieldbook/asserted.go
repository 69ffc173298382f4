package fieldbook

import "strings"

// Asserted says that readings of a kind assert a shape and have no value.
func Asserted(kind string) bool { return among(kind, []string{"straight", "arc", "square"}) }

// Angular says that the value and the sigma of a kind are angles: degrees in the file, radians
// inside.
func Angular(kind string) bool { return among(kind, []string{"turn", "square"}) }

// asserted writes an asserted shape through marks.
func (w *writer) asserted(kind string, least int, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != kind || len(r.Marks) < least || len(r.Values) != 0 {
		return false
	}
	w.text(kind, strings.Join(r.Marks, " "))
	r.write(w)
	return true
}
