package fieldbook

// DownForm is a level below a surface, a line or a mark: below: w1, is: 0.45.
type DownForm struct {
	Below Name   `book:"below"`
	Is    Length `book:"is"`
}

func (f *DownForm) down(b *builder, what string) Down {
	if f.Below.given() != f.Is.given() {
		at := f.Below.at
		if f.Is.given() {
			at = f.Is.at
		}
		b.fault(at, "missing-key", what+" needs what its level is below, and how far", "below and is, or neither where its marks have heights")
	}
	return Down{Below: f.Below.text, Depth: b.length(f.Is, notNegative)}
}

func (d Down) write(w *writer) {
	if d.Below == "" {
		return
	}
	w.text("below", d.Below)
	w.said("is", d.Depth, d.Depth == 0)
}
