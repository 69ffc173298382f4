package fieldbook

import (
	"time"

	"brimline/finding"
	"brimline/unit"
)

// ID is the lasting name of an entry: as given in the book, else a hash of its normal form.
type ID string

// Hash is the SHA-256 of a file's bytes.
type Hash [32]byte

// Files holds the bytes of the files that a book names. Shells load and hash; stages look up.
type Files map[Hash][]byte

// Entry is one thing written into the book. Zero Time: none was given. Place counts the
// entries of the file or device that made it, from 1; in a file the items of `readings` count
// apart from everything else. Why is the reason of a replacement. The rows of a column are
// entries of one place: Column is the id of the first of them and Row counts from 1; "" and 0
// where the entry stands by itself.
type Entry struct {
	ID, Replaces ID
	Time         time.Time
	By, Device   string
	Place        int
	Column       ID
	Row          int
	Why          string
	Body         Body
}

// Body is what an entry says. The list of bodies is closed: see the types with a body method.
type Body interface{ body() string }

// Log is a set of entries in any order.
type Log []Entry

// Value is one part of a reading, and the text as typed: Metres holds metres, of a turn radians.
type Value struct {
	Part   string // is, at, left, x, y, z
	Metres float64
	Text   string
}

// Reading is a measured value, or an asserted shape without one. Marks stand in the order of the
// kind: tie from, to; offset mark, from, to of the line; seen the mark; turn from, at, to; bow
// the ends of the chord; straight, arc and square as written; along the ends of the stretch, from the
// first to the second in the line's own direction; round none, or what was said of where the tape lay;
// clear the mark; width the two sides. Sigma is nil where the book gives none, else one figure for
// every part or one a part, in metres or, of an angular kind (see Angular), radians.
type Reading struct {
	Kind     string // a member of Kinds
	Marks    []string
	Line     string // along, round, clear: the line that it was read to; "" none
	Until    string // clear: what stands where the free deck ends; "" none
	Setup    string
	Values   []Value
	Flip     bool    // seen: the instrument's y points downward in plan
	Computed bool    // a correction worked out, not a new reading
	Check    bool    // an independent check: moves nothing, proves much
	Bent     bool    // a tie taped round something: it can only be too long
	Dip      float64 // tie: how far the middle of the tape hung below its ends, metres; 0 not said
	Toward   string  // bow: deck or water, where the edge bulges; "" not said
	Tool     string
	Sigma    []float64
	Class    string // measured (default), template, drawing, owner
	Note     string
	Source   string
}

// Side says on which hand of the direction Line[0] to Line[1] a mark lies: seen, not measured.
type Side struct {
	Mark string
	Line [2]string
	Left bool
	Note string
}

// Remark is a `note` entry.
type Remark struct{ Text, Of string }

// Cannot says that a tie between two marks cannot be read; it is never proposed again.
type Cannot struct {
	Marks [2]string
	Why   string
}

// Moved says that a peg was shifted: what reads it afterwards reads another point, "B (2)".
type Moved struct {
	Mark string
	Why  string
}

// Strike takes an entry out of force.
type Strike struct {
	Of     ID
	Reason string
}

// Job describes the visit.
type Job struct {
	Name, Ref, Measured, Start, End, By, Weather string
	Alone                                        bool
}

// Private never leaves in a shared file unless asked for.
type Private struct{ Owner, Address, Phone string }

// Units says what a bare number means.
type Units struct{ Length unit.Unit }

// Place names ends and directions. Bearing in radians, clockwise from +y is not meant here:
// it is the compass bearing of the direction North.Line.
type Place struct {
	Shallow, Deep string
	House         []string
	NorthLine     [2]string // empty: not said
	NorthBearing  float64   // radians, compass bearing of NorthLine
}

// Tool is an instrument: one sd of a reading of length L is hypot(Sigma, PPM·1e-6·L). A length
// read is Scale·true + Zero. Scale 0 means 1.
type Tool struct {
	Name            string
	Sigma, PPM      float64
	Zero, Scale     float64
	SolveZero       bool // its zero is an unknown
	SolveScale      bool // its scale is an unknown
	Serial, Checked string
}

// Setup is an optional word about an instrument's set-up.
type Setup struct {
	Name       string
	Sigma      float64 // 0: not said
	SolveScale bool
}

// Rules overrides the printed tables in one book.
type Rules struct {
	Priors map[string]float64
	Sigma  map[string]float64 // by reading kind, metres; of an angular kind radians
}

// Mark is what the book says of a physical point besides its readings.
type Mark struct {
	Name       string
	Kind       string    // peg, benchmark, rim, deck, floor, feature; "" not said
	At         []float64 // nil, or two or three coordinates wanted for it
	Lasting    string
	Edge       float64 // sd of what stays open about the edge here, metres
	Definition float64 // sd of pointing, fresh at each reading, metres
	Note       string

	// Said to be 0, whatever its lines say. They are apart from the figures because a mark of
	// which nothing is said has 0 there too.
	NoEdge, NoDefinition bool
}

func (Reading) body() string { return "reading" }
func (Side) body() string    { return "side" }
func (Remark) body() string  { return "note" }
func (Cannot) body() string  { return "cannot" }
func (Moved) body() string   { return "moved" }
func (Strike) body() string  { return "strike" }
func (Job) body() string     { return "job" }
func (Private) body() string { return "private" }
func (Units) body() string   { return "units" }
func (Place) body() string   { return "place" }
func (Tool) body() string    { return "tool" }
func (Setup) body() string   { return "setup" }
func (Rules) body() string   { return "rules" }
func (Mark) body() string    { return "mark" }
func (Line) body() string    { return "line" }
func (Corner) body() string  { return "unreached" }

// Taken is a reading as the Book lists it. Struck readings stay listed, with who struck them.
type Taken struct {
	N       string // place in the list of readings, as people say it
	ID      ID
	Time    time.Time
	By      string
	Struck  bool
	Why     string // the reason, or "replaced by 31"
	Replace string // N of the reading that this one replaces, "" none
	As      string // computed: the text as it was read before the correction
	Reading
}

// Book is what a log says when all its entries are there. It holds facts only.
type Book struct {
	Name     string // job name, else the file's name
	Hash     Hash   // of the source bytes, zero when made from a log
	Job      Job
	Private  Private
	Units    Units
	Place    Place
	Rules    Rules
	Tools    []Tool  // by name
	Setups   []Setup // by name
	Marks    []Mark  // in book order
	Readings []Taken // in book order, struck ones too
	Sides    []Side  // in force only
	Remarks  []Remark
	Cannots  []Cannot // in force only
	Gone     []string // points whose peg was moved since: nobody can tape to them
	Lines    []Line   // in book order
	Corners  []Corner // unreached, in book order
	Log      Log
	Findings []finding.Finding
}

// Tool gives the tool of that name.
func (b *Book) Tool(name string) (Tool, bool) {
	for _, t := range b.Tools {
		if t.Name == name {
			return t, true
		}
	}
	return Tool{}, false
}

// Mark gives what the book says of a mark; a mark only named by readings has its name alone. A
// peg that was moved is of the kind that it was, as sharp as it was, and elsewhere.
func (b *Book) Mark(name string) Mark {
	peg := Peg(name)
	for _, m := range b.Marks {
		if m.Name == name {
			return m
		}
		if m.Name == peg {
			return Mark{Name: name, Kind: m.Kind, Definition: m.Definition, NoDefinition: m.NoDefinition}
		}
	}
	return Mark{Name: name}
}

// Setup gives what the book says of a set-up.
func (b *Book) Setup(name string) Setup {
	for _, s := range b.Setups {
		if s.Name == name {
			return s
		}
	}
	return Setup{Name: name}
}
