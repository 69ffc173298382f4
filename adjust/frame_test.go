package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/plane"

	"gonum.org/v1/gonum/mat"
)

func points(xy ...float64) []plane.Point {
	var out []plane.Point
	for i := 0; i < len(xy); i += 2 {
		out = append(out, plane.Point{X: xy[i], Y: xy[i+1]})
	}
	return out
}

// pseudo is the Moore–Penrose inverse of the normal matrix without a datum.
func (d *dense) pseudo() *mat.Dense {
	n := len(d.s.X)
	var svd mat.SVD
	svd.Factorize(d.a, mat.SVDThin)
	var v, scaled, out mat.Dense
	svd.VTo(&v)
	values := svd.Values(nil)
	_, k := v.Dims()
	scaled.CloneFrom(&v)
	for j := range k {
		f := 0.0
		if j < n-3 {
			f = 1 / (values[j] * values[j])
		}
		for i := range n {
			scaled.Set(i, j, scaled.At(i, j)*f)
		}
	}
	out.Mul(&scaled, v.T())
	return &out
}

// A fit on all marks is the minimum-norm datum: the blocks of the pseudo-inverse.
func TestFitOnAllIsPseudoInverse(t *testing.T) {
	for seed := range uint64(5) {
		s := pool(seed, 8, 1, false).solve(t)
		var all []int
		for i := range s.Net.Marks {
			all = append(all, i)
		}
		sameBlocks(t, s, s.FitFrame(all), denseOf(t, s).pseudo())
	}
}

func sameBlocks(t *testing.T, s *adjust.Solution, f *adjust.Frame, c *mat.Dense) {
	t.Helper()
	tol := 1e-7 * largest(c)
	for m := range s.Net.Marks {
		got := f.MarkCov(m)
		for k, at := range [][2]int{{0, 0}, {0, 1}, {1, 1}} {
			near(t, "covariance", got[k], c.At(2*m+at[0], 2*m+at[1]), tol)
		}
	}
}

// conditions is B for a fit on marks.
func (d *dense) fitOn(marks []int) *mat.Dense {
	b := mat.NewDense(len(d.s.X), 3, nil)
	g := d.gauge()
	for _, m := range marks {
		for r := 2 * m; r < 2*m+2; r++ {
			b.SetRow(r, g.RawRowView(r))
		}
	}
	return b
}

// holdOn is B for holding a and the direction from a to p.
func (d *dense) holdOn(a, p int) *mat.Dense {
	b := mat.NewDense(len(d.s.X), 3, nil)
	u := d.s.X.Point(p).Sub(d.s.X.Point(a)).Unit().Left()
	b.Set(2*a, 0, 1)
	b.Set(2*a+1, 1, 1)
	b.Set(2*p, 2, u.X)
	b.Set(2*p+1, 2, u.Y)
	b.Set(2*a, 2, -u.X)
	b.Set(2*a+1, 2, -u.Y)
	return b
}

// Other datums against S-transformations with full matrices, set-ups included: covariances and
// the moves by undetected errors.
func TestFramesAgainstDense(t *testing.T) {
	shut := 0
	for seed := range uint64(6) {
		s := pool(seed, 7, 1, seed%2 == 0).solve(t)
		d := denseOf(t, s)
		for _, c := range []struct {
			frame *adjust.Frame
			cov   *mat.Dense
		}{
			{s.InnerFrame(), d.c},
			{s.FitFrame([]int{2, 4, 5}), d.datum(t, d.fitOn([]int{2, 4, 5}))},
			{s.FitFrame([]int{0, 7}), d.datum(t, d.fitOn([]int{0, 7}))},
			{s.HoldFrame(6, 3), d.datum(t, d.holdOn(6, 3))},
		} {
			sameBlocks(t, s, c.frame, c.cov)
			h := c.frame.Hidden()
			want, by := d.hiddenMoves(c.cov)
			for m := range s.Net.Marks {
				if open := math.IsInf(want[m], 1); h.Controlled[m] == open || math.IsNaN(h.Move[m]) != open {
					t.Errorf("mark %d: controlled %v, move %v, want %v", m, h.Controlled[m], h.Move[m], want[m])
				} else if !open {
					near(t, "hidden move", h.Move[m], want[m], 1e-6*want[m]+1e-9)
					shut++
				}
				if want[m] > 1e-6 && h.By[m] != by[m] {
					t.Errorf("mark %d: by reading %d, want %d", m, h.By[m], by[m])
				}
			}
		}
	}
	if shut < 100 {
		t.Errorf("only %d moves were compared", shut)
	}
}

// hiddenMoves puts the detectable size in each row in turn; the row's observation is by. A mark
// that a row without redundancy moves is infinitely far off.
func (d *dense) hiddenMoves(c *mat.Dense) (move []float64, by []int) {
	n := len(d.s.Net.Marks)
	move, by = make([]float64, n), make([]int, n)
	for row, p := range d.part {
		i := 0
		for d.s.First[i+1] <= p {
			i++
		}
		blind := d.s.Redund[p] < adjust.LeastRed
		size := d.s.Detectable[p]
		if blind {
			size = 1
		}
		v := d.moves(c, row, size)
		for m := range n {
			l := math.Hypot(v[2*m], v[2*m+1])
			if blind && l <= adjust.Influence {
				continue
			} else if blind {
				l = math.Inf(1)
			}
			if l > move[m] {
				move[m], by[m] = l, i
			}
		}
	}
	return move, by
}

// A held mark does not move, and the mark that gives the direction moves only along it.
func TestHoldFrame(t *testing.T) {
	s := pool(3, 8, 1, true).solve(t)
	f := s.HoldFrame(5, 8)
	for _, v := range f.MarkCov(5) {
		near(t, "held mark", v, 0, 1e-15)
	}
	u := s.X.Point(8).Sub(s.X.Point(5)).Unit()
	c := f.MarkCov(8)
	near(t, "across", u.Y*u.Y*c[0]-2*u.X*u.Y*c[1]+u.X*u.X*c[2], 0, 1e-14)
	sd, _, _ := s.Ask(distance(s, 5, 8))
	near(t, "along", u.X*u.X*c[0]+2*u.X*u.Y*c[1]+u.Y*u.Y*c[2], sd*sd, 1e-8*sd*sd)
	one := s.FitFrame([]int{4}).MarkCov(4)
	near(t, "fit on one mark", math.Abs(one[0])+math.Abs(one[2]), 0, 1e-14)
}

// A mark with two ties only is uncontrolled, and the others are not harmed by it.
func TestHiddenUncontrolled(t *testing.T) {
	const lone = 5
	m := newMaker(rand.New(rand.NewPCG(2, 2)), 1, points(0, 0, 8, 0, 7, 5, 4, 8, 1, 6, -3, 4))
	for a := range lone {
		for b := range a {
			m.tie(a, b, 0.004)
		}
	}
	m.tie(0, lone, 0.004)
	m.tie(1, lone, 0.004)
	h := m.solve(t).InnerFrame().Hidden()
	for i := range m.n.Marks {
		if h.Controlled[i] == (i == lone) || math.IsNaN(h.Move[i]) != (i == lone) {
			t.Errorf("mark %d: controlled %v, move %v", i, h.Controlled[i], h.Move[i])
		}
	}
	if by := h.By[lone]; by < len(m.n.Obs)-2 {
		t.Errorf("the lone mark is moved by reading %d", by)
	}
}
