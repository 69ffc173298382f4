package outline

import (
	"math"

	"brimline/adjust"
	"brimline/plane"
)

// block is the covariance of the coordinates of all marks of a line, asked of the solution once:
// in the datum, and in the line's own frame.
type block struct {
	s     *adjust.Solution
	marks []int
	row   []int // place of each mark of the network, −1 not of the line
	k     int
	datum []float64
	// own holds each mark against all others: shift and turn of the line as a whole, which say
	// nothing of its shape and may be far larger than the noise of a mark, are taken out, and put
	// back at the size of one mark's. P·C·Pᵀ + s²·G·Gᵀ with P = I − G·Gᵀ, the columns of G the small
	// rigid motions, orthonormal (W. Baarda, S-transformations and criterion matrices, 1973).
	own []float64
	sd2 float64 // s²
	g   [][3]float64

	corner []corner // numbered after the marks of the network
}

func newBlock(s *adjust.Solution, l Spec, corners []corner) *block {
	n := len(s.Net.Marks)
	b := &block{s: s, row: make([]int, n+len(corners)), corner: corners}
	for m := range b.row {
		b.row[m] = -1
	}
	for _, r := range l.Runs {
		for _, m := range r.Marks {
			if m < n {
				b.take(m)
			}
		}
	}
	for i := range corners {
		for _, m := range corners[i].marks() {
			if corners[i].used {
				b.take(m)
			}
		}
	}
	b.datum = s.Cov(b.marks...)
	b.derive(n)
	b.k = 2 * len(b.marks)
	b.motions()
	b.turnInward()
	return b
}

// take adds a mark once.
func (b *block) take(m int) {
	if b.row[m] < 0 {
		b.row[m] = len(b.marks)
		b.marks = append(b.marks, m)
	}
}

// point is the place of a mark of the network or of a corner.
func (b *block) point(m int) plane.Point {
	if n := len(b.s.Net.Marks); m >= n {
		return b.corner[m-n].at
	}
	return b.s.X.Point(m)
}

func (b *block) name(m int) string {
	if n := len(b.s.Net.Marks); m >= n {
		return b.corner[m-n].Name
	}
	return b.s.Net.Marks[m]
}

// motions fills g.
func (b *block) motions() {
	n := float64(len(b.marks))
	var mean plane.Point
	for _, m := range b.marks {
		mean = mean.Add(b.point(m).Mul(1 / n))
	}
	size := 0.0
	for _, m := range b.marks {
		q := b.point(m).Sub(mean)
		size += q.Dot(q)
	}
	for _, m := range b.marks {
		q := b.point(m).Sub(mean).Mul(1 / math.Sqrt(math.Max(size, leastSD)))
		b.g = append(b.g, [3]float64{1 / math.Sqrt(n), 0, -q.Y}, [3]float64{0, 1 / math.Sqrt(n), q.X})
	}
}

// turnInward fills own.
func (b *block) turnInward() {
	k := b.k
	cg := make([][3]float64, k)
	var gcg [3][3]float64
	for i := range k {
		for j, v := range b.datum[i*k : (i+1)*k] {
			for a := range 3 {
				cg[i][a] += v * b.g[j][a]
			}
		}
		for a := range 3 {
			for c := range 3 {
				gcg[a][c] += b.g[i][a] * cg[i][c]
			}
		}
	}
	b.own = make([]float64, k*k)
	for i := range k {
		for j := range k {
			v := b.datum[i*k+j]
			for a := range 3 {
				v -= b.g[i][a]*cg[j][a] + cg[i][a]*b.g[j][a]
				for c := range 3 {
					v += b.g[i][a] * gcg[a][c] * b.g[j][c]
				}
			}
			b.own[i*k+j] = v
		}
		b.sd2 += b.own[i*k+i] / float64(k)
	}
	b.sd2 += leastSD * leastSD
	for i := range k {
		for j := range k {
			for a := range 3 {
				b.own[i*k+j] += b.sd2 * b.g[i][a] * b.g[j][a]
			}
		}
	}
}

// of is the covariance of a mark in the line's own frame: xx, xy, yy.
func (b *block) of(m int) [3]float64 {
	i := 2 * b.row[m]
	return [3]float64{b.own[i*b.k+i], b.own[i*b.k+i+1], b.own[(i+1)*b.k+i+1]}
}

// some is the covariance of the coordinates of marks, taken from datum or own.
func (b *block) some(from []float64, marks []int) []float64 {
	k := 2 * len(marks)
	out := make([]float64, k*k)
	for i, m := range marks {
		for j, n := range marks {
			for a := range 2 {
				copy(out[(2*i+a)*k+2*j:], from[(2*b.row[m]+a)*b.k+2*b.row[n]:][:2])
			}
		}
	}
	return out
}
