package basin

import (
	"fmt"
	"math"

	"brimline/finding"
	"brimline/plane"
)

// Basin is the body of a pool, ready to be asked. It does not change.
type Basin struct {
	rim      plane.Path
	whole    float64 // its length
	reversed bool    // the path given ran clockwise
	options  Options

	inputs    []input
	levels    []leveled
	brink     float64 // height of a rim that nobody read
	profiles  []profile
	outs      []Out
	wallForm  []form
	floorForm []form
	runout    []int // the input of each side that says whether the floor runs on
	sided     int
	turnings  []turning

	feet   []known
	inner  []int
	footOf map[int]float64 // of floor points at the wall: station
	runs   map[int]float64 // of break ends carried on to the wall
	number map[int]int     // of inner floor points: point of the ground

	nodes    []node
	read     *readGround
	base     *ground // the floor carried on to the wall
	floor    *ground // the floor itself, along coves, steps and ledges
	edged    []bool  // by point of base: at the wall or on a break
	breaks   [][]int // by points of base: breaks, pad and toes
	class    []int   // by triangle of floor: the solid that covers it; −1 none
	solids   []solid
	bays     []solid
	raised   []stretch
	spills   []stretch
	shell    shell
	cov      []float64
	rows     int
	outline  func([]Push) float64
	waters   []Surface
	sampling spacing // what the spacing of soundings leaves open
	leans    spacing // and that of the profiles
	axis     [2]plane.Point
	soundAt  []int  // inputs of depths
	used     []bool // by input: the floor hangs on it
	lows     []form // of the nodes, as laid last
	found    []finding.Finding
}

// rounds is how often the floor is laid: the place of the wall foot hangs on its depth by the lean
// of the wall, a few thousandths, so that the second time it is settled.
const rounds = 2

// New builds the basin. It fails for a rim that is no ring and for numbers out of range; a basin
// without any depth read at it is nil with a finding.
func New(spec Spec) (*Basin, []finding.Finding, error) {
	spec.Options = spec.Options.or()
	b := &Basin{options: spec.Options, cov: spec.Cov, outline: spec.Outline, waters: spec.Waters}
	if err := b.check(&spec); err != nil {
		return nil, nil, fmt.Errorf("basin: %w", err)
	}
	if len(spec.Floor)+len(spec.Walls) == 0 {
		return nil, []finding.Finding{{Code: "floor-unread"}}, nil
	}
	b.rim = spec.Rim
	if b.reversed = spec.Rim.Area() < 0; b.reversed {
		b.rim = spec.Rim.Reverse()
	}
	b.whole = b.rim.Length()
	b.findTurnings(spec.comesIn())
	b.readInputs(&spec)
	b.readProfiles(spec.Profiles)
	b.readSolids(&spec)
	if !b.layOut(&spec) {
		return nil, append(b.found, finding.Finding{Code: "floor-unread"}), nil
	}
	b.learn()
	b.axis = b.lengthwise(&spec)
	return b, b.found, nil
}

func (b *Basin) say(f finding.Finding) { b.found = append(b.found, f) }

// comesIn is about how far walls and coves come in or go out below the rim.
func (s *Spec) comesIn() float64 {
	size, high, low, lean := 0.0, math.Inf(-1), math.Inf(1), 0.0
	for _, c := range s.Coves {
		size = math.Max(size, c.Size)
	}
	for _, h := range s.heights() {
		high, low = math.Max(high, h.Z), math.Min(low, h.Z)
	}
	for _, p := range s.Profiles {
		for _, o := range p.Points {
			if o.Down >= least {
				lean = math.Max(lean, math.Abs(o.Outward)/o.Down*(high-low))
			} else {
				lean = math.Max(lean, math.Abs(o.Outward))
			}
		}
	}
	return size + lean
}

// layOut places the nodes, lays the floor and raises everything on it; false where no depth is left to lay
// it from.
func (b *Basin) layOut(spec *Spec) bool {
	said := len(b.found)
	for round := range rounds {
		b.found = b.found[:said]
		b.readFeet(spec)
		if len(b.feet)+len(b.inner) == 0 {
			return false
		}
		b.place(b.stations(spec))
		b.lowRead()
		for i := range b.nodes {
			n := &b.nodes[i]
			n.foot = n.at
			if round > 0 {
				u, _ := b.lean(n.s, b.value(n.rim)-b.value(b.lows[i]))
				n.foot = n.at.Add(n.out.Mul(u))
			}
		}
		b.layGround(spec)
		b.lows = nil // the nodes stand in the same places every round
		for i := range b.nodes {
			b.lows = append(b.lows, b.nodes[i].low)
		}
		if len(b.profiles) == 0 {
			break
		}
	}
	b.used = make([]bool, len(b.inputs))
	for _, f := range b.base.forms {
		for _, t := range f.terms {
			b.used[t.in] = true
		}
	}
	b.farFromWall()
	b.layToe(spec)
	b.raise()
	return true
}

// station brings a station of the path given to the ring that runs counter-clockwise.
func (b *Basin) station(s float64) float64 {
	if b.reversed {
		s = b.whole - s
	}
	return b.wrap(s)
}

// stretchOf is a stretch of the path given, in the direction of the ring.
func (b *Basin) stretchOf(from, to float64) (float64, float64) {
	if b.reversed {
		from, to = to, from
	}
	return b.station(from), b.station(to)
}

// stations are the places along the rim that something needs.
func (b *Basin) stations(spec *Spec) []float64 {
	var out []float64
	for _, k := range b.feet {
		out = append(out, k.s)
	}
	out = append(out, b.openStations(spec.Options.Spacing)...)
	ends := func(from, to float64) {
		if from != to {
			out = append(out, b.beyond(from, -1), from, to, b.beyond(to, 1))
		}
	}
	for _, c := range spec.Coves {
		from, to := b.stretchOf(c.From, c.To)
		ends(from, to)
	}
	for _, x := range append(append([]stretch(nil), b.raised...), b.spills...) {
		ends(x.from, x.to)
	}
	for _, x := range b.solids {
		for _, s := range x.touch {
			out = append(out, b.beyond(s, -1), s, b.beyond(s, 1))
		}
	}
	for i, p := range b.profiles { // and between, since two triangles only come near a twisted wall
		length := b.ahead(p.s, b.profiles[(i+1)%len(b.profiles)].s)
		n := max(1, int(math.Ceil(length/spec.Options.Spacing)))
		for k := range n {
			out = append(out, p.s+length*float64(k)/float64(n))
		}
	}
	for _, x := range b.bays {
		out = append(out, x.touch...)
	}
	return out
}

// edge is the length along the rim over which what changes abruptly is drawn to change (metres).
const edge = 0.005
