package mistake

import (
	"math"
	"slices"

	"brimline/network"
	"brimline/plane"
)

// column is the ties of one peg in the order read.
type column struct {
	peg  int
	obs  []int
	mark []int // the other end
}

// leastColumn is how many ties make a column.
const leastColumn = 3

// findColumns lists the pegs and their columns, marks not taped to each other as pegs.
func (f *finder) findColumns() {
	n := f.s.Net
	of := make([][]int, len(n.Marks))
	for i := range n.Obs {
		if _, tie := n.Obs[i].Kind.(network.Tie); tie && (f.s.In[i] || n.Obs[i].Check && n.Obs[i].Use) {
			for _, m := range n.Obs[i].Marks {
				of[m] = append(of[m], i)
			}
		}
	}
	f.isPeg = make([]bool, len(n.Marks))
	for m, list := range of {
		if n.Pegs[m] && len(list) >= leastColumn {
			f.isPeg[m] = true
			f.pegs = append(f.pegs, m)
		}
	}
	for _, m := range f.pegs {
		c := column{peg: m}
		for _, i := range of[m] {
			o := &n.Obs[i]
			far := o.Marks[0] + o.Marks[1] - m
			if !f.isPeg[far] && !o.Check {
				c.obs, c.mark = append(c.obs, i), append(c.mark, far)
			}
		}
		if len(c.obs) >= leastColumn {
			f.cols = append(f.cols, c)
		}
	}
}

// scene is a state in which single marks are moved about, with the readings of each mark.
type scene struct {
	f    *finder
	x    network.State
	of   [][]int   // by mark: observations in the model
	over []float64 // by part: the value taken instead of the book's; NaN none
	set  []int     // parts that have one
	home []homed   // by mark
	v, j []float64
}

// homed is a mark's best place as written, by some of its readings.
type homed struct {
	by   []int
	cost float64
	at   plane.Point
	cov  [3]float64
}

func (f *finder) scene(x network.State, member []bool) *scene {
	n := f.s.Net
	s := &scene{f: f, x: append(network.State(nil), x...), of: make([][]int, len(n.Marks)), over: make([]float64, f.s.First[len(n.Obs)]), home: make([]homed, len(n.Marks))}
	for p := range s.over {
		s.over[p] = math.NaN()
	}
	parts, jac := 1, 1
	for i := range n.Obs {
		o := &n.Obs[i]
		parts, jac = max(parts, len(o.Values)), max(jac, len(o.Values)*o.Size)
		if !member[f.s.First[i]] {
			continue
		}
		for _, m := range o.Marks {
			s.of[m] = append(s.of[m], i)
		}
	}
	s.v, s.j = make([]float64, parts), make([]float64, jac)
	return s
}

// take lets part p have another value.
func (s *scene) take(p int, value float64) { s.over[p], s.set = value, append(s.set, p) }

// asRead gives every part the book's value again.
func (s *scene) asRead() {
	for _, p := range s.set {
		s.over[p] = math.NaN()
	}
	s.set = s.set[:0]
}

// fit places mark m by its readings, everything else held, from the start given: the sum of
// squares there, in units of each reading's own sd, and the place.
func (s *scene) fit(m int, start plane.Point) (float64, plane.Point) {
	was := s.x.Point(m)
	defer func() { s.x.SetPoint(m, was) }()
	at := start
	for range 6 {
		s.x.SetPoint(m, at)
		var a, b, c, g, h float64
		s.each(m, func(u, jx, jy float64) {
			a, b, c = a+jx*jx, b+jx*jy, c+jy*jy
			g, h = g+jx*u, h+jy*u
		})
		d := a*c - b*b
		if d <= 1e-9*a*c || math.IsNaN(d) {
			break
		}
		step := plane.Point{X: -(c*g - b*h) / d, Y: -(a*h - b*g) / d}
		if l := step.Len(); l > 1 {
			step = step.Mul(1 / l)
		}
		at = at.Add(step)
		if step.Len() < 1e-5 {
			break
		}
	}
	s.x.SetPoint(m, at)
	cost := 0.0
	s.each(m, func(u, _, _ float64) { cost += u * u })
	return cost, at
}

// each visits the parts of the readings of m: (predicted − read)/sd and its derivatives by m.
func (s *scene) each(m int, visit func(u, jx, jy float64)) {
	n := s.f.s.Net
	for _, i := range s.of[m] {
		o := &n.Obs[i]
		if !n.Ready(s.x, o) {
			continue
		}
		o.Kind.Predict(s.x, o, s.v[:len(o.Values)], s.j[:len(o.Values)*o.Size])
		at := 0
		for k, b := range o.Blocks {
			if int(b) == m {
				break
			}
			at += n.Dim(o.Blocks[k])
		}
		for k := range o.Values {
			v := o.Values[k]
			if w := s.over[s.f.s.First[i]+k]; !math.IsNaN(w) {
				v = w
			}
			sd := o.SD[k]
			visit((s.v[k]-v)/sd, s.j[k*o.Size+at]/sd, s.j[k*o.Size+at+1]/sd)
		}
	}
}

// clearly is by how much another place must lower the sum of squares to be taken.
const clearly = 0.5

// oneCrossing is how near two starts of a mark lead to one place, metres.
const oneCrossing = 0.01

// best places m by its readings as overridden: from where it is, and from the crossings of its
// ties. Among places that fit equally the first is taken: near home.
func (s *scene) best(m int, home plane.Point) (float64, plane.Point) {
	cost, at := s.fit(m, home)
	if !(cost < math.Inf(1)) {
		cost, at = math.Inf(1), home
	}
	if cost <= clearly {
		return cost, at // no place is better by as much
	}
	found := []plane.Point{at}
	for _, p := range s.crossings(m, home) {
		if cost <= clearly {
			break
		}
		if slices.ContainsFunc(found, func(q plane.Point) bool { return p.Dist(q) < oneCrossing }) {
			continue // leads to the same place
		}
		c, q := s.fit(m, p)
		found = append(found, q)
		if c < cost-clearly {
			cost, at = c, q
		}
	}
	return cost, at
}

// asWritten is the best place of m by its readings as written, from where it is, kept for the next time.
func (s *scene) asWritten(m int) homed {
	if h := s.home[m]; h.by == nil || !slices.Equal(h.by, s.of[m]) {
		c, at := s.best(m, s.x.Point(m))
		s.home[m] = homed{append([]int{}, s.of[m]...), c, at, s.cov(m, at)}
	}
	return s.home[m]
}

// crossings are the places where two ties of m meet, ties to pegs first, those on the hand of home
// first.
func (s *scene) crossings(m int, home plane.Point) []plane.Point {
	n := s.f.s.Net
	type ring struct {
		c plane.Point
		r float64
	}
	var rings, others []ring
	for _, i := range s.of[m] {
		o := &n.Obs[i]
		if _, tie := o.Kind.(network.Tie); !tie {
			continue
		}
		far := o.Marks[0] + o.Marks[1] - m
		if !n.Placed(s.x, network.Unknown(far)) {
			continue
		}
		v := o.Values[0]
		if w := s.over[s.f.s.First[i]]; !math.IsNaN(w) {
			v = w
		}
		r := ring{s.x.Point(far), (v - o.Zero) / o.Scale}
		if s.f.isPeg[far] {
			rings = append(rings, r)
		} else {
			others = append(others, r)
		}
	}
	rings = append(rings, others...)
	var near, far []plane.Point
	for a := range min(len(rings), 4) {
		for b := range a {
			c, d := rings[b].c, rings[a].c
			hand := func(p plane.Point) bool { return math.Signbit(d.Sub(c).Cross(p.Sub(c))) }
			l, r, _ := plane.MeetCircles(c, math.Max(rings[b].r, 0), d, math.Max(rings[a].r, 0))
			for _, p := range []plane.Point{l, r} {
				if hand(p) == hand(home) {
					near = append(near, p)
				} else {
					far = append(far, p)
				}
			}
		}
	}
	return append(near, far...)
}
