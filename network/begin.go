package network

import (
	"math"

	"brimline/plane"
)

// Begin fills every free block that a reading in use touches: a line or circle fitted to the
// places of the marks, the first rise read, a tool without error, heights one from another. NaN where a mark has no place,
// and where only checks or readings out of use would hold the block.
func (n *Network) Begin(x State) {
	if len(n.Free) == 0 {
		return
	}
	from := n.Offset[n.FreeBlock(0)]
	for i := from; i < len(x); i++ {
		x[i] = math.NaN()
	}
	n.beginHeights(x)
	for i := range n.Obs {
		o := &n.Obs[i]
		if !o.Use || o.Check {
			continue
		}
		for _, b := range o.Extra {
			if !n.Placed(x, b) {
				n.begin(x, o, &n.Free[int(b)-len(n.Marks)-len(n.Setups)], x[n.Offset[b]:n.Offset[b+1]])
			}
		}
	}
}

// begin fills one block that a reading touches.
func (n *Network) begin(x State, o *Obs, f *Free, to []float64) {
	switch f.Kind {
	case "straight", "arc":
		pts := make([]plane.Point, len(o.Marks))
		for k, m := range o.Marks {
			if pts[k] = x.Point(m); math.IsNaN(pts[k].X) {
				return
			}
		}
		if f.Kind == "straight" {
			to[0], to[1] = lineThrough(pts)
		} else {
			to[0], to[1], to[2] = circleThrough(pts)
		}
	case "bow":
		to[0] = (o.Values[0] - o.Zero) / o.Scale
	case "collimation":
		if n.Ready(x, &Obs{At: []int{o.At[0], o.At[1]}}) {
			to[0] = 0
		}
	case "tool":
		if f.Zero {
			to[0] = 0
		}
		if f.Scale {
			to[len(to)-1] = 1
		}
	}
}

// lineThrough is the line of least squares: its direction, from the first point towards the last,
// and its distance to the left of the first.
func lineThrough(pts []plane.Point) (theta, rho float64) {
	var mean plane.Point
	for _, p := range pts {
		mean = mean.Add(p.Mul(1 / float64(len(pts))))
	}
	var xx, xy, yy float64
	for _, p := range pts {
		q := p.Sub(mean)
		xx, xy, yy = xx+q.X*q.X, xy+q.X*q.Y, yy+q.Y*q.Y
	}
	u := plane.Point{X: 1}.Turn(math.Atan2(2*xy, xx-yy) / 2)
	if u.Dot(pts[len(pts)-1].Sub(pts[0])) < 0 {
		u = u.Mul(-1)
	}
	return plane.Angle(u), u.Cross(mean.Sub(pts[0]))
}

// circleThrough is the circle of least squares: its direction where it passes nearest to the
// first point, its distance to the left of that, and its curvature; a straight where that is all
// that can be told.
func circleThrough(pts []plane.Point) (theta, rho, curvature float64) {
	c, _, ok := plane.FitCircle(pts)
	in := c.Centre.Sub(pts[0]).Unit() // to the left of a circle that turns left
	if !ok || in == (plane.Point{}) {
		theta, rho = lineThrough(pts)
		return theta, rho, 0
	}
	u := plane.Point{X: in.Y, Y: -in.X}
	rho, curvature = c.Centre.Dist(pts[0])-c.R, 1/c.R
	if u.Dot(pts[1].Sub(pts[0])) < 0 {
		u, rho, curvature = u.Mul(-1), -rho, -curvature
	}
	return plane.Angle(u), rho, curvature
}
