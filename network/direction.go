package network

import "math"

// direction is the angle from mark a to mark b (offsets in the state), counter-clockwise from +x,
// and its derivatives by x and y of b; those by a are the opposite. Where the marks coincide it is
// 0 and depends on nothing.
func direction(x State, a, b int) (angle, gx, gy float64) {
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	d2 := dx*dx + dy*dy
	if d2 == 0 {
		return 0, 0, 0
	}
	return math.Atan2(dy, dx), -dy / d2, dx / d2
}

// bend adds f times the second derivatives of direction to hess, of stride w, where the scalars of
// a begin at column ca and those of b at cb.
func bend(x State, a, b int, f float64, hess []float64, w, ca, cb int) {
	dx, dy := x[b]-x[a], x[b+1]-x[a+1]
	d2 := dx*dx + dy*dy
	if d2 < 1e-6 {
		return
	}
	g := f / (d2 * d2)
	xx, xy := g*2*dx*dy, g*(dy*dy-dx*dx)
	for _, p := range [4][3]int{{ca, ca, 1}, {cb, cb, 1}, {ca, cb, -1}, {cb, ca, -1}} {
		r, c, sign := p[0], p[1], float64(p[2])
		hess[r*w+c] += sign * xx
		hess[r*w+c+1] += sign * xy
		hess[(r+1)*w+c] += sign * xy
		hess[(r+1)*w+c+1] -= sign * xx
	}
}
