package network

import "math"

// slant is the distance in space between two marks of a sloping tie, its direction from a to b, and
// where a, b and their heights stand in the state.
func (o *Obs) slant(x State) (d float64, u [3]float64) {
	a, b, za, zb := o.At[0], o.At[1], o.At[2], o.At[3]
	u = [3]float64{x[b] - x[a], x[b+1] - x[a+1], x[zb] - x[za]}
	d = math.Sqrt(u[0]*u[0] + u[1]*u[1] + u[2]*u[2])
	if d == 0 {
		return 0, [3]float64{1}
	}
	for k := range u {
		u[k] /= d
	}
	return d, u
}

// slopePlaces are the scalars of the two ends among those that a sloping tie touches: x, y, z.
var slopePlaces = [2][3]int{{0, 1, 4}, {2, 3, 5}}

// slopePredict is scale·distance in space + zero: exact, where −h²/2S is its first term (C. Ghilani
// and P. Wolf, Elementary Surveying, 14th edition, on taping, from memory).
func (o *Obs) slopePredict(x State, value, jac []float64) {
	d, u := o.slant(x)
	zero, s := o.gauge(x)
	value[0] = s*d + zero + o.Sag
	for k := range u {
		jac[slopePlaces[0][k]], jac[slopePlaces[1][k]] = -s*u[k], s*u[k]
	}
	o.gaugeJac(d, jac[6:])
}

// slopeCurve adds the second derivatives, (I − u·uᵀ)/d in space, and of scale times distance u.
func (o *Obs) slopeCurve(x State, f, hess []float64) {
	d, u := o.slant(x)
	if d < 1e-3 {
		return
	}
	_, s := o.gauge(x)
	w, g := o.Size, f[0]*s/d
	for e, rows := range slopePlaces {
		for h, cols := range slopePlaces {
			for r, row := range rows {
				for c, col := range cols {
					v := -u[r] * u[c]
					if r == c {
						v++
					}
					if e != h {
						v = -v
					}
					hess[row*w+col] += g * v
				}
			}
		}
		if o.SolveScale {
			for r, row := range rows {
				v := f[0] * u[r]
				if e == 0 {
					v = -v
				}
				hess[row*w+w-1] += v
				hess[(w-1)*w+row] += v
			}
		}
	}
}
