package simulate_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"brimline/internal/simulate"
	"brimline/plane"
)

// unknowns numbers the coordinates of the marks (A and the y of B are the datum) and the poses.
type unknowns struct {
	c     simulate.Case
	place map[string]int // of x; y follows
	pose  map[string]int // of shift x, shift y, turn
	n     int
}

func numbered(c simulate.Case) unknowns {
	u := unknowns{c: c, place: map[string]int{"B": 0}, pose: map[string]int{}, n: 1}
	for _, list := range [][]string{c.Pegs[2:], c.Order} {
		for _, m := range list {
			u.place[m] = u.n
			u.n += 2
		}
	}
	for _, s := range c.Setups {
		u.pose[s.Name] = u.n
		u.n += 3
	}
	return u
}

// moved is the case with one unknown moved by h.
func (u unknowns) moved(i int, h float64) simulate.Case {
	c := u.c
	c.Truth = map[string]plane.Point{}
	for m, p := range u.c.Truth {
		at, known := u.place[m]
		switch {
		case known && at == i:
			p.X += h
		case known && at+1 == i && m != "B":
			p.Y += h
		}
		c.Truth[m] = p
	}
	c.Setups = append([]simulate.Setup(nil), u.c.Setups...)
	for k := range c.Setups {
		s := &c.Setups[k]
		switch i - u.pose[s.Name] {
		case 0:
			s.Pose.T.X += h
		case 1:
			s.Pose.T.Y += h
		case 2:
			a := math.Atan2(s.Pose.S, s.Pose.C) + h
			s.Pose.S, s.Pose.C = math.Sin(a), math.Cos(a)
		}
	}
	return c
}

// Every case is fixed by its readings: the normal matrix, by differences, has an inverse, no mark
// is worse than a few centimetres and something is left to check with.
func TestReadingsFixEveryMark(t *testing.T) {
	for _, s := range simulate.Shapes {
		for _, m := range simulate.Methods {
			for seed := range uint64(4) {
				c := simulate.Pool(seed, s, m, simulate.Options{})
				if worst, redundancy := strength(t, c); worst > 0.06 || redundancy < 3 {
					t.Errorf("%s: worst coordinate ±%.3f m, redundancy %d", title(c), worst, redundancy)
				}
			}
		}
	}
}

func strength(t *testing.T, c simulate.Case) (worst float64, redundancy int) {
	t.Helper()
	const h = 1e-5
	u := numbered(c)
	book := parsed(t, c.Book)
	rows := book.against(t, c)
	jac := mat.NewDense(len(rows), u.n, nil)
	for i := range u.n {
		plus, minus := book.against(t, u.moved(i, h)), book.against(t, u.moved(i, -h))
		for k := range rows {
			jac.Set(k, i, (plus[k].true-minus[k].true)/(2*h)/rows[k].sd)
		}
	}
	var normal mat.SymDense
	normal.SymOuterK(1, jac.T())
	var chol mat.Cholesky
	if !chol.Factorize(&normal) {
		t.Fatalf("%s: the readings leave something unfixed", title(c))
	}
	var cov mat.SymDense
	if err := chol.InverseTo(&cov); err != nil {
		t.Fatalf("%s: %v", title(c), err)
	}
	for _, list := range [][]string{c.Pegs[2:], c.Order} {
		for _, m := range list {
			for _, at := range []int{u.place[m], u.place[m] + 1} {
				worst = math.Max(worst, math.Sqrt(cov.At(at, at)))
			}
		}
	}
	return worst, len(rows) - u.n
}
