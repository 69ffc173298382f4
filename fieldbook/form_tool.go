package fieldbook

// ToolForm is one entry of the block tools. `solve` belongs to a later stage.
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
	if b.solved(f.Zero) || b.solved(f.Scale) {
		return t
	}
	t.Zero = b.length(Length{f.Zero.leaf}, anySign)
	t.Scale = b.figure(f.Scale.leaf, positive)
	return t
}

// solved answers the word solve, which is not yet built here.
func (b *builder) solved(s Solvable) bool {
	if s.text != "solve" {
		return false
	}
	b.fault(s.at, "later", `"solve" is not yet built here`, "a figure")
	return true
}

func (t Tool) write(w *writer) {
	w.length("sigma", t.Sigma)
	w.figure("ppm", t.PPM)
	w.length("zero", t.Zero)
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
	return Setup{Name: name, Sigma: b.length(f.Sigma, positive), SolveScale: f.Scale.text == "solve"}
}

func (s Setup) write(w *writer) {
	w.length("sigma", s.Sigma)
	if s.SolveScale {
		w.text("scale", "solve")
	}
}
