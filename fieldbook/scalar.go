package fieldbook

// leaf is one value as typed, with its place; its place is zero where the key is not there.
type leaf struct {
	text string
	at   place
	word bool // typed without quotes
}

func (l *leaf) set(n *node) { l.text, l.at, l.word = n.text, n.at, n.plain }

func (l *leaf) read() leaf { return *l }

// Text is the value as typed.
func (l leaf) Text() string { return l.text }

func (l leaf) given() bool { return l.at.line > 0 }

// yes says that a flag is there and true.
func (f Flag) yes() bool { return f.text == "true" }

// The single values of the file's forms. Each keeps the text as typed; what it means is read
// when the book is built, because a bare length depends on the book's units.
type (
	// Text is any words.
	Text struct{ leaf }
	// Name is one word: a mark, a tool, an id.
	Name struct{ leaf }
	// Pair is two names with white space between: A B.
	Pair struct{ leaf }
	// Row is names with white space between: r1 r2 r3.
	Row struct{ leaf }
	// Length is a number in the book's unit or any spelling of package unit.
	Length struct{ leaf }
	// Solvable is a Length or a number, or the word solve.
	Solvable struct{ leaf }
	// Angle is decimal degrees, or degrees, minutes and seconds.
	Angle struct{ leaf }
	// Figure is a plain number.
	Figure struct{ leaf }
	// Flag is true or false.
	Flag struct{ leaf }
	// Choice is one of the words in its field's tag.
	Choice struct{ leaf }
	// Date is a day: 2026-05-14.
	Date struct{ leaf }
	// Clock is a time of day: 08:40.
	Clock struct{ leaf }
	// Moment is a time of RFC 3339.
	Moment struct{ leaf }
)

// single is what every type above is, for the decoder.
type scalar interface {
	set(*node)
	read() leaf
	expects() string
}

func (*Text) expects() string     { return "words" }
func (*Name) expects() string     { return "a name without white space" }
func (*Pair) expects() string     { return "two names such as A r1" }
func (*Row) expects() string      { return "names such as r1 r2 r3" }
func (*Length) expects() string   { return "a length such as 5.214" }
func (*Solvable) expects() string { return "a figure, or solve" }
func (*Angle) expects() string    { return "an angle in degrees" }
func (*Figure) expects() string   { return "a number" }
func (*Flag) expects() string     { return "true or false" }
func (*Choice) expects() string   { return "one of the words listed" }
func (*Date) expects() string     { return "a date such as 2026-05-14" }
func (*Clock) expects() string    { return "a time of day such as 08:40" }
func (*Moment) expects() string   { return "a time such as 2026-05-14T09:10:00+02:00" }

// Sigma is one standard deviation for every part of a reading, or a list, one a part: lengths.
type Sigma struct {
	items []leaf
	at    place
}

// AngleSigma is a Sigma of angles, in degrees or as they are typed.
type AngleSigma struct{ Sigma }

func (s *Sigma) decode(d *decoder, n *node) { s.take(d, n, func() scalar { return &Length{} }) }

func (s *AngleSigma) decode(d *decoder, n *node) { s.take(d, n, func() scalar { return &Angle{} }) }

// take reads one figure or a list of them.
func (s *Sigma) take(d *decoder, n *node, blank func() scalar) {
	s.at = n.at
	figures := n.items
	if n.shape != list {
		figures = []*node{n}
	}
	for _, it := range figures {
		one := blank()
		d.scalar(it, one, nil)
		s.items = append(s.items, one.read())
	}
}

// Named is one entry of a block whose keys are names: marks, tools, lines.
type Named[T any] struct {
	Key  Name
	Form T
}

func (Named[T]) named() {}
