package fieldbook

// Floor is what the readings of the floor are joined by. Its figures are as found and are never
// adjusted.
type Floor struct {
	Breaks [][]string // lines through marks along which the slope changes
	Pad    []string   // the ring of the level bottom of a hopper
	Toe    []string   // the foot of a slope, through marks
	Coves  []Cove
}

// Cove rounds or bevels the foot of the wall below a line, from one of its marks to another in its
// own direction; From and To are "" where it goes all along it. Size is its radius or leg, metres.
type Cove struct {
	Line, From, To string
	Shape          string // round or bevel
	Size           float64
}

// Step is a flight of steps. Where is bay, beyond an opening of the rim, or inside. Opening are the
// marks at its ends; both "" where not said.
type Step struct {
	Name, Where string
	Opening     [2]string
	Treads      []Tread
}

// Tread is a level area, known by its front edge, an open line or a closed one.
type Tread struct {
	Runs []Run
	Down
}

// Down is a level so far below a surface, a line or a mark, metres. Below is "" where it is said
// nowhere: then it is that of the marks.
type Down struct {
	Below string
	Depth float64
}

// Ledge is a bench or a shelf: a solid with a level top. Its runs are the front edge, open from wall to
// wall or closed.
type Ledge struct {
	Name, Kind string // kind: bench, shelf, swim-out, rest, other; "" not said
	Runs       []Run
	Down
}

// Raised is a wall that goes on upward behind the rim: lines along its foot and its top, the
// thickness of its cap in metres, and whether it stands plumb.
type Raised struct {
	Name, Foot, Top string
	Cap             float64
	Plumb           bool
}

// Spill is an edge over which water leaves: the line of its lip, the height that it falls in metres,
// and the line of the basin that catches it, "" none.
type Spill struct {
	Name, Kind string // kind: vanishing, spillway, other; "" not said
	Lip        string
	Drop       float64
	Basin      string
}

// MarkNames lists the marks of a floor in its order; a mark may stand in it several times.
func (f Floor) MarkNames() []string {
	var out []string
	for _, br := range f.Breaks {
		out = append(out, br...)
	}
	return append(append(out, f.Pad...), f.Toe...)
}

// MarkNames lists the marks of a flight: its opening, then the edge of each tread.
func (s Step) MarkNames() []string {
	var out []string
	if s.Opening[0] != "" {
		out = append(out, s.Opening[:]...)
	}
	for _, t := range s.Treads {
		out = append(out, MarksOf(t.Runs)...)
	}
	return out
}

// MarksOf lists the marks of runs in their order, each joint once.
func MarksOf(runs []Run) []string { return Line{Runs: runs}.MarkNames() }
