package fieldbook

import "brimline/unit"

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
	Expansion       float64 // per kelvin; 0 not said: nothing is corrected for temperature
	Standard        float64 // °C at which the tape is right; of use with Expansion only
}

// Setup is an optional word about an instrument's set-up.
type Setup struct {
	Name       string
	Sigma      float64 // 0: not said
	SolveScale bool

	// Of a level. Collimation is the rise of its line of sight, metres for each metre of sight: a
	// staff so far away reads that much too high. Sight is the length of those sights that say none.
	Collimation      float64
	SolveCollimation bool // its collimation is an unknown
	Sight            float64
}

// Rules overrides the printed tables in one book.
type Rules struct {
	Priors map[string]float64
	Sigma  map[string]float64 // by reading kind, metres; of an angular kind radians

	LevelLoop LevelRule // how well a loop of levels must close; empty: not said, see Book.LevelRule
	Depths    string    // the rule set that depths and slopes are compared with, of DepthRules; "" none
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
