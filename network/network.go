// Package network turns a field book into numbered unknowns and numbered readings: from here on
// there are no names in the arithmetic. It holds what each kind of reading predicts; it does
// not solve anything.
//
// Unknowns come in blocks: one block of two (x, y) for every mark, then one block for every
// instrument set-up (x, y, turn and, when asked for, scale), then the free blocks: what a reading
// brings along that is neither (see Free). Metres and radians, x right, y up.
package network

import (
	"math"

	"brimline/plane"
)

// Unknown is the number of a block of unknowns. Marks come first: block i is mark i.
type Unknown int32

// State holds the values of all unknowns, block after block (Network.Offset).
type State []float64

// Kind is one kind of reading. Predict fills value (one entry a part) and jac (parts × the sum
// of the sizes of the touched blocks, row-major). Sigma fills the default standard deviations,
// one a part, of a reading that has none of its own and no tool.
type Kind interface {
	Name() string
	Parts(o *Obs) []string // names, one a value
	Touches(o *Obs) []Unknown
	Predict(x State, o *Obs, value, jac []float64)
	Sigma(o *Obs, sd []float64)
}

// Curved is a kind that also knows its second derivatives: Curve adds Σ f[part]·∇²value to hess
// (size × size of the touched unknowns, row-major).
type Curved interface {
	Curve(x State, o *Obs, f, hess []float64)
}

// Kinds is the family, one file each.
var Kinds = []Kind{Tie{}, Offset{}, Seen{}, Turn{}, Straight{}, Arc{}, Square{}, Bow{}, Along{}, Round{}, Clear{}, Width{},
	Level{}, Staff{}, Water{}, Depth{}, Wall{}, Plumb{}, Profile{}}

// Asserted is a kind that reads no figure: Says is what holds in each of its parts.
type Asserted interface{ Says() float64 }

// KindNamed finds a member of Kinds.
func KindNamed(name string) (Kind, bool) {
	for _, k := range Kinds {
		if k.Name() == name {
			return k, true
		}
	}
	return nil, false
}

// Obs is one reading in numbers. A length read is Scale·true + Zero.
type Obs struct {
	Kind     Kind
	Reading  int // place in Book.Readings
	Marks    []int
	Setup    int // place in Network.Setups, -1 none
	Blocks   []Unknown
	At       []int // offset of each block in the State
	Size     int   // scalars touched
	Values   []float64
	SD       []float64
	Flip     bool
	Zero     float64
	Scale    float64
	Solve    bool    // seen: the set-up's scale is unknown
	Check    bool    // an independent check: left out of the solution, counted for what it proves
	Computed bool    // a correction that nobody read again: takes part only where nothing else holds the mark
	Sag      float64 // a tie: by how much its tape hung longer than straight, metres
	Long     float64 // a reading that can only be too long: a further sd, in squares, while it is longer than predicted
	Free     int     // place in Network.Free of the block that it brings along, -1 none
	Upright  bool    // it reads heights: Marks is empty, and Of the marks whose heights it reads
	Of       []int
	Skip     int     // its first value's place among those of the reading, which has another observation before it
	Foot     *Foot   // depth: where it is read below a line or along the slope; nil otherwise
	Sight    float64 // staff: length of sight, metres
	Slope    bool    // tie: taped along the slope, between marks whose heights are solved
	Climb    float64 // tie along the slope: about by how much its ends differ in height, metres
	Track    *Track  // along, round, clear: what it sees of its line; nil of other kinds

	// Extra lists the blocks of Network.Free that it touches, its own first, its tool's last; the
	// tool's zero and scale are unknowns where they are said to be solved.
	Extra                 []Unknown
	SolveZero, SolveScale bool

	Use    bool // false: struck, an owner's word or a drawing; kept so that residuals can be shown
	Sketch bool // from a drawing: helps to locate, never in the result
}

// Path is the order of marks along a line, for telling mirror images apart.
type Path struct {
	Name   string
	Closed bool
	Marks  []int
}

// Side says on which hand of A→B a mark lies.
type Side struct {
	Mark, A, B int
	Left       bool
}

// Wanted is a place that the book wants for a mark.
type Wanted struct {
	Mark int
	At   plane.Point
}

// WantedHeight is a height that the book wants for a mark, metres.
type WantedHeight struct {
	Mark int
	Z    float64
}

// Free is a block of unknowns that is neither a mark nor a set-up: the free line of a `straight`
// (direction and distance), the free circle of an `arc` (direction, distance, curvature), the
// rise of a `bow` (one), the zero or scale of a tool (one or two: zero first), and the heights, one
// each, metres up: of a mark, of a staff set-up's line of sight, of a water surface, of a line taken as
// level, of the zero of an instrument; the collimation of a level, radians.
type Free struct {
	Kind        string // straight, arc, bow, tool, height, sight, water, rim, pole, collimation
	Name        string // of the tool, mark, set-up, surface or line; "" otherwise
	Size        int
	Zero, Scale bool   // tool: what is solved
	Marks       []int  // bow: the ends of its chord
	Toward      string // bow: deck or water, where the edge bulges; "" not said
}

// Network is a field book in numbers.
type Network struct {
	Marks      []string
	Setups     []string
	Free       []Free
	Offset     []int // of each block in the State; one more entry at the end
	Obs        []Obs
	Base       [2]int // origin and the mark on +x; -1 where the book has none
	Level      int    // place in Free of the height that is held at 0 (see Datum); -1 where the book has no heights
	Paths      []Path
	Lines      []Line // those with runs of their own
	Sides      []Side
	Wanted     []Wanted
	Heights    []WantedHeight
	Definition []float64 // by mark: sd of pointing, fresh at each reading
	Edge       []float64 // by mark: sd of what stays open about the edge there
	Pegs       []bool    // by mark: peg or benchmark
	Gone       []bool    // by mark: its peg was moved since, so that nobody can tape to it; nil: none
	ByName     map[string]int
	SetupAt    map[string]int

	MostParts, MostSize int // the largest of all readings: parts, and scalars touched
}

// Taped says whether a tape can still be laid to a mark: its peg was not moved since.
func (n *Network) Taped(mark int) bool { return n.Gone == nil || !n.Gone[mark] }

// Dim is the number of scalars of a block.
func (n *Network) Dim(b Unknown) int { return n.Offset[b+1] - n.Offset[b] }

// SetupBlock is the block of a set-up.
func (n *Network) SetupBlock(setup int) Unknown { return Unknown(len(n.Marks) + setup) }

// FreeBlock is the block of a member of Free.
func (n *Network) FreeBlock(free int) Unknown { return Unknown(len(n.Marks) + len(n.Setups) + free) }

// Datum is the block of the height that is held at 0; false where there are no heights.
func (n *Network) Datum() (Unknown, bool) {
	if n.Level < 0 || n.Level >= len(n.Free) || !n.Free[n.Level].Upward() {
		return 0, false
	}
	return n.FreeBlock(n.Level), true
}

// NewState is a state of NaN: nothing has a place.
func (n *Network) NewState() State {
	x := make(State, n.Offset[len(n.Offset)-1])
	for i := range x {
		x[i] = math.NaN()
	}
	return x
}

// Point is the place of a mark in a state.
func (x State) Point(mark int) plane.Point { return plane.Point{X: x[2*mark], Y: x[2*mark+1]} }

// SetPoint puts a mark somewhere.
func (x State) SetPoint(mark int, p plane.Point) { x[2*mark], x[2*mark+1] = p.X, p.Y }

// Placed says whether a block has values.
func (n *Network) Placed(x State, b Unknown) bool { return !math.IsNaN(x[n.Offset[b]]) }

// Ready says whether everything that a reading touches has a place.
func (n *Network) Ready(x State, o *Obs) bool {
	for _, at := range o.At {
		if math.IsNaN(x[at]) {
			return false
		}
	}
	return true
}

// Misfit is the largest |predicted − read| / sd over the parts of a reading, infinite where it
// has no place yet. A reading that can only be too long is looser while it is.
func (n *Network) Misfit(x State, o *Obs) float64 {
	if !n.Ready(x, o) {
		return math.Inf(1)
	}
	var few [3 + 3*8]float64
	parts, all := len(o.Values), few[:]
	if need := parts * (1 + o.Size); need > len(few) {
		all = make([]float64, need)
	}
	v, j := all[:parts], all[parts:]
	o.Kind.Predict(x, o, v, j[:parts*o.Size])
	worst := 0.0
	for k := range o.Values {
		off, sd := v[k]-o.Values[k], o.SD[k]
		if o.Long > 0 && off < 0 {
			sd = math.Hypot(sd, o.Long)
		}
		worst = math.Max(worst, math.Abs(off)/sd)
	}
	return worst
}
