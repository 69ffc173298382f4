package simulate

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"brimline/plane"
)

// The smallest error that a two-sided test at 0.001 finds with power 0.80 is shift·sd/√r; below
// the redundancy leastRed it shows nowhere. After W. Baarda, A testing procedure for use in
// geodetic networks (1968).
const (
	shift    = 4.13
	leastRed = 0.01
)

// Detectable gives the smallest error that would show, by reading and part, from the true places
// and the sd that the book states; +Inf where nothing would show it.
func (c Case) Detectable() [][]float64 {
	out := c.Redundancies()
	for i, x := range c.Readings {
		for k, r := range out[i] {
			out[i][k] = math.Inf(1)
			if r >= leastRed {
				out[i][k] = shift * x.SD[k] / math.Sqrt(r)
			}
		}
	}
	return out
}

// Redundancies gives the redundancy number of every part of every reading, checks taken for
// ordinary ones, by a dense normal matrix of the true design: r = 1 − aᵀN⁻¹a of the whitened
// row a. It panics where the readings leave something unfixed.
func (c Case) Redundancies() [][]float64 {
	d := c.design()
	inverse, ok := d.inverse()
	if !ok {
		panic("simulate: the readings leave something unfixed")
	}
	out, n := make([][]float64, len(c.Readings)), 0
	for i, x := range c.Readings {
		for range x.True {
			row, used := d.rows[n], 0.0
			for j, p := range row.at {
				for k, q := range row.at {
					used += row.of[j] * row.of[k] * inverse.At(p, q)
				}
			}
			out[i] = append(out[i], 1-used)
			n++
		}
	}
	return out
}

// inverse of the normal matrix; ok is false where it has none.
func (d design) inverse() (*mat.SymDense, bool) {
	normal := mat.NewSymDense(d.unknowns, nil)
	for _, row := range d.rows {
		for i, p := range row.at {
			for k, q := range row.at {
				if p <= q {
					normal.SetSym(p, q, normal.At(p, q)+row.of[i]*row.of[k])
				}
			}
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(normal) {
		return nil, false
	}
	var inverse mat.SymDense
	if err := chol.InverseTo(&inverse); err != nil {
		return nil, false
	}
	return &inverse, true
}

// design holds the whitened rows of all parts in the unknowns: x and y of every mark but A's and
// B's y, and shift and turn of every set-up.
type design struct {
	rows     []designRow
	unknowns int
	place    map[string]int // of x; y follows
	pose     map[string]int
}

type designRow struct {
	at []int
	of []float64
}

func (c Case) design() design {
	d := design{unknowns: 1, place: map[string]int{"B": 0}, pose: map[string]int{}}
	for _, list := range [][]string{c.Pegs[2:], c.Order} {
		for _, m := range list {
			d.place[m] = d.unknowns
			d.unknowns += 2
		}
	}
	for _, s := range c.Setups {
		d.pose[s.Name] = d.unknowns
		d.unknowns += 3
	}
	for _, x := range c.Readings {
		switch x.Kind {
		case "tie":
			d.tie(c, x)
		case "offset":
			d.offset(c, x)
		case "seen":
			d.seen(c, x)
		}
	}
	return d
}

// add puts the share of a mark into a row; the datum has none.
func (d *design) add(row *designRow, mark string, g plane.Point, sd float64) {
	if mark == "A" {
		return
	}
	at := d.place[mark]
	row.at, row.of = append(row.at, at), append(row.of, g.X/sd)
	if mark != "B" {
		row.at, row.of = append(row.at, at+1), append(row.of, g.Y/sd)
	}
}

func (d *design) tie(c Case, x Reading) {
	u := c.Truth[x.Marks[1]].Sub(c.Truth[x.Marks[0]]).Unit()
	var row designRow
	d.add(&row, x.Marks[0], u.Mul(-1), x.SD[0])
	d.add(&row, x.Marks[1], u, x.SD[0])
	d.rows = append(d.rows, row)
}

// offset: along = d·u and left = u×d, with d from the first end and u toward the second, which
// turns by the other end's move across over the length.
func (d *design) offset(c Case, x Reading) {
	m, p, q := x.Marks[0], x.Marks[1], x.Marks[2]
	length := c.Truth[p].Dist(c.Truth[q])
	u := c.Truth[q].Sub(c.Truth[p]).Unit()
	n := u.Left()
	along, left := c.Truth[m].Sub(c.Truth[p]).Dot(u), u.Cross(c.Truth[m].Sub(c.Truth[p]))
	var first, second designRow
	d.add(&first, m, u, x.SD[0])
	d.add(&first, p, u.Mul(-1).Sub(n.Mul(left/length)), x.SD[0])
	d.add(&first, q, n.Mul(left/length), x.SD[0])
	d.add(&second, m, n, x.SD[1])
	d.add(&second, p, n.Mul(along/length-1), x.SD[1])
	d.add(&second, q, n.Mul(-along/length), x.SD[1])
	d.rows = append(d.rows, first, second)
}

// seen: (x, y) = Rᵀ(p − t), y counted downward where the set-up flips. A turn of the set-up by δ
// moves it by (y, −x)·δ.
func (d *design) seen(c Case, x Reading) {
	for _, s := range c.Setups {
		if s.Name != x.Setup {
			continue
		}
		at := s.Pose.Inverse().Apply(c.Truth[x.Marks[0]])
		axes := []plane.Point{s.Pose.ApplyVec(plane.Point{X: 1}), s.Pose.ApplyVec(plane.Point{Y: 1})}
		turn := []float64{at.Y, -at.X}
		for k, axis := range axes {
			sd := x.SD[k]
			if k == 1 && s.Flip {
				sd = -sd
			}
			var row designRow
			d.add(&row, x.Marks[0], axis, sd)
			n := d.pose[s.Name]
			row.at = append(row.at, n, n+1, n+2)
			row.of = append(row.of, -axis.X/sd, -axis.Y/sd, turn[k]/sd)
			d.rows = append(d.rows, row)
		}
	}
}
