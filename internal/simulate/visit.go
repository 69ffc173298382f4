package simulate

import (
	"math"
	"math/rand/v2"
	"strconv"

	"brimline/plane"
)

// visit is what the measurer has set up, and the readings taken so far.
type visit struct {
	r, noise *rand.Rand
	exact    bool
	share    float64
	unit     string

	at       map[string]plane.Point // looked up only
	pegs     []string
	order    []string
	stations [][]string // names of the marks, as pool.stations
	frame    plane.Rigid
	side     *Side
	edge     string

	tools      []Tool
	tape       string // the tool for ties from pegs
	check      string // the tool for tapes between marks
	definition map[string]float64
	shared     float64 // the definition of the line, 0 where marks have their own
	setups     []Setup
	readings   []Reading
	crew       crew
}

// settle names the pegs and the marks, and brings everything to the frame of the pegs. Where
// everything lies on one hand of A to B the hand is drawn, and right is said by a side entry;
// where it lies on both, the entry always says which.
func (v *visit) settle(pegs []plane.Point, p pool) {
	left, right := hands(pegs, p)
	if wantRight := chance(v.r, 0.5); (left && wantRight) || (right && !wantRight) {
		pegs[0], pegs[1] = pegs[1], pegs[0]
		left, right = right, left
	}
	turn := -plane.Angle(pegs[1].Sub(pegs[0]))
	v.frame = plane.Turned(turn, pegs[0].Turn(turn).Mul(-1))
	v.at = map[string]plane.Point{}
	for i, q := range pegs {
		name := string(rune('A' + i))
		v.pegs = append(v.pegs, name)
		v.at[name] = v.frame.Apply(q)
	}
	v.at["A"], v.at["B"] = plane.Point{}, plane.Point{X: pegs[0].Dist(pegs[1])}
	v.name(p, nearest(p.marks, pegs[0]))
	if !left {
		v.side = v.firstOff()
	}
}

// hands says whether every mark and every further peg lies left, or every one right, of the
// first two pegs.
func hands(pegs []plane.Point, p pool) (left, right bool) {
	left, right = true, true
	u := pegs[1].Sub(pegs[0])
	for _, list := range [][]plane.Point{p.marks, pegs[2:]} {
		for _, q := range list {
			off := u.Cross(q.Sub(pegs[0]))
			left, right = left && off > 0, right && off < 0
		}
	}
	return left, right
}

// name calls the marks r1, r2, … clockwise, the first being the one at place first.
func (v *visit) name(p pool, first int) {
	n := len(p.marks)
	for i := range n {
		name := "r" + strconv.Itoa(i+1)
		v.order = append(v.order, name)
		v.at[name] = v.frame.Apply(p.marks[(first+i)%n])
	}
	k := 0
	for _, list := range p.stations {
		var names []string
		for range list {
			names = append(names, v.order[(k-first+n)%n])
			k++
		}
		v.stations = append(v.stations, names)
	}
}

// firstOff says the hand of the first mark that plainly lies off the line AB.
func (v *visit) firstOff() *Side {
	for _, m := range v.order {
		if y := v.at[m].Y; math.Abs(y) > 0.3 {
			return &Side{Mark: m, Left: y > 0}
		}
	}
	panic("simulate: every mark lies on the base")
}

// equip draws the tapes and how sharp the marks are.
func (v *visit) equip() {
	v.tools = []Tool{{"tape", stepped(v.r, 0.003, 0.006, 0.0005), stepped(v.r, 0, 500, 50)}}
	v.tape, v.check = "tape", "tape"
	if chance(v.r, 0.3) {
		v.tools = append(v.tools, Tool{"reel", stepped(v.r, 0.003, 0.006, 0.0005), stepped(v.r, 0, 300, 50)})
		v.check = "reel"
	}
	v.edge = pick(v.r, []string{"nose", "nose", "tile", "waterline"})
	v.definition = map[string]float64{}
	if chance(v.r, 0.6) {
		v.shared = stepped(v.r, 0.001, 0.004, 0.0005)
	}
	for _, m := range v.order {
		v.definition[m] = v.shared
		if v.shared == 0 {
			v.definition[m] = stepped(v.r, 0.001, 0.004, 0.001)
		}
	}
}

func (v *visit) tool(name string) Tool {
	for _, t := range v.tools {
		if t.Name == name {
			return t
		}
	}
	panic("simulate: no tool " + name)
}
