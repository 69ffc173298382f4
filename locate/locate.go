// Package locate finds start coordinates for a network from nothing: no hints, some readings
// wrong, mirror images told apart where anything in the book can.
//
// Marks are placed one after another where circles, offsets and instrument points cross; readings
// beyond those needed vote. A mark with two possible places waits until a third reading decides;
// what nothing decides is settled by a `side` entry, by the order of marks along their line, or
// by custom, and is reported with both places. The frame is arbitrary but for the hand.
package locate

import (
	"math"
	"slices"

	"brimline/finding"
	"brimline/network"
	"brimline/plane"
)

// Start is where an adjustment can begin.
type Start struct {
	X        network.State   // NaN where the readings do not fix a block
	Other    [][]plane.Point // by mark: its other possible place, when readings leave two
	Findings []finding.Finding
}

// Find places as many marks and set-ups as the readings fix.
func Find(n *network.Network) Start {
	best := (*growth)(nil)
	for i, seed := range seeds(n) {
		for _, left := range []bool{true, false} {
			g := newGrowth(n, left)
			g.begin(seed)
			g.run()
			g.judge()
			if best == nil || g.better(best) {
				best = g
			}
			if !g.gauged || !g.handed() {
				break // the other hand is only this one's mirror image
			}
		}
		if best.good() && i >= 0 {
			break
		}
	}
	if best == nil {
		s := Start{X: n.NewState(), Other: make([][]plane.Point, len(n.Marks))}
		if _, heights := n.Datum(); !heights || slices.ContainsFunc(n.Obs, func(o network.Obs) bool { return o.Use && !o.Upright }) {
			s.Findings = []finding.Finding{{Code: "no-datum"}}
		}
		return s
	}
	best.settleHand()
	return best.report()
}

// length is the true level length that a tie says.
func length(o *network.Obs) float64 {
	d := (o.Values[0] - o.Zero) / o.Scale
	if o.Climb > 0 && d > o.Climb {
		return math.Sqrt(d*d - o.Climb*o.Climb)
	}
	return d
}

// growth is one attempt: marks placed from a seed.
type growth struct {
	n       *network.Network
	of      [][]int // observations of each mark
	pos     []plane.Point
	placed  []bool
	other   [][]plane.Point // second place of a mark, while or because nothing decides
	pose    []*pose         // of each set-up
	dirty   []bool
	left    bool // the hand given to the first mark that could lie on either side
	gauged  bool // that choice was made
	gauge   int
	pinned  bool         // an offset or a set-up took part, so the hand is read
	chosen  []bool       // placed by order or custom, not by readings
	mirror  [][2]int     // by mark: the pair of marks about which its two places mirror
	cost    float64      // capped sum over readings
	bad     int          // readings far off
	usable  int          // readings between placed marks
	count   int          // placed marks
	waiting []*candidate // by mark: what is known of a mark that waits
	order   []int        // marks as they were placed
	from    [][2]int     // by mark: the two marks whose circles gave its place, -1 none
	ends    []bool       // by mark: an end of a baseline with offsets, which must keep still
	kept    []group      // choices made
	bridged []bridge
	lend    bool      // lent readings may propose places: nothing else is left
	nudged  candidate // working space of nudge
}

func newGrowth(n *network.Network, left bool) *growth {
	k := len(n.Marks)
	g := &growth{n: n, of: make([][]int, k), pos: make([]plane.Point, k), placed: make([]bool, k), other: make([][]plane.Point, k),
		pose: make([]*pose, len(n.Setups)), dirty: make([]bool, k), left: left, gauge: -1, chosen: make([]bool, k), mirror: make([][2]int, k), waiting: make([]*candidate, k), ends: make([]bool, k), from: make([][2]int, k)}
	for i := range n.Obs {
		if n.Obs[i].Track != nil {
			continue // what is read along or to a line places no mark
		}
		if n.Obs[i].Use || n.Obs[i].Sketch {
			for k, m := range n.Obs[i].Marks {
				g.of[m] = append(g.of[m], i)
				if _, ok := n.Obs[i].Kind.(network.Offset); ok && k > 0 {
					g.ends[m] = true
				}
			}
		}
	}
	for m := range g.dirty {
		g.dirty[m] = true
	}
	return g
}

func (g *growth) begin(s seed) {
	if s.setup < 0 {
		g.place(s.a, plane.Point{})
		g.place(s.b, plane.Point{X: s.dist})
		return
	}
	g.pose[s.setup] = &pose{scale: 1} // its marks tell whether the hand is read
}

func (g *growth) place(m int, p plane.Point) {
	g.from[m] = [2]int{-1, -1}
	if w := g.waiting[m]; w != nil && len(w.places) > 0 {
		g.from[m] = w.places[0].pair
	}
	g.pos[m], g.placed[m], g.waiting[m] = p, true, nil
	g.order = append(g.order, m)
	for _, i := range g.of[m] {
		for _, q := range g.n.Obs[i].Marks {
			g.dirty[q] = true
		}
	}
}

// run places all it can: first what readings decide, then the hand of the figure, then what only
// the order of marks or custom decides.
func (g *growth) run() {
	for {
		switch {
		case g.placeCertain(goodAngle):
		case g.takeHand():
		case g.choose():
		case g.placeCertain(0):
		case g.borrow():
		case g.bridge():
		default:
			g.settle(6)
			g.reconsider()
			g.straighten()
			g.settle(6)
			g.pinned = g.pinned || g.readByTurn()
			return
		}
	}
}

// borrow lets lent readings propose places from here on; false where they do already, or where no
// mark without a place has one.
func (g *growth) borrow() bool {
	if g.lend {
		return false
	}
	for m, ok := range g.placed {
		for _, i := range g.of[m] {
			if !ok && lent(&g.n.Obs[i]) {
				g.lend, g.dirty[m] = true, true
			}
		}
	}
	return g.lend
}

// bridge puts a mark whose two ties cannot meet midway between them, at the very end: one of them is
// wrong, and from there the adjustment can say so. False where there is none.
func (g *growth) bridge() bool {
	for m, ok := range g.placed {
		if ok || len(g.of[m]) == 0 {
			continue
		}
		i, j, _, missed := g.apart(m)
		if !missed {
			continue
		}
		c := &candidate{g: g, mark: m}
		g.constraint(c, &g.n.Obs[i])
		g.constraint(c, &g.n.Obs[j])
		u, v := c.circles[0], c.circles[1]
		p, _, _ := plane.MeetCircles(u.centre, u.r, v.centre, v.r)
		g.place(m, p.Add(v.centre.Sub(u.centre).Unit().Left().Mul(g.towards(u.centre, v.centre)*besideLine)))
		g.bridged = append(g.bridged, bridge{m, i, j})
		return true
	}
	return false
}

// besideLine is how far off the line of both ends such a mark is put, on the hand of the other marks, so
// that a side said of it still speaks for them, metres.
const besideLine = 0.05

// towards is 1 where most placed marks lie left of the line from a to b, else −1.
func (g *growth) towards(a, b plane.Point) float64 {
	n := 0
	for m, ok := range g.placed {
		if ok && !g.n.Pegs[m] {
			if b.Sub(a).Cross(g.pos[m].Sub(a)) > 0 {
				n++
			} else {
				n--
			}
		}
	}
	if n < 0 {
		return -1
	}
	return 1
}

// bridge is a mark between two ties that cannot meet.
type bridge struct{ mark, first, second int }

// handed says whether any reading of the network knows left from right.
func (g *growth) handed() bool {
	for i := range g.n.Obs {
		switch g.n.Obs[i].Kind.(type) {
		case network.Offset, network.Seen, network.Turn:
			return true
		}
	}
	return false
}

// farOff and cap: a reading counts as far off beyond farOff of its widened sd.
const (
	farOff = 3.0
	capAt  = 9.0
)

// widened is the sd of a reading between start coordinates that are themselves only near.
func widened(sd float64) float64 { return math.Hypot(3*sd, nearness) }

// nearness is how well start coordinates stand to each other (metres).
const nearness = 0.01

// judge scores the attempt over all readings between placed marks.
func (g *growth) judge() {
	x := g.state()
	g.n.Begin(x)
	for _, ok := range g.placed {
		if ok {
			g.count++
		}
	}
	for i := range g.n.Obs {
		o := &g.n.Obs[i]
		if !o.Use || o.Upright {
			continue
		}
		if !g.n.Ready(x, o) { // a reading that finds no use counts like one that is far off
			g.cost += capAt
			continue
		}
		g.usable++
		u := g.n.Misfit(x, o) * o.SD[0] / widened(o.SD[0])
		g.cost += math.Min(u*u, capAt)
		if u > farOff {
			g.bad++
		}
	}
}

func (g *growth) good() bool {
	return g.count == len(g.n.Marks) && float64(g.bad) <= 0.02*float64(g.usable)
}

// better asks for a clear lead: among attempts that fit about equally well the earlier one, from
// the better beginning, stands.
func (g *growth) better(o *growth) bool { return g.cost < o.cost-certainBy/2 }

// state writes the places into a network state.
func (g *growth) state() network.State {
	x := g.n.NewState()
	for m, ok := range g.placed {
		if ok {
			x.SetPoint(m, g.pos[m])
		}
	}
	for s, p := range g.pose {
		if p == nil {
			continue
		}
		at := g.n.Offset[g.n.SetupBlock(s)]
		x[at], x[at+1], x[at+2] = p.at.X, p.at.Y, p.turn
		if g.n.Dim(g.n.SetupBlock(s)) == 4 {
			x[at+3] = p.scale
		}
	}
	return x
}
