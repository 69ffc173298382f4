package outline

import (
	"math"

	"brimline/finding"
)

// Standard deviations that keep the weights finite: of a joint said to be tangent, and the least
// of a mark across the line.
const (
	tangentSD = 1e-4 // radians
	leastSD   = 1e-5 // metres
)

// settle minimises the misfits with the full covariance of the marks (Gauss–Newton with a
// shortened step; the derivatives of the few conditions by central differences).
func (c *chain) settle(edge []float64) {
	if c.free() {
		c.cov = c.misfitCov(edge)
		c.res, c.resSD = make([]float64, len(c.rows)), make([]float64, len(c.rows))
		return
	}
	const mostSteps = 40
	for range mostSteps {
		w := c.weights(edge)
		n, g := c.normal(w, c.jacobian())
		c.cov = invert(n, c.n)
		d := make([]float64, c.n)
		for a := range d {
			for b := range d {
				d[a] -= c.cov[a*c.n+b] * g[b]
			}
		}
		if c.advance(w, d) < 1e-10 {
			break
		}
	}
	c.judge(edge)
}

// advance adds the step d, halved until the misfits weighted by w do not grow (a line said to
// run where its marks do not lie would lead it astray), and gives its largest coordinate.
func (c *chain) advance(w, d []float64) float64 {
	from, before := append([]float64(nil), c.q...), c.cost(w)
	f := 1.0
	for range 30 {
		largest := 0.0
		for a := range d {
			c.q[a] = from[a] + f*d[a]
			largest = math.Max(largest, math.Abs(f*d[a]))
		}
		if largest < 1e-7 || c.cost(w) <= before {
			return largest
		}
		f /= 2
	}
	copy(c.q, from)
	return 0
}

// cost is rᵀ·W·r at the present place of the line.
func (c *chain) cost(w []float64) float64 {
	m := len(c.rows)
	r := make([]float64, m)
	for i, x := range c.rows {
		r[i] = c.value(c.q, x)
	}
	sum := 0.0
	for a := range m {
		for b := range m {
			sum += r[a] * w[a*m+b] * r[b]
		}
	}
	return sum
}

// free says that nothing but its own mark holds any unknown: a line of curves goes through its
// marks, and the covariance of its unknowns is theirs.
func (c *chain) free() bool {
	for _, r := range c.rows {
		if r.axis > 1 {
			return false
		}
	}
	return len(c.rows) == c.n
}

func (c *chain) jacobian() []float64 {
	const h = 1e-5
	j := make([]float64, len(c.rows)*c.n)
	for a := range c.n {
		keep := c.q[a]
		for i, r := range c.rows {
			if r.axis < 2 {
				if a == 2*r.vertex+r.axis {
					j[i*c.n+a] = 1
				}
				continue
			}
			if !c.touches(r, a) {
				continue
			}
			c.q[a] = keep + h
			up := c.value(c.q, r)
			c.q[a] = keep - h
			j[i*c.n+a] = (up - c.value(c.q, r)) / (2 * h)
			c.q[a] = keep
		}
	}
	return j
}

// touches says whether unknown a takes part in a condition.
func (c *chain) touches(r row, a int) bool {
	part := func(p *piece) bool {
		return a == p.bulge || a/2 == p.from && a < 2*len(c.vertex) || a/2 == p.to && a < 2*len(c.vertex)
	}
	if part(&c.pieces[r.piece]) {
		return true
	}
	return r.axis == 3 && part(&c.pieces[c.before(r.piece)])
}

// covariance of the misfits that the marks cause, at the present place of the line.
func (c *chain) misfitCov(edge []float64) []float64 {
	marks, at := c.markList()
	cm := c.s.Cov(marks...)
	k := 2 * len(marks)
	normals := c.normals(marks)
	for i, m := range marks {
		e := edge[m]*edge[m] + leastSD*leastSD
		nx, ny := normals[i][0], normals[i][1]
		cm[(2*i)*k+2*i] += e*nx*nx + leastSD*leastSD
		cm[(2*i)*k+2*i+1] += e * nx * ny
		cm[(2*i+1)*k+2*i] += e * nx * ny
		cm[(2*i+1)*k+2*i+1] += e*ny*ny + leastSD*leastSD
	}
	type load struct{ x, y float64 }
	b := make([]load, len(c.rows))
	for i, r := range c.rows {
		switch r.axis {
		case 0:
			b[i] = load{1, 0}
		case 1:
			b[i] = load{0, 1}
		case 2:
			n := normals[at[r.mark]]
			b[i] = load{n[0], n[1]}
		}
	}
	n := len(c.rows)
	out := make([]float64, n*n)
	for i, r := range c.rows {
		switch r.axis {
		case 3:
			out[i*n+i] = tangentSD * tangentSD
			continue
		case 4:
			sd := c.pieces[r.piece].rise.sd
			out[i*n+i] = sd * sd
			continue
		}
		p := 2 * at[r.mark]
		for j := i; j < n; j++ {
			if c.rows[j].axis > 2 {
				continue
			}
			q := 2 * at[c.rows[j].mark]
			v := b[i].x*(cm[p*k+q]*b[j].x+cm[p*k+q+1]*b[j].y) + b[i].y*(cm[(p+1)*k+q]*b[j].x+cm[(p+1)*k+q+1]*b[j].y)
			out[i*n+j], out[j*n+i] = v, v
		}
	}
	return out
}

func (c *chain) markList() (marks []int, at map[int]int) {
	at = map[int]int{}
	for _, r := range c.rows {
		if r.axis > 2 {
			continue
		}
		if _, ok := at[r.mark]; !ok {
			at[r.mark] = len(marks)
			marks = append(marks, r.mark)
		}
	}
	return marks, at
}

// normals to the left of the line at each mark.
func (c *chain) normals(marks []int) [][2]float64 {
	path, _ := c.path(c.q)
	out := make([][2]float64, len(marks))
	for i, m := range marks {
		seg, t, _ := path.Nearest(c.s.X.Point(m))
		n := path.Segs[seg].Tangent(t).Left()
		out[i] = [2]float64{n.X, n.Y}
	}
	return out
}

func (c *chain) weights(edge []float64) []float64 {
	return invert(c.misfitCov(edge), len(c.rows))
}

// normal forms Jᵀ·W·J and Jᵀ·W·r.
func (c *chain) normal(w, j []float64) (n, g []float64) {
	m := len(c.rows)
	r := make([]float64, m)
	for i, x := range c.rows {
		r[i] = c.value(c.q, x)
	}
	wj := make([]float64, m*c.n)
	wr := make([]float64, m)
	for a := range m {
		for b := range m {
			v := w[a*m+b]
			if v == 0 {
				continue
			}
			wr[a] += v * r[b]
			for k, jv := range j[b*c.n : (b+1)*c.n] {
				if jv != 0 {
					wj[a*c.n+k] += v * jv
				}
			}
		}
	}
	n, g = make([]float64, c.n*c.n), make([]float64, c.n)
	for a := range m {
		for k, jv := range j[a*c.n : (a+1)*c.n] {
			if jv == 0 {
				continue
			}
			g[k] += jv * wr[a]
			for l := range c.n {
				n[k*c.n+l] += jv * wj[a*c.n+l]
			}
		}
	}
	return n, g
}

// judge keeps the misfits of inner marks with their standard deviations: the variance of a
// misfit after the fit is that before it less what the fit took up.
func (c *chain) judge(edge []float64) {
	cov := c.misfitCov(edge)
	j := c.jacobian()
	m := len(c.rows)
	c.res, c.resSD = make([]float64, m), make([]float64, m)
	for i, r := range c.rows {
		v := cov[i*m+i]
		row := j[i*c.n : (i+1)*c.n]
		for a := range c.n {
			if row[a] == 0 {
				continue
			}
			for b := range c.n {
				v -= row[a] * c.cov[a*c.n+b] * row[b]
			}
		}
		c.res[i], c.resSD[i] = c.value(c.q, r), math.Sqrt(math.Max(v, 0))
	}
}

// flat names arcs that are straight as far as their marks tell.
func (c *chain) flat() []finding.Finding {
	var out []finding.Finding
	for i := range c.pieces {
		p := &c.pieces[i]
		if p.bulge < 0 || math.Abs(c.segment(c.q, p).Sagitta()) > 1e-4 {
			continue
		}
		out = append(out, finding.Finding{Code: "arc-flat", Lines: []string{c.l.Name}, Marks: p.names[:]})
	}
	return out
}

// tests names inner marks that lie off the run said to go through them.
func (c *chain) tests() []finding.Finding {
	const limit, least = 3.29, 1e-4
	out := c.flat()
	for i, r := range c.rows {
		if r.axis != 2 || c.resSD[i] < least || math.Abs(c.res[i]) <= limit*c.resSD[i] {
			continue
		}
		out = append(out, finding.Finding{Code: "tight-fit", Lines: []string{c.l.Name}, Marks: []string{c.s.Net.Marks[r.mark]},
			Figures: map[string]float64{"off": math.Abs(c.res[i]), "allowed": limit * c.resSD[i]},
			Words:   map[string]string{"kind": c.pieces[r.piece].kind}})
	}
	return out
}

// invert is the inverse of a symmetric positive definite matrix by Cholesky's method; a pivot
// lost to rounding is held up at 1e-14 of the largest.
func invert(a []float64, n int) []float64 {
	l := make([]float64, n*n)
	top := 0.0
	for i := range n {
		top = math.Max(top, a[i*n+i])
	}
	for i := range n {
		for j := range i + 1 {
			v := a[i*n+j]
			li, lj := l[i*n:i*n+j], l[j*n:j*n+j]
			for k := range li {
				v -= li[k] * lj[k]
			}
			if i == j {
				l[i*n+i] = math.Sqrt(math.Max(v, 1e-14*top))
			} else {
				l[i*n+j] = v / l[j*n+j]
			}
		}
	}
	inv := make([]float64, n*n) // of l, stored by rows
	for c := range n {
		for i := c; i < n; i++ {
			v := 0.0
			if i == c {
				v = 1
			}
			for k := c; k < i; k++ {
				v -= l[i*n+k] * inv[k*n+c]
			}
			inv[i*n+c] = v / l[i*n+i]
		}
	}
	out := make([]float64, n*n)
	for k := range n {
		row := inv[k*n : k*n+k+1]
		for i, x := range row {
			if x == 0 {
				continue
			}
			for j, y := range row[:i+1] {
				out[i*n+j] += x * y
			}
		}
	}
	for i := range n {
		for j := range i {
			out[j*n+i] = out[i*n+j]
		}
	}
	return out
}
