package fieldbook

// Staff is a staff held on a mark and read from a level's set-up: {staff: r1, setup: S1, is: 1.412}.
// The set-up's line of sight is that much above the mark.
type Staff struct{}

// StaffForm is the item as the file writes it. Sight is how far the staff stood from the level.
type StaffForm struct {
	Staff Name   `book:"staff" jsonschema:"required"`
	Setup Name   `book:"setup" jsonschema:"required"`
	Is    Length `book:"is" jsonschema:"required"`
	Sight Length `book:"sight"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Staff) Name() string { return "staff" }

// Form of the item.
func (Staff) Form() ItemForm { return &StaffForm{} }

func (f *StaffForm) build(b *builder) Body {
	r := Reading{Kind: "staff", Marks: []string{f.Staff.text}, Setup: f.Setup.text, Values: []Value{b.part("is", f.Is, notNegative)}}
	r.Sight = b.length(f.Sight, positive)
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

func (Staff) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "staff" || len(r.Marks) != 1 || len(r.Values) != 1 {
		return false
	}
	w.text("staff", r.Marks[0])
	w.text("setup", r.Setup)
	w.value("is", r.Values[0])
	w.length("sight", r.Sight)
	r.write(w)
	return true
}

// Sight is the length of sight of a staff reading, metres: its own, else that of its set-up; 0 where
// neither says one.
func (b *Book) Sight(r Reading) float64 {
	if r.Sight > 0 {
		return r.Sight
	}
	return b.Setup(r.Setup).Sight
}
