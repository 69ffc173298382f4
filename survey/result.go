package survey

import "brimline/basin"

// Result is everything computed from one field book, as printed by `brimline solve --json`:
// metres, degrees (bearings clockwise from +y), square metres. A pointer is null where there is
// nothing to say. Field meanings: docs/conventions.md.
type Result struct {
	Book       BookRef           `json:"book"`
	Statistics Statistics        `json:"statistics"`
	Marks      map[string]*Mark  `json:"marks"`
	Readings   []Reading         `json:"readings"`
	Walks      []struct{}        `json:"walks"`
	Lines      map[string]*Line  `json:"lines"`
	Setups     map[string]*Setup `json:"setups"`
	Tools      map[string]Tool   `json:"tools"`
	Levels     *Levels           `json:"levels"` // null where no heights are read
	Water      *Water            `json:"water"`  // null where no floor or no water is read
	Next       []Next            `json:"next"`
	Orders     []Order           `json:"orders"`
	Shape      Shape             `json:"shape"`
	Mistakes   []Mistake         `json:"mistakes"`
	Findings   []Finding         `json:"findings"`

	Basin *basin.Basin `json:"-"` // in the frame of Marks; nil where no depth is read

	MarkOrder []string `json:"-"` // names of Marks, pegs first as read, for tables
	LineOrder []string `json:"-"`
}

// BookRef names the source.
type BookRef struct {
	Name   string `json:"name"`
	SHA256 string `json:"sha256"`
}

// Statistics of the adjustment.
type Statistics struct {
	Readings    int       `json:"readings"` // values in the solution, struck and left-out ones not
	Unknowns    int       `json:"unknowns"`
	Redundancy  int       `json:"redundancy"`
	ReferenceSD *float64  `json:"reference_sd"`
	Scaled      bool      `json:"scaled"`
	ChiSquare   ChiSquare `json:"chi_square"`
	Iterations  int       `json:"iterations"`
}

// ChiSquare is the two-sided 95 % test of the sum of squared whitened residuals.
type ChiSquare struct {
	Value float64  `json:"value"`
	Low   *float64 `json:"low"`
	High  *float64 `json:"high"`
	Pass  bool     `json:"pass"`
}

// Place is a position in plan.
type Place struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// Mark is an adjusted mark; X and Y are null where the readings do not fix it.
type Mark struct {
	X            *float64 `json:"x"`
	Y            *float64 `json:"y"`
	Z            *float64 `json:"z"`
	SX           *float64 `json:"sx"`
	SY           *float64 `json:"sy"`
	SZ           *float64 `json:"sz"`
	Ellipse95    *Ellipse `json:"ellipse95"`
	Controlled   bool     `json:"controlled"`
	Hidden       *float64 `json:"hidden"`
	Alternatives []Place  `json:"alternatives"`

	Kind string `json:"-"` // peg, benchmark, rim, ...; as the book says, else found from its use
}

// Ellipse holds the semi-axes of the 95 % region and the bearing of the major, 0 to 180.
type Ellipse struct {
	Major   float64 `json:"major"`
	Minor   float64 `json:"minor"`
	Bearing float64 `json:"bearing"`
}

// Reading is one reading with what the solution says of it.
type Reading struct {
	N          string   `json:"n"`
	ID         string   `json:"id"`
	Kind       string   `json:"kind"`
	Marks      []string `json:"marks"`
	Line       string   `json:"line,omitempty"`  // along, round, clear: of the line named
	Until      string   `json:"until,omitempty"` // clear: what stands where the free deck ends
	Setup      string   `json:"setup,omitempty"`
	Tool       string   `json:"tool"`
	Value      float64  `json:"value"`
	Text       string   `json:"text,omitempty"` // as typed
	Adjusted   *float64 `json:"adjusted"`
	Residual   *float64 `json:"residual"`
	SD         float64  `json:"sd"`
	W          *float64 `json:"w"`
	Redundancy *float64 `json:"redundancy"`
	Detectable *float64 `json:"detectable"`
	State      string   `json:"state"`
	Group      *int     `json:"group"` // doubtful readings that the book cannot tell apart share one
	Likely     []Likely `json:"likely"`
	Check      bool     `json:"check,omitempty"`    // an independent check: moves nothing
	Computed   bool     `json:"computed,omitempty"` // a correction that nobody read again
	As         string   `json:"as,omitempty"`       // of such a correction: what was read
	Parts      []Part   `json:"parts"`
	Why        string   `json:"why,omitempty"` // of a struck reading
}

// Part is one value of a reading of several.
type Part struct {
	Part       string   `json:"part"`
	Value      float64  `json:"value"`
	Text       string   `json:"text,omitempty"`
	Adjusted   *float64 `json:"adjusted"`
	Residual   *float64 `json:"residual"`
	SD         float64  `json:"sd"`
	W          *float64 `json:"w"`
	Redundancy *float64 `json:"redundancy"`
	Detectable *float64 `json:"detectable"`
}

// Line is an outline or another line.
type Line struct {
	Closed   bool      `json:"closed"`
	Edge     string    `json:"edge,omitempty"`
	From     string    `json:"from,omitempty"`    // of a derived line: the line that it runs beside
	Outward  *float64  `json:"outward,omitempty"` // at this distance from it
	Inward   *float64  `json:"inward,omitempty"`  // or at this
	Length   *float64  `json:"length"`
	LengthSD *float64  `json:"length_sd"`
	Area     *float64  `json:"area"` // null for an open line
	AreaSD   *float64  `json:"area_sd"`
	Inferred *float64  `json:"inferred"`
	Family   *Family   `json:"family"` // null where the shape is none that is known, or is not looked for
	Gaps     []Gap     `json:"gaps"`
	Corners  []Corner  `json:"corners"` // that nobody reached
	Runs     []LineRun `json:"runs"`
	Vertices []Vertex  `json:"vertices"` // joints and interior curve pieces, for drawing: start of each piece and its bulge
	Waits    []string  `json:"-"`        // marks that are still without a place
}

// Family is the kind of shape that a line is found to be, with its sizes by name (metres, degrees)
// and all of it in a sentence.
type Family struct {
	Kind    string             `json:"kind"`
	Text    string             `json:"text"`
	Figures map[string]float64 `json:"figures"`
}

// Corner is one that nobody reached: where two straights meet. SD is the larger semi-axis of its
// standard ellipse, Radius that of its rounding, 0 where it is sharp.
type Corner struct {
	Name   string  `json:"name"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	SD     float64 `json:"sd"`
	Radius float64 `json:"radius"`
}

// Levels are the heights of the rim against its mean, the misclosures of level loops before adjustment,
// and the heights along every line. RimHigh and RimLow are of the first closed line that has heights.
type Levels struct {
	RimHigh    *float64    `json:"rim_high"`
	RimLow     *float64    `json:"rim_low"`
	Closure    *float64    `json:"closure"` // the largest misclosure, without its sign
	Rule       string      `json:"rule"`    // that loops are compared with
	RuleSource string      `json:"rule_source"`
	Loops      []LevelLoop `json:"loops"`
	Stations   []Station   `json:"stations"`
	Surfaces   []Surface   `json:"surfaces"`

	Collimations []Collimation `json:"collimations"` // those that were solved
}

// LevelLoop is a closed way over level and staff readings; Limit and Within are null where the rule asks
// for a length that is not known.
type LevelLoop struct {
	Marks      []string `json:"marks"`
	Readings   []string `json:"readings"`
	Setups     int      `json:"setups"`
	Length     *float64 `json:"length"`
	Misclosure float64  `json:"misclosure"`
	Limit      *float64 `json:"limit"`
	Rule       string   `json:"rule"`
	Within     *bool    `json:"within"`
}

// Station is the height of a mark of a line; Off is that against the mean of the line's stations.
type Station struct {
	Line string   `json:"line"`
	Mark string   `json:"mark"`
	Z    *float64 `json:"z"`
	SZ   *float64 `json:"sz"`
	Off  float64  `json:"off"`
}

// Collimation is the rise of a level's line of sight, metres for each metre of sight; SD is null where the
// readings could not tell it, so that it was held at nothing.
type Collimation struct {
	Tool  string   `json:"tool"`
	Value *float64 `json:"value"`
	SD    *float64 `json:"sd"`
}

// Surface is the height of a water surface.
type Surface struct {
	Name string   `json:"name"`
	Z    *float64 `json:"z"`
	SZ   *float64 `json:"sz"`
}

// Gap is a span where what lies between the marks dominates the uncertainty.
type Gap struct {
	From   string  `json:"from"`
	To     string  `json:"to"`
	Length float64 `json:"length"` // along the line
	SD     float64 `json:"sd"`     // of the line across, in the middle, beyond that of its marks
}

// Vertex starts a straight (bulge 0) or an arc (bulge = tan of a quarter of the sweep, + to the left).
type Vertex struct {
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
	Bulge float64 `json:"bulge"`
}

// LineRun is one stretch of a line. Sweep is + when turning left along the line's direction.
type LineRun struct {
	Kind      string      `json:"kind"` // straight, arc, curve
	From      string      `json:"from"`
	To        string      `json:"to"`
	Length    float64     `json:"length"`
	LengthSD  float64     `json:"length_sd"` // 0 where the line has none: nothing holds a mark of it
	Bearing   *float64    `json:"bearing,omitempty"`
	BearingSD *float64    `json:"bearing_sd,omitempty"`
	Radius    *float64    `json:"radius,omitempty"`
	RadiusSD  *float64    `json:"radius_sd,omitempty"`
	Centre    *[2]float64 `json:"centre,omitempty"`
	Sweep     *float64    `json:"sweep,omitempty"`
	SweepSD   *float64    `json:"sweep_sd,omitempty"`
	Sagitta   *float64    `json:"sagitta,omitempty"` // rise of an arc over its own chord
	SagittaSD *float64    `json:"sagitta_sd,omitempty"`
	Joint     string      `json:"joint,omitempty"` // at its start: tangent, kink, or as found ""
	Turn      *float64    `json:"turn,omitempty"`  // degrees turned at its start against the run before, + left
	Pieces    int         `json:"pieces"`          // how many entries of Vertices it takes
}

// Setup is an instrument place, with the direction of its x axis (degrees, counter-clockwise from x).
type Setup struct {
	X       *float64 `json:"x"`
	Y       *float64 `json:"y"`
	Z       *float64 `json:"z"`
	Turn    *float64 `json:"turn"`
	Scale   float64  `json:"scale"`
	ScaleSD *float64 `json:"scale_sd"`
}

// Tool is what was solved or used of an instrument.
type Tool struct {
	Zero  float64  `json:"zero"`
	Scale float64  `json:"scale"`
	SD    *float64 `json:"sd"`
}

// Likely is one explanation of what is wrong with a reading, the most probable first.
type Likely struct {
	Code        string   `json:"code"`            // of the closed list in docs/conventions.md
	Cause       string   `json:"cause"`           // in plain words
	Value       *float64 `json:"value,omitempty"` // what the reading would have been; left out where nothing says it
	Probability float64  `json:"probability"`
}

// Mistake is a human mistake found, with the edit that a person may accept.
type Mistake struct {
	Code        string   `json:"code"`
	Text        string   `json:"text"`
	Readings    []string `json:"readings"` // by n, in book order
	Edit        []Edit   `json:"edit"`     // empty where only reading again can tell
	Probability float64  `json:"probability"`
}

// Edit is one correction: the reading's value, or the marks that it was taken between.
type Edit struct {
	N     string   `json:"n"`
	Value *float64 `json:"value,omitempty"`
	Marks []string `json:"marks,omitempty"`
	Part  string   `json:"part,omitempty"` // of a reading of several values
}

// Next is a reading worth taking now.
type Next struct {
	Kind    string   `json:"kind"`
	Marks   []string `json:"marks"`
	Text    string   `json:"text"`
	About   *float64 `json:"about"` // what it will read, null where nothing says it
	Order   string   `json:"order"` // whom it helps: an order's name, or "shape"
	Gain    float64  `json:"gain"`  // by how much the worst figure falls, in Unit
	Unit    string   `json:"unit"`
	Minutes float64  `json:"minutes"`
	Alone   bool     `json:"alone"` // one person can take it
	Why     string   `json:"why"`
}

// Test is one test of an order; an order is as bad as its worst test.
type Test struct {
	Name      string   `json:"name"`
	At        string   `json:"at"`
	Value     float64  `json:"value"`
	U95       *float64 `json:"u95"`
	Tolerance float64  `json:"tolerance"`
	Share     float64  `json:"share"`
	Unseen    *float64 `json:"unseen,omitempty"` // odds that a listed mistake passes unseen and spoils it
	State     string   `json:"state"`
	Why       string   `json:"why,omitempty"`
}

// Lack is something that an order still needs.
type Lack struct {
	What    string  `json:"what"`
	How     string  `json:"how"`
	Minutes float64 `json:"minutes"`
}

// Order is one order with its verdict.
type Order struct {
	Name       string             `json:"name"`
	Kind       string             `json:"kind"`
	State      string             `json:"state"` // ready, unproven, unfit
	For        string             `json:"for"`   // price, stock, cut
	Tests      []Test             `json:"tests"`
	Lacks      []Lack             `json:"lacks"`
	Quantities map[string]float64 `json:"quantities"`
}

// Leaving is what it would mean for one order to leave now: the odds that it is spoilt, the
// likeliest ways, and the readings that would make it ready.
type Leaving struct {
	Order   string  `json:"order"`
	State   string  `json:"state"`
	Odds    float64 `json:"odds"`
	Ways    []Way   `json:"ways"`
	Buy     []Next  `json:"buy"`
	Minutes float64 `json:"minutes"`
	Ready   bool    `json:"ready"` // the readings of Buy would do
}

// Way is one way for a piece to be spoilt: the code of a listed mistake, "error" for an ordinary one.
type Way struct {
	Code     string   `json:"code"`
	At       string   `json:"at"`
	Readings []string `json:"readings"`
	Size     *float64 `json:"size,omitempty"`
	Odds     float64  `json:"odds"`
}

// Weak is a place where the most could hide: the sentence that everything serves.
type Weak struct {
	Reading string   `json:"reading"`          // n
	Mark    string   `json:"mark"`             // the edge there would move
	Error   *float64 `json:"error"`            // that could hide, metres; null: any
	Move    *float64 `json:"move"`             // of the edge, metres; null: with it
	Expose  []string `json:"expose,omitempty"` // marks to tape between to expose it
	Text    string   `json:"text"`
}

// Shape is the order that every book has: its outlines as wholes.
type Shape struct {
	State     string   `json:"state"` // ready, unproven, unfit
	Tolerance float64  `json:"tolerance"`
	Share     float64  `json:"share"`  // of the tolerance that U95 may use
	Unseen    float64  `json:"unseen"` // odds allowed that a listed mistake passes unseen and spoils it
	Worst     *float64 `json:"worst"`  // largest U95 normal to an outline at a mark
	At        string   `json:"at"`
	Why       []string `json:"why"`
	Tests     []Test   `json:"tests"`
	Weakest   []Weak   `json:"weakest"` // the places where most could hide, the worst first
}

// Finding as printed.
type Finding struct {
	Code     string             `json:"code"`
	Severity string             `json:"severity"`
	Text     string             `json:"text"`
	Marks    []string           `json:"marks"`
	Readings []string           `json:"readings"`
	Figures  map[string]float64 `json:"figures"`
	Cure     string             `json:"cure"`
}
