package network

import (
	"math"

	"brimline/fieldbook"
)

// Depth is a sounding: how far a mark lies below a water surface, below another mark, or below a line,
// whose height at the foot is interpolated between the marks of it that have one. Taken along the
// slope it is the slant length instead: hypot(drop, level distance to the foot). Where a string
// places the sounding, that half of the reading is an Offset of its own. Marks is empty; Of holds
// the mark and, of a depth below a mark, that.
type Depth struct{}

// Name of the kind.
func (Depth) Name() string { return "depth" }

// Parts of its value.
func (Depth) Parts(*Obs) []string { return []string{"is"} }

// Touches the height of the mark, then those that it is read below; with a foot also the places of
// the mark and of the marks that the foot lies between.
func (Depth) Touches(o *Obs) []Unknown {
	out := append([]Unknown(nil), o.Extra...)
	if o.Foot != nil {
		out = append(out, Unknown(o.Foot.Mark))
		for _, m := range o.Foot.Marks {
			out = append(out, Unknown(m))
		}
	}
	return out
}

// Predict gives the depth.
func (Depth) Predict(x State, o *Obs, value, jac []float64) {
	clear(jac)
	if o.Foot == nil {
		value[0] = x[o.At[1]] - x[o.At[0]]
		jac[0], jac[1] = -1, 1
		return
	}
	o.footDepth(x, value, jac)
}

// Sigma of a sounding, from the book's table of defaults.
func (Depth) Sigma(_ *Obs, sd []float64) { sd[0] = fieldbook.DefaultSigma("depth", "is", "", 0, 0) }

// Foot is where a depth is read below: the nearest place of the straights from mark to mark. With one
// mark it is that mark.
type Foot struct {
	Mark   int   // that the depth is of
	Marks  []int // along the line, each with a height
	Closed bool
	Slant  bool // the reading is the slant length from the foot
}

// nearest finds the foot: between Marks[i] and Marks[j], at a share t of the way, and the mark's
// distance from it.
func (f *Foot) nearest(x State) (i, j int, t, away float64) {
	p := x.Point(f.Mark)
	away = math.Inf(1)
	n := len(f.Marks)
	spans := n - 1
	if f.Closed && n > 2 {
		spans = n
	}
	for k := range spans {
		a, b := x.Point(f.Marks[k]), x.Point(f.Marks[(k+1)%n])
		d := b.Sub(a)
		s := 0.0
		if l := d.Dot(d); l > 0 {
			s = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l))
		}
		if r := p.Dist(a.Add(d.Mul(s))); r < away {
			i, j, t, away = k, (k+1)%n, s, r
		}
	}
	if spans == 0 {
		away = p.Dist(x.Point(f.Marks[0]))
	}
	return i, j, t, away
}

// footDepth is z of the foot less z of the mark, and with a slant its hypotenuse. A foot moves along
// its straight with share t = e·d/d², e from its start to the mark and d along it.
func (o *Obs) footDepth(x State, value, jac []float64) {
	f := o.Foot
	n := len(f.Marks)
	i, j, t, away := f.nearest(x)
	zi, zj := x[o.At[1+i]], x[o.At[1+j]]
	drop := zi + t*(zj-zi) - x[o.At[0]]
	value[0], jac[0] = drop, -1
	jac[1+i] += 1 - t
	jac[1+j] += t
	plan := 1 + n // of the mark; those of the line follow
	p, a, b := x.Point(f.Mark), x.Point(f.Marks[i]), x.Point(f.Marks[j])
	d, e := b.Sub(a), p.Sub(a)
	if l := d.Dot(d); l > 0 && t > 0 && t < 1 {
		g := (zj - zi) / l
		add(jac, plan, d.X*g, d.Y*g)
		add(jac, plan+2+2*i, (2*t*d.X-d.X-e.X)*g, (2*t*d.Y-d.Y-e.Y)*g)
		add(jac, plan+2+2*j, (e.X-2*t*d.X)*g, (e.Y-2*t*d.Y)*g)
	}
	if !f.Slant {
		return
	}
	slant := math.Hypot(drop, away)
	if slant == 0 {
		return
	}
	for k := range jac {
		jac[k] *= drop / slant
	}
	u := p.Sub(a.Add(d.Mul(t))).Mul(1 / slant) // the foot's own moves along the line do not count
	add(jac, plan, u.X, u.Y)
	add(jac, plan+2+2*i, -(1-t)*u.X, -(1-t)*u.Y)
	add(jac, plan+2+2*j, -t*u.X, -t*u.Y)
	value[0] = slant
}

func add(jac []float64, at int, x, y float64) { jac[at], jac[at+1] = jac[at]+x, jac[at+1]+y }
