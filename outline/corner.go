package outline

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/finding"
	"brimline/plane"
)

// leastMeet is the angle between two straights below which where they meet is not told: at 10°
// the corner lies already six times less sharp along them than they do across. Common practice, no
// source.
const leastMeet = 10 * math.Pi / 180

// corner is an unreached corner with its place and how that moves with its four marks: slope of x
// and y by x and y of each. It is numbered after the marks of the network.
type corner struct {
	Corner
	at    plane.Point
	slope [2][8]float64
	used  bool

	before, after int // the marks beside it on the line; −1 where it ends there

	radius, radiusSD float64 // of its rounding; 0 sharp
}

// marks are the four marks of a corner, meet its place from theirs.
func (c *Corner) marks() [4]int {
	return [4]int{c.Meet[0][0], c.Meet[0][1], c.Meet[1][0], c.Meet[1][1]}
}

func meet(p [4]plane.Point) plane.Point {
	v, _ := plane.MeetLines(p[0], p[1], p[2], p[3])
	return v
}

// place finds a corner. It fails where its straights run nearly the same way.
func (c *corner) place(s *adjust.Solution) bool {
	var p [4]plane.Point
	for i, m := range c.marks() {
		p[i] = s.X.Point(m)
	}
	u, v := p[1].Sub(p[0]), p[3].Sub(p[2])
	if !(math.Abs(u.Cross(v)) >= math.Sin(leastMeet)*u.Len()*v.Len()) || u.Len()*v.Len() == 0 {
		return false
	}
	c.at = meet(p)
	const h = 1e-5
	for k := range 8 {
		up, down := p, p
		if k%2 == 0 {
			up[k/2].X += h
			down[k/2].X -= h
		} else {
			up[k/2].Y += h
			down[k/2].Y -= h
		}
		d := meet(up).Sub(meet(down)).Mul(1 / (2 * h))
		c.slope[0][k], c.slope[1][k] = d.X, d.Y
	}
	return c.at.Finite()
}

// corners places the corners that runs of the line name; what it waits for, and findings.
func (l *Spec) corners(s *adjust.Solution) (out []corner, waits []string, found []finding.Finding) {
	for _, c := range l.Corners {
		x := corner{Corner: c}
		for _, r := range l.Runs {
			for k, m := range r.Marks {
				x.used = x.used || m < 0 && r.Names[k] == c.Name
			}
		}
		read := true
		for i, m := range c.marks() {
			if m < 0 || s.Rows == 0 || math.IsNaN(s.X.Point(m).X) {
				read = false
				if name := c.MeetNames[i/2][i%2]; x.used && !slices.Contains(waits, name) {
					waits = append(waits, name)
				}
			}
		}
		switch {
		case !read:
			x.used = false
		case !x.place(s):
			if x.used {
				waits = append(waits, c.Name)
				found = append(found, finding.Finding{Code: "corner-flat", Lines: []string{l.Name}, Marks: append(slices.Clone(c.MeetNames[0][:]), c.MeetNames[1][:]...), Words: map[string]string{"name": c.Name}})
			}
			x.used = false
		}
		out = append(out, x)
	}
	return out, waits, found
}

// numbered gives corners their numbers, from first on, and parts runs at corners inside them.
func (l *Spec) numbered(first int) Spec {
	out := *l
	out.Runs = nil
	for _, r := range l.Runs {
		r.Marks = slices.Clone(r.Marks)
		var at []int // corners inside
		last := len(r.Marks) - 1
		for k, m := range r.Marks {
			i := slices.IndexFunc(l.Corners, func(c Corner) bool { return c.Name == r.Names[k] })
			if m >= 0 || i < 0 {
				continue
			}
			r.Marks[k], r.open = first+i, true
			if k > 0 && k < last {
				at = append(at, k)
			}
		}
		from := 0
		for _, k := range append(at, last) {
			part := r
			part.Marks, part.Names = r.Marks[from:k+1], r.Names[from:k+1]
			if from > 0 {
				part.Joint = ""
			}
			out.Runs = append(out.Runs, part)
			from = k
		}
	}
	return out
}

// cornersFound describes the corners of the fitted line.
func (c *chain) cornersFound(out *Line) {
	first := len(c.s.Net.Marks)
	for i := range c.block.corner {
		x := &c.block.corner[i]
		if !x.used {
			continue
		}
		at := func([]float64) plane.Point { return x.at }
		radius := 0.0
		for k := range c.pieces {
			p := &c.pieces[k]
			switch {
			case p.corner == i+1:
				at = func(q []float64) plane.Point { return apex(c.segment(q, p)) }
				radius = math.Abs(c.segment(c.q, p).Radius())
			case c.vertex[p.from].mark == first+i:
				at = func(q []float64) plane.Point { return c.point(q, p.from) }
			case c.vertex[p.to].mark == first+i:
				at = func(q []float64) plane.Point { return c.point(q, p.to) }
			}
		}
		v := c.covOf(func(q []float64) []float64 { return []float64{at(q).X, at(q).Y} })
		half, root := (v[0]+v[3])/2, math.Hypot((v[0]-v[3])/2, v[1])
		out.Corners = append(out.Corners, CornerFound{Name: x.Name, At: at(c.q), SD: math.Hypot(math.Sqrt(half+root), x.Sigma), Radius: radius})
	}
}

// beside fills in the marks beside each corner.
func (l *Spec) beside(corners []corner, first int) {
	for i := range corners {
		corners[i].before, corners[i].after = -1, -1
	}
	for _, r := range l.Runs {
		last := len(r.Marks) - 1
		if k := r.Marks[0] - first; k >= 0 {
			corners[k].after = r.Marks[1]
		}
		if k := r.Marks[last] - first; k >= 0 {
			corners[k].before = r.Marks[last-1]
		}
	}
}

// cornersOpen gives the variances of area and length by what the straights leave open about where
// their corners are: one moved by d takes with it half of the way between the marks beside it.
func (b *block) cornersOpen() (area, length float64) {
	for i := range b.corner {
		x := &b.corner[i]
		if !x.used || x.before < 0 || x.after < 0 {
			continue
		}
		p, q := b.point(x.before), b.point(x.after)
		bend := x.at.Sub(p).Unit().Sub(q.Sub(x.at).Unit())
		v := x.Sigma * x.Sigma
		area += v * q.Sub(p).Dot(q.Sub(p)) / 4
		length += v * bend.Dot(bend)
	}
	return area, length
}
