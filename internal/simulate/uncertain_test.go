package simulate_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"brimline/internal/simulate"
	"brimline/plane"
)

// The worst mark across the outline, against the scatter of many days on one pool: each day's
// noise is solved by the design taken by differences, in the frame of the pegs, the rim then laid
// on the true one by a rigid fit, and the misses across the outline are collected.
func TestWorstNormalAgainstScatter(t *testing.T) {
	for k, p := range []simulate.Plan{plans[3], plans[0]} {
		const days = 1000
		c := simulate.Visit(11, simulate.Shapes[4+k], p)
		name, u := c.WorstNormal()
		seg, share, _ := c.Outline.Nearest(c.Truth[name])
		normal := c.Outline.Segs[seg].Tangent(share).Left()
		next := daysOf(t, c)
		sum := 0.0
		for range days {
			sum += math.Pow(missOf(t, c, next(), name).Dot(normal), 2)
		}
		sd := math.Sqrt(sum / days)
		t.Logf("%s: ±%.4f m said, ±%.4f m by scatter at %s", title(c), u, 1.96*sd, name)
		// the sd of 1000 days is sure to 2.2 %; four times that
		if r := 1.96 * sd / u; r < 0.91 || r > 1.09 {
			t.Errorf("%s: ±%.4f m said at %s, ±%.4f m by scatter", title(c), u, name, 1.96*sd)
		}
	}
}

// daysOf gives a source of moves of the unknowns, a day a call.
func daysOf(t *testing.T, c simulate.Case) func() []float64 {
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
	var qr mat.QR
	qr.Factorize(jac)
	r := rand.New(rand.NewPCG(17, 1))
	return func() []float64 {
		noise := mat.NewVecDense(len(rows), nil)
		for k := range rows {
			noise.SetVec(k, r.NormFloat64())
		}
		var step mat.VecDense
		if err := qr.SolveVecTo(&step, false, noise); err != nil {
			t.Fatal(err)
		}
		return step.RawVector().Data
	}
}

// missOf is the miss of a mark after the rigid fit of the rim.
func missOf(t *testing.T, c simulate.Case, step []float64, name string) plane.Point {
	t.Helper()
	u := numbered(c)
	moved := func(m string) plane.Point {
		return c.Truth[m].Add(plane.Point{X: step[u.place[m]], Y: step[u.place[m]+1]})
	}
	var from, to []plane.Point
	for _, m := range c.Order {
		from, to = append(from, moved(m)), append(to, c.Truth[m])
	}
	fit, ok := plane.FitRigid(from, to, nil)
	if !ok {
		t.Fatal("no fit")
	}
	return fit.Apply(moved(name)).Sub(c.Truth[name])
}
