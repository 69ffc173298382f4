package fieldbook

// Form is a field book as the file writes it. The order of its fields is the order in which
// blocks are numbered; it says nothing of the order in the file.
type Form struct {
	_        struct{}           `later:"pictures,walks,edges,features,decks,works,templates,photos,left,orders"`
	Brimline Figure             `book:"brimline" jsonschema:"required"`
	Job      *JobForm           `book:"job"`
	Private  *PrivateForm       `book:"private"`
	Units    *UnitsForm         `book:"units"`
	Place    *PlaceForm         `book:"place"`
	Tools    []Named[ToolForm]  `book:"tools"`
	Setups   []Named[SetupForm] `book:"setups"`
	Rules    *RulesForm         `book:"rules"`
	Marks    []Named[MarkForm]  `book:"marks"`
	Readings []ReadingForm      `book:"readings"`
	Lines    []Named[LineForm]  `book:"lines"`

	Unreached []Named[UnreachedForm] `book:"unreached"`
	Floor     *FloorForm             `book:"floor"`
	Steps     []StepItem             `book:"steps"`
	Ledges    []LedgeItem            `book:"ledges"`
	Raised    []RaisedItem           `book:"raised"`
	Spills    []SpillItem            `book:"spills"`
	Added     []AddedForm            `book:"added"`
}

// settings is a form of something that is described, not read: it gives one entry's body.
type settings interface {
	build(b *builder, name string) Body
}

// block is one of the blocks of settings of the file: its key, what names its entries, and their form.
type block struct {
	key   string
	names naming
	form  func() settings
}

// naming is what names the entries of a block.
type naming int

const (
	alone  naming = iota // the block is one entry
	byKey                // its keys are names
	byName               // a list whose items have the key name, which may be several words
)

// blocks is the list of them. What `added` may set is one of these.
var blocks = []block{
	{"job", alone, func() settings { return &JobForm{} }},
	{"private", alone, func() settings { return &PrivateForm{} }},
	{"units", alone, func() settings { return &UnitsForm{} }},
	{"place", alone, func() settings { return &PlaceForm{} }},
	{"tools", byKey, func() settings { return &ToolForm{} }},
	{"setups", byKey, func() settings { return &SetupForm{} }},
	{"rules", alone, func() settings { return &RulesForm{} }},
	{"marks", byKey, func() settings { return &MarkForm{} }},
	{"lines", byKey, func() settings { return &LineForm{} }},
	{"unreached", byKey, func() settings { return &UnreachedForm{} }},
	{"floor", alone, func() settings { return &FloorForm{} }},
	{"steps", byName, func() settings { return &StepForm{} }},
	{"ledges", byName, func() settings { return &LedgeForm{} }},
	{"raised", byName, func() settings { return &RaisedForm{} }},
	{"spills", byName, func() settings { return &SpillForm{} }},
}

// setting is one form with the name it stands under, as found in the file.
type setting struct {
	name string
	at   place
	form settings

	title Text   // where the block is a list: the key name of the item
	list  string // and the block
}

// settings lists what the blocks of the file say, in the order of the list of blocks.
func (f *Form) settings() []setting {
	var out []setting
	add := func(s settings, given bool) {
		if given {
			out = append(out, setting{form: s})
		}
	}
	add(f.Job, f.Job != nil)
	add(f.Private, f.Private != nil)
	add(f.Units, f.Units != nil)
	add(f.Place, f.Place != nil)
	out = append(out, listed(f.Tools)...)
	out = append(out, listed(f.Setups)...)
	add(f.Rules, f.Rules != nil)
	out = append(out, listed(f.Marks)...)
	out = append(out, listed(f.Lines)...)
	out = append(out, listed(f.Unreached)...)
	if f.Floor != nil {
		out = append(out, setting{at: f.Floor.at, form: f.Floor})
	}
	return append(out, f.titled()...)
}

// titled lists the items of the lists whose items have the key name.
func (f *Form) titled() []setting {
	var out []setting
	for i := range f.Steps {
		it := &f.Steps[i]
		out = append(out, setting{name: it.Name.text, at: it.at, form: &it.StepForm, title: it.Name, list: "steps"})
	}
	for i := range f.Ledges {
		it := &f.Ledges[i]
		out = append(out, setting{name: it.Name.text, at: it.at, form: &it.LedgeForm, title: it.Name, list: "ledges"})
	}
	for i := range f.Raised {
		it := &f.Raised[i]
		out = append(out, setting{name: it.Name.text, at: it.at, form: &it.RaisedForm, title: it.Name, list: "raised"})
	}
	for i := range f.Spills {
		it := &f.Spills[i]
		out = append(out, setting{name: it.Name.text, at: it.at, form: &it.SpillForm, title: it.Name, list: "spills"})
	}
	return out
}

func listed[T any, P interface {
	*T
	settings
}](items []Named[T]) []setting {
	var out []setting
	for i := range items {
		out = append(out, setting{name: items[i].Key.text, at: items[i].Key.at, form: P(&items[i].Form)})
	}
	return out
}
