package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/adjust"
	"brimline/plane"
)

// bentNet is one mark taped from three pegs, which tapes a hundred times as good hold; the last
// tape was taken round something. off is the error of that tape.
func bentNet(seed uint64, off float64) *maker {
	m := newMaker(rand.New(rand.NewPCG(seed, 3)), 1, points(0, 0, 9, 0, 4, 9, 5, 4))
	for a := range 3 {
		for b := range a {
			m.tie(a, b, 0.00005)
		}
		m.tie(a, 3, 0.005)
	}
	o := m.tie(0, 3, 0.005)
	o.Long, o.Values[0] = 0.05, o.Values[0]+off
	return m
}

// lowest finds the place of the mark with the least sum of squares by looking on ever finer grids: a
// tape of the list that reads longer than a place says is looser if it is bent.
func lowest(m *maker, pegs []plane.Point, about plane.Point) (plane.Point, float64) {
	sum := func(q plane.Point) float64 {
		total := 0.0
		for i := range m.n.Obs {
			o := &m.n.Obs[i]
			if o.Marks[1] != 3 && o.Marks[0] != 3 {
				continue
			}
			long := o.Values[0] - pegs[o.Marks[0]].Dist(q)
			sd := o.SD[0]
			if o.Long > 0 && long > 0 {
				sd = math.Sqrt(sd*sd + o.Long*o.Long)
			}
			total += long * long / (sd * sd)
		}
		return total
	}
	best, least := about, sum(about)
	for width := 0.2; width > 1e-8; width /= 4 {
		c := best
		for i := -10; i <= 10; i++ {
			for j := -10; j <= 10; j++ {
				q := c.Add(plane.Point{X: width * float64(i) / 10, Y: width * float64(j) / 10})
				if v := sum(q); v < least {
					best, least = q, v
				}
			}
		}
	}
	return best, least
}

// A tape taken round something is loose while it is too long and as good as any while it is too
// short: the place and the sum of squares are those of a search on grids.
func TestBentAgainstGrid(t *testing.T) {
	loose, tight := 0, 0
	for seed := range uint64(10) {
		for _, off := range []float64{-0.05, -0.01, 0, 0.01, 0.05, 0.2} {
			m := bentNet(220+seed, off)
			s := m.solve(t)
			pegs := []plane.Point{s.X.Point(0), s.X.Point(1), s.X.Point(2)}
			at, sum := lowest(m, pegs, m.truth.Point(3))
			near(t, "place", s.X.Point(3).Dist(at), 0, 2e-6)
			ties := 0.0 // between the pegs
			for i := range s.Net.Obs {
				if s.Net.Obs[i].Marks[0] != 3 && s.Net.Obs[i].Marks[1] != 3 {
					u := s.Residual[s.First[i]] / s.SD[s.First[i]]
					ties += u * u
				}
			}
			near(t, "sum of squares", s.Cost-ties, sum, 1e-6*(1+sum))
			p := s.First[len(s.Net.Obs)-1]
			want := 0.005
			if s.Residual[p] < 0 { // read longer than it is
				want = math.Hypot(0.005, 0.05)
				loose++
			} else {
				tight++
			}
			near(t, "sd in force", s.SD[p], want, 1e-15)
		}
	}
	if loose < 15 || tight < 15 {
		t.Errorf("%d loose and %d tight: the test asks too little of one", loose, tight)
	}
}

// A tape 40 mm too long round something shows nothing and hardly moves the mark; the same too short
// shows.
func TestBentIsOneSided(t *testing.T) {
	straight := bentNet(3, 0)
	straight.n.Obs = straight.n.Obs[:len(straight.n.Obs)-1]
	without := straight.solve(t)
	long, short := bentNet(3, 0.04).solve(t), bentNet(3, -0.04).solve(t)
	p := long.First[len(long.Net.Obs)-1]
	if math.Abs(long.W[p]) > 1.5 || long.X.Point(3).Dist(without.X.Point(3)) > 0.002 {
		t.Errorf("40 mm too long: w %g, the mark %g off", long.W[p], long.X.Point(3).Dist(without.X.Point(3)))
	}
	if short.W[p] < adjust.WLimit {
		t.Errorf("40 mm too short: w %g", short.W[p])
	}
}
