package fieldbook

// ToolForm is one entry of the block tools.
type ToolForm struct {
	Sigma   Length   `book:"sigma"`
	PPM     Figure   `book:"ppm"`
	Zero    Solvable `book:"zero"`
	Scale   Solvable `book:"scale"`
	Serial  Text     `book:"serial"`
	Checked Date     `book:"checked"`

	Temperature Figure `book:"temperature"`
	Expansion   Figure `book:"expansion"`
}

func (f *ToolForm) build(b *builder, name string) Body {
	t := Tool{Name: name, Serial: f.Serial.text, Checked: b.date(f.Checked)}
	t.Sigma = b.length(f.Sigma, positive)
	t.PPM = b.figure(f.PPM.leaf, notNegative)
	if t.SolveZero = f.Zero.text == solve; !t.SolveZero {
		t.Zero = b.length(Length{f.Zero.leaf}, anySign)
	}
	if t.SolveScale = f.Scale.text == solve; !t.SolveScale {
		t.Scale = b.figure(f.Scale.leaf, positive)
	}
	f.warmth(b, &t)
	return t
}

// warmth reads how the tool grows when it is warm: nothing is corrected until a book says so.
func (f *ToolForm) warmth(b *builder, t *Tool) {
	if !f.Expansion.given() {
		if f.Temperature.given() {
			b.fault(f.Temperature.at, "missing-key", "the temperature at which a tape is right, and nothing says how it grows", "expansion, such as 11.5e-6 of steel")
		}
		return
	}
	if t.Expansion = b.figure(f.Expansion.leaf, positive); t.Expansion > mostExpansion {
		b.fault(f.Expansion.at, "too-large", "an expansion of "+f.Expansion.text+" a kelvin", "such as 11.5e-6 of steel")
	}
	if t.Standard = steelStandard; f.Temperature.given() {
		t.Standard = b.degrees(f.Temperature)
	}
}

// mostExpansion is more than any plastic has, a kelvin: common practice, no source.
const mostExpansion = 5e-4

// solve is the word that stands for a figure which the adjustment is to find.
const solve = "solve"

func (t Tool) write(w *writer) {
	w.length("sigma", t.Sigma)
	w.figure("ppm", t.PPM)
	if t.SolveZero {
		w.text("zero", solve)
	}
	w.length("zero", t.Zero)
	if t.SolveScale {
		w.text("scale", solve)
	}
	w.figure("scale", t.Scale)
	w.text("serial", t.Serial)
	w.text("checked", t.Checked)
	if t.Expansion != 0 {
		w.number("temperature", t.Standard)
		w.number("expansion", t.Expansion)
	}
}
