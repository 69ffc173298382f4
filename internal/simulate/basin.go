package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// BasinKinds are the kinds of basins drawn by DrawBasin.
var BasinKinds = []string{"flat", "slope", "hopper", "coved", "leaning walls", "steps"}

// Basin is a simulated pool in three dimensions: what was read of it, with the standard deviation of
// each reading, and what is true. Heights count from a mark of the rim; heights found below the water share the error
// of its surface.
type Basin struct {
	Kind string
	Seed uint64

	Rim    plane.Path // as read, counter-clockwise
	Modes  []RimMode  // how the rim read may differ from the true one
	Levels []BasinLevel
	Water  BasinHeight
	Floor  []BasinPoint
	Breaks [][]int // through points of Floor, then of Feet
	Pad    []int
	Feet   []BasinLevel // of the wall
	Faces  []BasinFace
	Cove   float64 // size, all round; 0 none
	Round  bool
	Treads []BasinTread
	Ledges []BasinTread
	Exact  *float64 // the level asked for; nil for the water surface

	True BasinTruth
}

// BasinHeight is a height read: Own is its own standard deviation, besides what it shares with the
// water surface when Below.
type BasinHeight struct {
	Z, Own float64
	Below  bool
}

// BasinLevel is a height at a station of the rim read.
type BasinLevel struct {
	S      float64
	Height BasinHeight
}

// BasinPoint is a depth with the place where it is said to be read and the standard deviation of each
// coordinate of that.
type BasinPoint struct {
	At     plane.Point
	Height BasinHeight
	Place  float64
}

// BasinFace is the wall's face at a station: outward at two depths below the rim.
type BasinFace struct {
	S                 float64
	Down, Outward, SD []float64
}

// BasinTread is a level area.
type BasinTread struct {
	Ring   plane.Path
	Height BasinHeight
}

// RimMode is one way for the rim to lie wrong: Move is how a station of the rim read moves when the mode
// is 1; the mode is normal with standard deviation SD.
type RimMode struct {
	SD   float64
	Move func(s float64) plane.Point
}

// BasinTruth is what is true at the level asked for, and the true height of the floor at some places.
type BasinTruth struct {
	Level, Volume, Area, Wetted float64
	Places                      []plane.Point
	Heights                     []float64
}

// Standard deviations of the readings, common practice, no source.
const (
	basinCorner = 0.006 // of each coordinate of a corner of the rim
	BasinWater  = 0.003 // of the water surface, shared by every depth below it
	basinLevel  = 0.0015
	basinFoot   = 0.004
	basinTread  = 0.004
	basinFace   = 0.002
	basinPlumb  = 0.004 // of the lean of walls said to be plumb, outward over down
)

// basinDraw is a basin in the making.
type basinDraw struct {
	*Basin
	r             *rand.Rand
	rim           plane.Path // true
	ring          []ringPoint
	length, width float64
	ground        func(x, y float64) float64 // true floor without its waves
	waves         []wave
	lean          func(i int) float64 // by corner of the ring
	rise          func(s float64) float64
	n             int // soundings
	rod, place    float64
	water         float64 // true
	off           float64 // of the water surface read
	hopper        [5]float64
	breaks        []float64 // x of slope breaks
	solids        []trueSolid
}

// trueSolid is an upright box with a level top.
type trueSolid struct {
	x0, x1, y0, y1, top float64
	ledge               bool
}

// DrawBasin draws a basin of a kind of BasinKinds and reads it with 12 to 60 soundings. The same
// arguments give the same basin.
func DrawBasin(seed uint64, kind string) *Basin {
	r := stream(seed, streamBasin, kind)
	d := &basinDraw{Basin: &Basin{Kind: kind, Seed: seed}, r: r, n: 12 + r.IntN(49)}
	d.length, d.width = between(r, 7, 12), between(r, 3.6, 5.5)
	d.rod, d.place = between(r, 0.004, 0.010), between(r, 0.005, 0.030)
	d.drawRim()
	d.drawFloor()
	d.drawWalls()
	d.drawSolids()
	d.readWater()
	d.readFloor()
	d.readWalls()
	d.readSolids()
	d.truth()
	return d.Basin
}

func (d *basinDraw) normal(sd float64) float64 { return sd * d.r.NormFloat64() }

// wave is one of the floor's waves.
type wave struct{ size, kx, ky, at float64 }

// drawWaves draws what the floor does besides: ten waves, each in its own direction, of lengths between 1.5 and 6 m.
func (d *basinDraw) drawWaves() {
	size := 0.003 * math.Exp(d.r.Float64()*math.Log(5)) // 3 to 15 mm
	const n = 10
	for range n {
		s, c := math.Sincos(2 * math.Pi * d.r.Float64())
		k := 2 * math.Pi / between(d.r, 1.5, 6)
		d.waves = append(d.waves, wave{size * math.Sqrt(2.0/n), k * c, k * s, 2 * math.Pi * d.r.Float64()})
	}
}

// floor is the true height of the floor at a place.
func (d *basinDraw) floor(x, y float64) float64 {
	z := d.ground(x, y)
	for _, w := range d.waves {
		z += w.size * math.Cos(w.kx*x+w.ky*y+w.at)
	}
	return z
}

// drawFloor draws the shape of the floor.
func (d *basinDraw) drawFloor() {
	d.drawWaves()
	r, l, w := d.r, d.length, d.width
	shallow := between(r, 1.0, 1.3) + 0.15
	deep := shallow + between(r, 0.5, 1.3)
	tilt := between(r, -1, 1) / 60
	ways := d.Kind
	if ways == "leaning walls" || ways == "steps" {
		ways = pick(r, []string{"flat", "slope"})
	}
	switch ways {
	case "slope":
		from, to := l*between(r, 0.25, 0.45), l*between(r, 0.65, 0.85)
		d.breaks = []float64{from, to}
		d.ground = func(x, y float64) float64 {
			return -shallow - (deep-shallow)*math.Max(0, math.Min(1, (x-from)/(to-from))) + tilt*(y-w/2)/4
		}
	case "hopper":
		flat, pad, back := l*between(r, 0.3, 0.4), l*between(r, 0.2, 0.28), between(r, 1.2, 1.6)
		side := between(r, 1.0, 1.3)
		toe := l - pad - back
		d.hopper = [5]float64{flat, toe, toe + pad, side, w - side}
		d.ground = func(x, y float64) float64 {
			t := math.Min((x-flat)/(toe-flat), (l-x)/back)
			t = math.Min(t, math.Min(y/side, (w-y)/side))
			return -shallow - (deep-shallow)*math.Max(0, math.Min(1, t))
		}
	default:
		d.ground = func(x, y float64) float64 { return -shallow + tilt*(x-l/2) }
	}
	if d.Kind == "coved" {
		d.Cove, d.Round = between(r, 0.08, 0.20), chance(r, 0.6)
	}
}

// drawSolids draws steps at the shallow end and a bench.
func (d *basinDraw) drawSolids() {
	if d.Kind != "steps" {
		return
	}
	r := d.r
	wide := between(r, 1.6, 2.6)
	from := pick(r, []float64{0, (d.width - wide) / 2})
	for k := range 3 {
		d.solids = append(d.solids, trueSolid{0, 0.3 * float64(3-k), from, from + wide, -0.35 - 0.28*float64(2-k), false})
	}
	if chance(r, 0.5) {
		x := d.length * between(r, 0.35, 0.5)
		d.solids = append(d.solids, trueSolid{x, x + between(r, 1.5, 2.5), 0, 0.45, -between(r, 0.5, 0.7), true})
	}
}

// solid is the top of what stands at a place above the floor; −Inf for nothing.
func (d *basinDraw) solid(x, y float64) float64 {
	top := math.Inf(-1)
	for _, s := range d.solids {
		if x >= s.x0 && x <= s.x1 && y >= s.y0 && y <= s.y1 {
			top = math.Max(top, s.top)
		}
	}
	return top
}
