package basin

import (
	"math"

	"brimline/plane"
)

// Cause is where an uncertainty comes from.
type Cause int

// The causes.
const (
	WaterReference Cause = iota // the height of the water surface
	OutlineCause                // the place of the rim
	FloorReadings               // depths, and where they were read
	WallReadings                // rim, treads, lips, and the lean of walls, read or not
	Spacing                     // what the spacing of the readings leaves open
	causes         int   = iota
)

// Causes names the causes, in their order.
var Causes = [...]string{"water reference", "outline", "floor readings", "wall readings", "sampling"}

func (c Cause) String() string { return Causes[c] }

// Trust is the standard deviation of a figure, and of its variance what each cause has in it: they
// sum to SD². The share of a cause is its covariance with the whole: of errors that depths and
// water surface have in common, only what is left in the figure counts.
type Trust struct {
	SD    float64
	Cause [causes]float64 // variances
}

// slopes are how a figure changes with everything it hangs on.
type slopes struct {
	inputs []float64
	push   []plane.Point // by node
	outs   []float64     // by point of a profile
	sides  []float64     // by the lean of each side's wall, of those not read
	leans  []float64     // by the lean of the wall at each node
	level  float64
	water  Height  // whose level it is
	open   float64 // variance by what the floor does between soundings
}

func (b *Basin) newSlopes(water Height) *slopes {
	return &slopes{
		inputs: make([]float64, len(b.inputs)), push: make([]plane.Point, len(b.nodes)), outs: make([]float64, len(b.outs)),
		sides: make([]float64, b.sided), leans: make([]float64, len(b.nodes)), water: water,
	}
}

// height adds the slope by a height.
func (s *slopes) height(f form, by float64) {
	for _, t := range f.terms {
		s.inputs[t.in] += by * t.w
	}
}

// fold turns slopes by the vertices into slopes by what they hang on.
func (b *Basin) fold(s *slopes, by []vec) {
	for i := range by {
		v := &b.shell.vertices[i]
		s.height(v.z, by[i][2])
		if v.node < 0 {
			continue
		}
		n := &b.nodes[v.node]
		move := plane.Point{X: by[i][0], Y: by[i][1]}
		s.push[v.node] = s.push[v.node].Add(move)
		if out := move.Dot(n.out); move != (plane.Point{}) {
			s.leans[v.node] += out * v.down
			if len(b.profiles) == 0 {
				s.sides[n.last] += move.Dot(n.ways[0]) * v.down
				s.sides[n.side] += move.Dot(n.ways[1]) * v.down
				continue
			}
			at, terms := b.lean(n.s, v.down)
			for _, t := range terms {
				s.outs[t.in] += out * t.w
			}
			if v.foot {
				lower, _ := b.lean(n.s, v.down+edge)
				rate := (lower - at) / edge
				s.height(n.rim, out*rate)
				s.height(n.low, -out*rate)
			}
		}
	}
}

// trust is the standard deviation that the slopes give.
func (b *Basin) trust(s *slopes) Trust {
	var t Trust
	b.trustHeights(s, &t)
	for i, by := range s.inputs {
		t.Cause[b.inputs[i].cause] += by * by * b.inputs[i].own
	}
	for i, by := range s.outs {
		t.Cause[WallReadings] += by * by * b.outs[i].SD * b.outs[i].SD
	}
	for _, by := range s.sides {
		t.Cause[WallReadings] += by * by * b.options.Lean * b.options.Lean
	}
	t.Cause[OutlineCause] += b.trustOutline(s)
	t.Cause[Spacing] += s.open + b.trustLeans(s)
	sum := 0.0
	for _, v := range t.Cause {
		sum += v
	}
	t.SD = math.Sqrt(math.Max(0, sum))
	return t
}

// unseen is the variance that what the floor does between soundings gives a figure.
func (b *Basin) unseen(probes []probe) float64 {
	return b.sampling.field.variance(probes, b.sampling.places)
}

// trustHeights adds what the covariance of the heights gives, each cause by its covariance with
// the whole.
func (b *Basin) trustHeights(s *slopes, t *Trust) {
	whole := make([]float64, b.rows)
	parts := [causes][]float64{}
	for c := range parts {
		parts[c] = make([]float64, b.rows)
	}
	add := func(index int, c Cause, by float64) {
		if index >= 0 {
			whole[index] += by
			parts[c][index] += by
		}
	}
	for i, by := range s.inputs {
		add(b.inputs[i].index, b.inputs[i].cause, by)
	}
	add(s.water.Index, WaterReference, s.level)
	for i := range whole {
		sum := 0.0
		for j, w := range whole {
			sum += b.cov[i*b.rows+j] * w
		}
		for c := range parts {
			t.Cause[c] += parts[c][i] * sum
		}
	}
}

// trustOutline asks the outline.
func (b *Basin) trustOutline(s *slopes) float64 {
	if b.outline == nil {
		return 0
	}
	var pushes []Push
	for i, by := range s.push {
		if by == (plane.Point{}) {
			continue
		}
		at := b.nodes[i].s
		if b.reversed {
			at = b.whole - at
		}
		pushes = append(pushes, Push{S: at, At: b.nodes[i].at, By: by})
	}
	if pushes == nil {
		return 0
	}
	return b.outline(pushes)
}

// trustLeans is what the walls may do between the profiles.
func (b *Basin) trustLeans(s *slopes) float64 {
	if len(b.leans.places) == 0 {
		return 0
	}
	var probes []probe
	for i, by := range s.leans {
		if by == 0 {
			continue
		}
		n := &b.nodes[i]
		k, t := b.bracket(len(b.profiles), func(i int) float64 { return b.profiles[i].s }, n.s)
		p := probe{at: n.at, weight: by}
		for j, w := range []float64{1 - t, t} {
			if place, ok := b.leans.number[(k+j)%len(b.profiles)]; ok && w > 0 {
				p.drawn = append(p.drawn, term{place, w})
			}
		}
		probes = append(probes, p)
	}
	return b.leans.field.variance(probes, b.leans.places)
}
