package mistake

import "brimline/unit"

// Staff is a staff misread: the metre or the decimetre counted wrong, a centimetre block taken for the
// next, or 6 and 9, or 1 and 7, taken for each other. It is the misreading of staff readings alone.
type Staff struct{}

// Code of the closed list.
func (Staff) Code() string { return "staff" }

// True is one metre, 100 mm and 10 mm more and less, and every digit replaced by the one that looks
// like it; a staff has no readings below its foot.
func (Staff) True(text string, v float64, u unit.Unit) []Was {
	var out []Was
	all := append(both(v, 1, "the staff misread: one metre"), both(v, 0.1, "the staff misread: 100 mm")...)
	all = append(all, both(v, 0.01, "the staff misread: 10 mm")...)
	for _, w := range (Lookalike{}).True(text, v, u) {
		all = append(all, Was{w.Metres, "the staff misread: " + w.Cause})
	}
	for _, w := range all {
		if w.Metres >= 0 {
			out = append(out, w)
		}
	}
	return out
}

// misreadingsOf is the family that a kind of reading is prone to.
func misreadingsOf(kind string) []Misreading {
	if kind == "staff" {
		return []Misreading{Staff{}}
	}
	return Misreadings
}
