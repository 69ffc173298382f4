package outline

import (
	"fmt"
	"math"
	"strings"
)

// Text is the family in a sentence without its full stop, lengths as show prints them: "a rectangle
// 8.02 m × 4.01 m, 0.3° out of square, corner radius 0.60 m".
func (f *Family) Text(show func(metres float64) string) string {
	w := words{f, show}
	var s string
	switch f.Kind {
	case "rectangle":
		s = "a rectangle " + w.size("length", "width") + w.square() + w.one(", corner radius ", ", corner radii ", "radius") + w.one(", cut ", ", cuts ", "cut")
	case "cut":
		s = "a rectangle " + w.size("length", "width") + w.square() + " with cut corners, " + w.one("each ", "", "cut") + w.one(" with legs of ", " with legs ", "cut leg") + w.legs()
	case "segmental":
		s = "a body " + w.size("length", "width") + w.square() + " with segmental ends," + w.one(" radius ", " radii ", "radius") + w.one(", rise ", ", rises ", "rise")
	case "stadium":
		s = "straight sides with half circles at the ends, " + w.size("length", "width") + w.one(", end radius ", ", end radii ", "radius")
	case "ellipse":
		s = "an ellipse " + w.size("length", "width")
	case "oval":
		s = "a four-centre oval " + w.size("length", "width") + w.one(", end radius ", ", end radii ", "end") + w.one(", side radius ", ", side radii ", "side")
	case "kidney":
		s = "a kidney of tangent arcs:" + w.one(" lobe ", " lobes ", "lobe") + w.one(", back ", ", backs ", "back") + w.one(", waist ", ", waists ", "waist")
	case "L":
		s = "an L " + w.size("length", "deep") + ", " + show(w.value("width")) + " and " + show(w.value("leg")) + " wide" + w.square() +
			w.one(", corner radius ", ", corner radii ", "radius") + w.one(", inward ", ", inward ", "inner")
	}
	return s + w.doubt() + w.other()
}

type words struct {
	f    *Family
	show func(float64) string
}

func (w words) value(name string) float64 { v, _ := w.f.Get(name); return v }

func (w words) size(a, b string) string { return w.show(w.value(a)) + " × " + w.show(w.value(b)) }

// one tells all figures of a name, with other words for several.
func (w words) one(single, several, name string) string {
	var all []string
	for _, x := range w.f.Figures {
		if rest, ok := strings.CutPrefix(x.Name, name); ok && (rest == "" || numbered(rest)) {
			all = append(all, w.show(x.Value))
		}
	}
	switch len(all) {
	case 0:
		return ""
	case 1:
		return single + all[0]
	}
	return several + strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}

// numbered says that a name goes on with a number alone: " 2".
func numbered(rest string) bool {
	return len(rest) == 2 && rest[0] == ' ' && rest[1] >= '1' && rest[1] <= '9'
}

// square says by how much corners are out of square, or that the marks do not show it.
func (w words) square() string {
	if w.f.Square.Freedom == 0 {
		return ""
	}
	if w.f.Square.Holds() {
		return ", square"
	}
	return fmt.Sprintf(", %.1f° out of square", math.Abs(w.value("skew"))*180/math.Pi)
}

// doubt says that the marks speak against the family, and by what.
func (w words) doubt() string {
	if w.f.Test.Holds() {
		return ""
	}
	if p := w.value("parallel"); !math.IsNaN(p) {
		return fmt.Sprintf("; not quite: sides up to %.1f° out of parallel", math.Abs(p)*180/math.Pi)
	}
	return "; not quite: the marks speak against it"
}

// legs are those of cut corners whose legs along the length differ from those across.
func (w words) legs() string {
	along, across := w.value("cut leg along"), w.value("cut leg across")
	if math.IsNaN(along) {
		return ""
	}
	return " with legs of " + w.show(along) + " along the length and " + w.show(across) + " across"
}

func (w words) other() string {
	o := w.f.Other
	switch {
	case o == nil:
		return ""
	case o.Test.Holds():
		return "; an " + o.Kind + " would do for the marks too"
	}
	return "; not an " + o.Kind + ": marks lie up to " + w.show(o.Off) + " off"
}
