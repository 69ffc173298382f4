package fieldbook

// Form is a field book as the file writes it. The order of its fields is the order in which
// blocks are numbered; it says nothing of the order in the file.
type Form struct {
	_        struct{}           `later:"pictures,walks,floor,edges,steps,ledges,raised,spills,features,decks,works,templates,photos,left,orders"`
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
	Added     []AddedForm            `book:"added"`
}

// settings is a form of something that is described, not read: it gives one entry's body.
type settings interface {
	build(b *builder, name string) Body
}

// block is one of the blocks of settings of the file: its key and whether its keys are names.
type block struct {
	key   string
	named bool
	form  func() settings
}

// blocks is the list of them. What `added` may set is one of these.
var blocks = []block{
	{"job", false, func() settings { return &JobForm{} }},
	{"private", false, func() settings { return &PrivateForm{} }},
	{"units", false, func() settings { return &UnitsForm{} }},
	{"place", false, func() settings { return &PlaceForm{} }},
	{"tools", true, func() settings { return &ToolForm{} }},
	{"setups", true, func() settings { return &SetupForm{} }},
	{"rules", false, func() settings { return &RulesForm{} }},
	{"marks", true, func() settings { return &MarkForm{} }},
	{"lines", true, func() settings { return &LineForm{} }},
	{"unreached", true, func() settings { return &UnreachedForm{} }},
}

// setting is one form with the name it stands under, as found in the file.
type setting struct {
	name string
	at   place
	form settings
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
	return append(out, listed(f.Unreached)...)
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
