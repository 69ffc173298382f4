package fieldbook

// ToolForm is one entry of the block tools.
type ToolForm struct {
	Sigma   Length   `book:"sigma"`
	PPM     Figure   `book:"ppm"`
	Zero    Solvable `book:"zero"`
	Scale   Solvable `book:"scale"`
	Serial  Text     `book:"serial"`
	Checked Date     `book:"checked"`
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
	return t
}

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
}

// SetupForm is one entry of the block setups.
type SetupForm struct {
	Sigma Length `book:"sigma"`
	Scale Choice `book:"scale" jsonschema:"enum=solve"`
}

func (f *SetupForm) build(b *builder, name string) Body {
	return Setup{Name: name, Sigma: b.length(f.Sigma, positive), SolveScale: f.Scale.text == solve}
}

func (s Setup) write(w *writer) {
	w.length("sigma", s.Sigma)
	if s.SolveScale {
		w.text("scale", solve)
	}
}
