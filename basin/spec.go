package basin

import "brimline/plane"

// Height is a height in metres, upward, and its row in the covariance of the Spec; a negative row
// stands for one without error.
type Height struct {
	Z     float64
	Index int
}

// Exact is a height without error.
func Exact(z float64) Height { return Height{z, -1} }

// Spec is a basin as read.
type Spec struct {
	Rim      plane.Path // closed; the line at which walls begin
	Levels   []Level    // of the rim
	Floor    []Sounding
	Breaks   [][]int // polylines along which the slope changes, by number: points of Floor, then feet of Walls
	Pad      []int   // the level bottom of a hopper: a ring, as breaks
	Toes     [][]int // feet of slopes, as breaks
	Walls    []Foot
	Profiles []Profile
	Coves    []Cove
	Steps    []Step
	Ledges   []Ledge
	Raised   []Raised
	Spills   []Spill
	Waters   []Surface
	Shallow  *plane.Point // where people stand to say left and right; nil where not said
	Deep     *plane.Point

	Cov []float64 // of all heights, m², row by row, square
	// Outline is the variance of Σ By·(move of the rim at S), in squares of what By makes of metres:
	// the caller knows how the rim hangs on its marks, and adds what lies between them. Nil: none.
	Outline func(pushes []Push) float64
	Options Options
}

// Push is how a figure changes when the rim moves at a station: By is its slope by the place, per metre.
type Push struct {
	S  float64
	At plane.Point
	By plane.Point
}

// Level is the height of the rim, or of another line along it, at a station.
type Level struct {
	S      float64
	Height Height
	Name   string
}

// Sounding is a point of the floor. Place is the standard deviation of each coordinate of its
// place, which a slope turns into height.
type Sounding struct {
	Name   string
	At     plane.Point
	Height Height
	Place  float64
}

// Foot is the height of the foot of the wall at a station, or of the top of its cove, as a rod down
// the wall finds it.
type Foot struct {
	Name   string
	S      float64
	Height Height
	ToCove bool // the rod ended where the cove begins
}

// Profile is the face of the wall below the rim at a station.
type Profile struct {
	S      float64
	Points []Out
}

// Out is a point of a wall's face: so far below the rim, so far outward of it (inward negative), with
// the standard deviation of that. Edge says that the wall begins here, as at a track behind a nose:
// the lean is reckoned from it.
type Out struct {
	Down, Outward, SD float64
	Edge              bool
}

// Cove rounds or bevels the foot of the wall from one station to another, along the rim; From = To
// is all round. Size is the radius or the leg, metres.
type Cove struct {
	From, To float64
	Round    bool // else a bevel
	Size     float64
}

// Step is a flight of steps. In a bay it lies beyond the rim, which runs on across the opening.
type Step struct {
	Name   string
	Bay    bool
	Treads []Tread
}

// Tread is a level area: Ring is closed, along the wall it may follow the rim. Where treads overlap the higher one
// counts.
type Tread struct {
	Ring   plane.Path
	Height Height
}

// Ledge is a bench, a shelf or a swim-out: a solid with a level top that takes water away.
type Ledge struct {
	Name, Kind string
	Ring       plane.Path
	Height     Height
}

// Raised is a stretch of the rim where the wall goes on upward to a top.
type Raised struct {
	Name     string
	From, To float64
	Top      []Level
}

// Spill is a stretch of the rim where the wall ends at a lip over which water leaves.
type Spill struct {
	Name     string
	From, To float64
	Lip      []Level
}

// Surface is a water surface read.
type Surface struct {
	Name   string
	Height Height
}

// Options are habits and expectations; zero stands for the default. All are common practice, no
// source.
type Options struct {
	Snap    float64 // 0.06 m: a floor point so near to the wall was read at it
	Reach   float64 // 0.50 m: a break that ends so near to the wall runs on to it
	Spacing float64 // 0.40 m: between places along the wall foot where it has not been read
	Lean    float64 // 0.004: standard deviation of the lean of a wall that was not read, outward over down
	Wave    float64 // 0.008 m: usual size of what the floor does between soundings, before looking at them
	Length  float64 // 1.5 m: how far along the floor that stays alike
}

// or gives each option that is not said its default.
func (o Options) or() Options {
	for _, d := range []struct {
		to    *float64
		value float64
	}{{&o.Snap, 0.06}, {&o.Reach, 0.5}, {&o.Spacing, 0.4}, {&o.Lean, 0.004}, {&o.Wave, 0.008}, {&o.Length, 1.5}} {
		if !(*d.to > 0) {
			*d.to = d.value
		}
	}
	return o
}
