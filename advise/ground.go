package advise

import (
	"math"

	"brimline/adjust"
	"brimline/mistake"
	"brimline/network"
)

// ground is what can be said of a solution when readings are added to it on paper only.
type ground struct {
	s      *adjust.Solution
	listed []mistake.Hypothesis
	n      int       // x and y of all marks
	cov    []float64 // n × n; the solution's own until a reading is added
	own    bool      // cov is a copy
	causes []cause
	ways   []way
	unit   []int // by part: its cause + 1, 0 where it has none
	fits   []*fit
	probes []probe
	moves  []float64 // by cause, then probe: what one unit of the cause does to the figure
	odds   []float64 // by way: that it is there although nothing shows, at most 1
	buf    []float64
}

// cause is a pattern of errors of unit size: the moves it causes, and lin − quad/2, the logarithm
// of what the readings say for it. Its ways are the listed sizes of it.
type cause struct {
	parts       []int
	planned     [2]int // marks of a reading that is only planned; parts is nil then
	shift       []float64
	lin, quad   float64
	first, last int
	carry       float64 // what the same mistake adds to a further tie
	most        float64 // square of the largest size of its ways
	heavy       float64 // odds of all its ways
}

// way is a cause of a certain size; ln is the logarithm of its prior odds.
type way struct {
	size, ln float64
	from     int // in the list of hypotheses
}

func newGround(s *adjust.Solution, listed []mistake.Hypothesis) *ground {
	g := &ground{s: s, listed: listed, n: 2 * len(s.Net.Marks), cov: s.Whole()}
	if g.cov == nil { // no reading at all
		g.cov = make([]float64, g.n*g.n)
		return g
	}
	g.gather()
	return g
}

// gather makes the causes. Hypotheses of one single part share a cause of one unit.
func (g *ground) gather() {
	byPart := make([][]int, g.s.First[len(g.s.In)])
	g.unit = make([]int, len(byPart))
	groups := make([]int, 0, 16)
	for h, l := range g.listed {
		switch {
		case len(l.Parts) == 1:
			byPart[l.Parts[0]] = append(byPart[l.Parts[0]], h)
		case len(l.Parts) > 1:
			groups = append(groups, h)
		}
	}
	count := len(groups)
	for _, hs := range byPart {
		if len(hs) > 0 {
			count++
		}
	}
	room := make([]float64, count*g.n)
	proof := g.s.Proof()
	for p, hs := range byPart {
		if len(hs) == 0 {
			continue
		}
		q := adjust.Pattern{Parts: []int{p}, Size: []float64{1}}
		c := cause{parts: q.Parts, first: len(g.ways), shift: room[:g.n:g.n]}
		room = room[g.n:]
		c.lin, c.quad = proof.Effect(q)
		g.single(q, c.shift)
		for _, h := range hs {
			g.ways = append(g.ways, way{size: g.listed[h].Size[0], ln: g.listed[h].LnPrior, from: h})
		}
		g.close(&c)
		g.causes = append(g.causes, c)
		g.unit[p] = len(g.causes)
	}
	for _, h := range groups {
		g.causes = append(g.causes, g.group(h, proof))
	}
}

// sharedZero is the code of the mistake that every further tie would share.
const sharedZero = "tape-zero"

// shows is by how much a tie would read otherwise than the figure predicts, were one unit of the
// cause there.
func (k *cause) shows(c *candidate) float64 { return c.along(k.shift) - k.carry }

// close ends the list of ways of a cause, the latest.
func (g *ground) close(c *cause) {
	c.last = len(g.ways)
	for _, w := range g.ways[c.first:] {
		c.most = math.Max(c.most, w.size*w.size)
	}
}

// single fills the moves by one unit of error in one part: C·aᵀ/sd², from the covariance where the
// reading touches marks only.
func (g *ground) single(q adjust.Pattern, out []float64) {
	s := g.s
	p := q.Parts[0]
	i := s.ObsOf(p)
	o := &s.Net.Obs[i]
	if !s.In[i] || s.Out[p] {
		return
	}
	if !marksOnly(s.Net, o) {
		copy(out, s.Shift(q))
		return
	}
	row := g.derivatives(o, p-s.First[i])
	g.spread(o, row, 1/(s.SD[p]*s.SD[p]), out)
}

func marksOnly(n *network.Network, o *network.Obs) bool {
	for _, b := range o.Blocks {
		if int(b) >= len(n.Marks) {
			return false
		}
	}
	return true
}

// derivatives of part k of an observation at the solution, by the scalars it touches. They hold
// until the next call.
func (g *ground) derivatives(o *network.Obs, k int) []float64 {
	need := len(o.Values) * (o.Size + 1)
	if len(g.buf) < need {
		g.buf = make([]float64, need)
	}
	value, jac := g.buf[:len(o.Values)], g.buf[len(o.Values):need]
	o.Kind.Predict(g.s.X, o, value, jac)
	return jac[k*o.Size : (k+1)*o.Size]
}

// spread adds f·C·rowᵀ to out, for a reading that touches marks only.
func (g *ground) spread(o *network.Obs, row []float64, f float64, out []float64) {
	at := 0
	for _, b := range o.Blocks {
		for c := range 2 {
			w := f * row[at]
			at++
			if w == 0 {
				continue
			}
			for i, v := range g.cov[(2*int(b)+c)*g.n : (2*int(b)+c+1)*g.n] {
				out[i] += w * v
			}
		}
	}
}
