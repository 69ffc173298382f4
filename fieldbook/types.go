package fieldbook

import (
	"time"

	"brimline/finding"
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
// clear the mark; width the two sides; level from, to; staff, wall, plumb and profile the mark; water
// the mark that the surface lies under; depth the mark, then where a string places it the ends of the
// string. In a Book (see Taken) the mark that a depth was read below stands last as well.
//
// Parts of the kinds that read heights: level rise (the second mark above the first, negative below);
// staff, water, wall and depth is, of a depth placed from a string also at and left (right negative);
// plumb down and outward; profile outward, down, or one of them (inward and upward negative).
//
// Sigma is nil where the book gives none, else one figure for every part or one a part, in metres or,
// of an angular kind (see Angular), radians.
type Reading struct {
	Kind     string // a member of Kinds
	Marks    []string
	Line     string // along, round, clear: the line that it was read to; "" none
	Until    string // clear: what stands where the free deck ends; "" none
	Setup    string // seen, staff
	Water    string // water: the name of the surface
	Below    string // depth: what it was read below: a surface, a line or a mark; see Taken.BelowIs
	From, To string // wall, profile: the edges between which it was read, of Edges
	Values   []Value
	Flip     bool    // seen: the instrument's y points downward in plan
	Slope    bool    // tie, depth below a mark: the tape sloped; its length is that in space
	Sight    float64 // staff: the length of sight, metres; 0 not said here (see Book.Sight)
	Warmed   bool    // taped lengths: the tape's temperature was noted
	Celsius  float64 // that temperature, °C
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
func (Floor) body() string   { return "floor" }
func (Step) body() string    { return "step" }
func (Ledge) body() string   { return "ledge" }
func (Raised) body() string  { return "raised" }
func (Spill) body() string   { return "spill" }

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
	BelowIs string // depth: what Below names: water, line or mark; the mark then stands last in Marks
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
	Floor    Floor
	Steps    []Step // flights, ledges, raised walls and spills in book order
	Ledges   []Ledge
	Raised   []Raised
	Spills   []Spill
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
