package mistake

import (
	"brimline/adjust"
	"brimline/plane"
)

// State says what is known of a reading.
type State int

// Good: nothing shows a mistake in it. Suspect: a mistake is shown and is in this reading.
// Doubtful: a mistake is shown, in it or in another of its group.
const (
	Good State = iota
	Suspect
	Doubtful
)

// Explanation is one thing that may have been done; Value is NaN where nothing says it.
type Explanation struct {
	Code, Cause string
	Part        int // of the solution's parts
	Value       float64
	Peg         int // wrong-peg: the mark it was taped to; -1 otherwise
	Chance      float64
}

// Group is a set of readings of which one is wrong and which the book cannot tell apart.
type Group struct {
	Number int
	Obs    []int
	Chance []float64 // that it is this one
}

// Edit gives a part another value, or takes a tie to have been read from another peg.
type Edit struct {
	Part  int
	Value float64
	Peg   [2]int // wrong-peg: the peg in the book and the peg taped to; both -1 otherwise
}

// Mistake is what was probably done, in one reading or in a group of them.
type Mistake struct {
	Code, Cause string
	Obs         []int
	Peg, Other  int // columns: both pegs; slip, peg-moved: the peg; water-moved: Other the surface, its place in Network.Free; -1 otherwise
	From, To    int // marks: rows from and to; -1 otherwise
	Size        float64
	Tool        string
	Doubtful    bool
	Edits       []Edit
	Chance      float64
}

// Report is everything that was found.
type Report struct {
	Solution *adjust.Solution // the mistaken readings left out
	State    []State          // by observation
	Group    []int            // by observation, 0 none
	Wrong    []float64        // by observation: posterior that it is mistaken
	Likely   [][]Explanation  // by observation, the most probable first
	Groups   []Group
	Mistakes []Mistake
	Other    [][]plane.Point // by mark: where else a doubtful group may put it (inner datum)
	Held     []int           // observations that take part with their corrected value, because nothing else holds a mark
}

func newReport(s *adjust.Solution) *Report {
	n := len(s.In)
	return &Report{Solution: s, State: make([]State, n), Group: make([]int, n), Wrong: make([]float64, n),
		Likely: make([][]Explanation, n), Other: make([][]plane.Point, len(s.Net.Marks))}
}
