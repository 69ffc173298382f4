package basin

import (
	"math"

	"brimline/plane"
)

// Slope is how steep the floor is at a place.
type Slope struct {
	Rise   float64 // over level length; 1:n is n = 1/Rise
	SD     float64
	At     plane.Point // the middle of the triangle of readings
	Uphill plane.Point // of length 1
	Depth  float64     // there, below the level asked for
}

// broad is the least width of a triangle of readings whose slope is told (metres): in a thinner one
// a small error of a height makes a cliff. Common practice, no source.
const broad = 0.25

// Steepest is the steepest slope of the floor between readings, where its water below a level is from
// shallow to deep (metres; +Inf for no bound); coves, steps and ledges and the strip to the wall that
// nobody read do not count. False where there is none.
func (b *Basin) Steepest(level, shallow, deep float64) (Slope, bool) {
	best, at := Slope{Rise: -1}, -1
	g := b.base
	for t, v := range g.Triangles {
		if b.unread(v) || g.width(t) < broad {
			continue
		}
		s := g.SlopeOf(t)
		z := (g.Points[v[0]].Z + g.Points[v[1]].Z + g.Points[v[2]].Z) / 3
		if d := level - z; d < shallow || d > deep || b.covering(s.At, z) >= 0 {
			continue
		}
		if s.Rise > best.Rise {
			best, at = Slope{Rise: s.Rise, At: s.At, Uphill: s.Uphill, Depth: level - z}, t
		}
	}
	if at < 0 {
		return Slope{}, false
	}
	best.SD = b.slopeSD(at, best.Uphill)
	return best, true
}

// unread says that a corner of the triangle took its depth from elsewhere.
func (b *Basin) unread(v [3]int32) bool {
	for _, p := range v {
		if int(p) < len(b.nodes) && !b.nodes[p].read {
			return true
		}
	}
	return false
}

// width is the least height of a triangle in plan.
func (g *ground) width(t int) float64 {
	v := g.Triangles[t]
	p, q, r := g.Points[v[0]].Plan(), g.Points[v[1]].Plan(), g.Points[v[2]].Plan()
	return q.Sub(p).Cross(r.Sub(p)) / math.Max(p.Dist(q), math.Max(q.Dist(r), r.Dist(p)))
}

// area of a triangle in plan.
func (g *ground) area(t int) float64 {
	v := g.Triangles[t]
	p, q, r := g.Points[v[0]].Plan(), g.Points[v[1]].Plan(), g.Points[v[2]].Plan()
	return q.Sub(p).Cross(r.Sub(p)) / 2
}

// slopeSD is that of the slope uphill: a corner's height changes it by the gradient of its share.
func (b *Basin) slopeSD(t int, uphill plane.Point) float64 {
	v := b.base.Triangles[t]
	p := [3]plane.Point{b.base.Points[v[0]].Plan(), b.base.Points[v[1]].Plan(), b.base.Points[v[2]].Plan()}
	twice := p[1].Sub(p[0]).Cross(p[2].Sub(p[0]))
	s := b.newSlopes(Exact(0))
	for i := range v {
		across := p[(i+2)%3].Sub(p[(i+1)%3]).Left() // towards the corner
		s.height(b.base.forms[v[i]], across.Dot(uphill)/twice)
	}
	return b.trust(s).SD
}
