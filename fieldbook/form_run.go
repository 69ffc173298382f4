package fieldbook

import "reflect"

// RunForm is one run of a line: exactly one of its first five keys.
type RunForm struct {
	_        struct{} `later:"walk,from,to"`
	Straight []Name   `book:"straight"`
	Arc      []Name   `book:"arc"`
	Curve    []Name   `book:"curve"`
	Any      []Name   `book:"any"`
	Soft     []Name   `book:"soft"`
	Joint    Choice   `book:"joint" jsonschema:"enum=tangent,enum=kink"`
	Sigma    Length   `book:"sigma"`
	Slide    Length   `book:"slide"`
	at       place
	skip     bool // what is wrong with it has been said
}

func (f *RunForm) decode(d *decoder, n *node) {
	f.at = n.at
	f.skip = n.shape == single || n.shape == list || n.get("walk") != nil
	d.form(n, reflect.ValueOf(f).Elem())
}

// build gives the run; false where it is none, which has been answered.
func (f *RunForm) build(b *builder) (Run, bool) {
	r := Run{Joint: f.Joint.text, Slide: b.length(f.Slide, positive)}
	given := 0
	for _, k := range []struct {
		kind  string
		marks []Name
	}{{"straight", f.Straight}, {"arc", f.Arc}, {"curve", f.Curve}, {"any", f.Any}, {"soft", f.Soft}} {
		if k.marks != nil {
			given++
			r.Kind, r.Marks = k.kind, texts(k.marks)
			b.distinct(k.marks)
		}
	}
	switch {
	case f.skip:
		return r, false
	case given != 1:
		b.fault(f.at, "one-of", "a run has one kind", "one of straight, arc, curve, any, soft, each with its marks")
		return r, false
	case len(r.Marks) < 2:
		b.fault(f.at, "short-line", "a run of fewer than two marks", "at least two marks")
		return r, false
	}
	r.Sigma = f.softness(b, r.Kind)
	return r, true
}

// softness is the sigma that a soft run has and no other.
func (f *RunForm) softness(b *builder, kind string) float64 {
	switch {
	case kind == "soft" && !f.Sigma.given():
		b.fault(f.at, "missing-key", "a soft edge, and nothing says how soft", "sigma, such as sigma: 20 mm")
	case kind != "soft" && f.Sigma.given():
		b.fault(f.Sigma.at, "not-here", "only a soft run has a sigma of its own", "soft for "+kind+", or sharp for the whole line")
		return 0
	}
	return b.length(f.Sigma, positive)
}

// distinct answers a mark that follows itself.
func (b *builder) distinct(marks []Name) {
	for i := 1; i < len(marks); i++ {
		if marks[i].text == marks[i-1].text {
			b.fault(marks[i].at, "self", quoted(marks[i].text)+" follows itself", "the next mark")
		}
	}
}

func (r Run) write(w *writer) {
	w.item()
	w.list(r.Kind, r.Marks)
	w.text("joint", r.Joint)
	w.length("sigma", r.Sigma)
	w.length("slide", r.Slide)
	w.close()
}
