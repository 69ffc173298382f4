package outline

import (
	"math"
	"slices"

	"brimline/plane"
)

// trail is a stretch of a line whose kind nobody stated: its marks in order, places and what of
// their covariance tells one from another. Round a ring the first mark is not repeated.
type trail struct {
	marks []int
	names []string
	at    []plane.Point
	cov   [][3]float64 // xx, xy, yy of each mark
	ring  bool
	step  float64 // median distance between neighbours
	sd    float64 // median standard deviation across the trail
}

// newTrail takes the marks of one run.
func newTrail(b *block, r SpecRun, edge []float64) *trail {
	t := &trail{marks: r.Marks, names: r.Names}
	if t.ring = r.ring(); t.ring {
		n := len(r.Marks) - 1
		t.marks, t.names = r.Marks[:n], r.Names[:n]
	}
	for _, m := range t.marks {
		t.at, t.cov = append(t.at, b.point(m)), append(t.cov, b.of(m))
	}
	var steps, sds []float64
	for i := range t.marks {
		n := t.across(i)
		e := edge[t.marks[i]]
		c := &t.cov[i]
		c[0] += e*e*n.X*n.X + leastSD*leastSD
		c[1] += e * e * n.X * n.Y
		c[2] += e*e*n.Y*n.Y + leastSD*leastSD
		sds = append(sds, math.Sqrt(t.variance(i, n)))
		if i > 0 || t.ring {
			steps = append(steps, t.point(i).Dist(t.point(i-1)))
		}
	}
	t.step, t.sd = median(steps), median(sds)
	return t
}

// ring says that the run is a whole loop of three marks and more.
func (r SpecRun) ring() bool {
	n := len(r.Marks)
	return !r.open && n > 3 && r.Marks[0] == r.Marks[n-1]
}

// point is mark i of the trail; round a ring i may run on.
func (t *trail) point(i int) plane.Point { return t.at[t.index(i)] }

func (t *trail) index(i int) int { return (i%len(t.at) + len(t.at)) % len(t.at) }

// across is the unit normal to the left of the chord over mark i.
func (t *trail) across(i int) plane.Point {
	a, b := i-1, i+1
	if !t.ring {
		a, b = max(a, 0), min(b, len(t.at)-1)
	}
	return t.point(b).Sub(t.point(a)).Unit().Left()
}

// variance of mark i in the direction of the unit vector n.
func (t *trail) variance(i int, n plane.Point) float64 {
	c := t.cov[t.index(i)]
	return math.Max(c[0]*n.X*n.X+2*c[1]*n.X*n.Y+c[2]*n.Y*n.Y, leastSD*leastSD)
}

// closest keeps marks on one place apart, metres.
const closest = 1e-3

// gap is the distance from mark i to the next.
func (t *trail) gap(i int) float64 { return math.Max(t.point(i).Dist(t.point(i+1)), closest) }

func median(v []float64) float64 {
	if len(v) == 0 {
		return 0
	}
	v = slices.Clone(v)
	slices.Sort(v)
	return (v[len(v)/2] + v[(len(v)-1)/2]) / 2
}
