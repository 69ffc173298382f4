package simulate

import "brimline/plane"

// Case is a simulated visit with its truth. Points are in the frame of the pegs: A at the
// origin, B on +x.
type Case struct {
	Seed   uint64
	Shape  Shape
	Method Method
	Book   []byte // the field book, version 1

	Truth     map[string]plane.Point // every peg and mark
	Pegs      []string               // A, B, …
	Order     []string               // the marks of the rim, clockwise, r1 nearest to A
	Outline   plane.Path             // the true rim, closed, counter-clockwise
	Area      float64                // inside Outline, m²
	Perimeter float64                // of Outline, m
	Rim       Rim
	Tools     []Tool
	Setups    []Setup
	Readings  []Reading
	Side      *Side // what the book says of the hand; nil where it says nothing
	Unit      string
}

// Rim is the line `rim` of the book. Definition is 0 where the marks carry their own.
type Rim struct {
	Edge       string
	Definition float64
	JointsSaid bool // the book says which joints are tangent and which are kinks
	Runs       []Run
	Own        []float64 // definition by mark, in the order of Case.Order; nil where the line has it
}

// Run is a stretch of the rim in the book's direction, which is clockwise. Joint speaks of its
// first mark. Sweep is positive turning left; Radius and Sweep are 0 unless it is an arc.
type Run struct {
	Kind   string // straight, arc, curve
	Marks  []string
	Joint  string // tangent or kink
	Length float64
	Radius float64
	Sweep  float64
}

// Tool is a tape: one sd of a reading of length L is hypot(Sigma, PPM·1e-6·L).
type Tool struct {
	Name       string
	Sigma, PPM float64
}

// Setup is an instrument's place. Pose brings its frame, y counted upward, to the frame of the
// pegs. Sigma is that of one coordinate, 0 where the book leaves it to the default.
type Setup struct {
	Name  string
	Pose  plane.Rigid
	Flip  bool // it gives y downward
	Sigma float64
	Own   bool // each reading states the sigma, not the setup
}

// Side is what was seen of the hand of a mark.
type Side struct {
	Mark string
	Left bool // of A to B
}

// Reading is one entry of the book with its truth. Values stand part by part: the length of a
// tie; at and left of an offset (left positive, right negative); x and y of a seen mark.
type Reading struct {
	N     string   // its place in the list of the book
	Kind  string   // tie, offset, seen
	Marks []string // tie: from, to; offset: mark, from, to of the line; seen: the mark
	Setup string
	Tool  string
	Flip  bool
	Own   []float64 // sigma that the reading itself states; nil where none
	Time  string    // RFC 3339; empty where the book does not say
	By    string    // who took it; empty where the book does not say
	Check bool      // an independent check
	True  []float64
	Read  []float64 // with the noise, before typing
	Typed []float64
	Text  []string  // Typed in the unit of the book (feet and inches in a book of feet), without sign for an offset's left
	SD    []float64 // of each part by the book's own words, with the definition of its marks
}

// Options of a simulated visit. The zero value draws what is not said. Mistakes are planted on
// the finished case: see Wrong.
type Options struct {
	Exact  bool    // no noise, and figures typed to 0.1 µm
	Checks float64 // check tapes between marks of the rim, as a share of their number; 0 draws 0.15 to 0.30
}

// Pool draws a pool of shape s and measures it by method m. The same arguments give the same
// bytes. It never fails: places for pegs that would give hopeless angles are drawn again.
func Pool(seed uint64, s Shape, m Method, o Options) Case {
	shaping := stream(seed, streamShape, s.Name())
	f := s.Draw(shaping)
	if chance(shaping, 0.5) {
		f = f.Mirror()
	}
	p := staked(shaping, f.Reverse())

	v := &visit{
		r:     stream(seed, streamPlan, s.Name(), m.Name()),
		noise: stream(seed, streamNoise, s.Name(), m.Name()),
		exact: o.Exact, share: o.Checks,
	}
	if v.share == 0 {
		v.share = between(v.r, 0.15, 0.30)
	}
	c := Case{Seed: seed, Shape: s, Method: m, Unit: pick(v.r, []string{"m", "m", "m", "mm"})}
	if o.Exact {
		c.Unit = "m"
	}
	v.unit = c.Unit
	v.settle(m.pegs(v.r, p), p)
	v.equip()
	m.read(v)
	v.report(&c, p)
	c.Book = book(c)
	return c
}
