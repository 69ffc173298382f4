package plane

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The tangent rule of Fair was chosen by this measurement: marks at jittered spacings of 0.6
// and 0.9 m on smooth closed figures, errors of area and length against the figure itself, for
// Fair's rule, the circle through three neighbours, and the parametric cubic spline by chord
// length. Seed 7. Fair's rule must stay the best by root mean square over all figures.
func TestFairRuleMeasuresBest(t *testing.T) {
	rules := []struct {
		name     string
		tangents func([]Point) []Point
	}{{"Fair", ringTangents}, {"circle of three", threePointTangents}, {"cubic spline", cubicTangents}}
	for _, step := range []float64{0.6, 0.9} {
		var area, length [3]float64
		r := rand.New(rand.NewPCG(7, 7))
		count := 0.0
		for _, f := range smoothFigures() {
			fine := samples(f, 20000)
			ring := Polyline(fine, true)
			for range 20 {
				pts := jittered(fine, ring.Length(), step, r)
				count++
				for i, rule := range rules {
					p := joined(pts, rule.tangents(pts))
					area[i] += math.Pow(p.Area()-ring.Area(), 2)
					length[i] += math.Pow(p.Length()-ring.Length(), 2)
				}
			}
		}
		for i, rule := range rules {
			a, l := math.Sqrt(area[i]/count), math.Sqrt(length[i]/count)
			t.Logf("%.1f m, %s: area %.5f m², length %.2f mm", step, rule.name, a, 1000*l)
			if i > 0 && (area[i] < area[0] || length[i] < length[0]) {
				t.Errorf("%.1f m: %s is better than Fair", step, rule.name)
			}
			// Marks at 0.9 m must keep a 25 m rim to 4 mm and 40 m² to 0.01 m².
			if i == 0 && (a > 0.01 || l > 0.004) {
				t.Errorf("%.1f m: area off by %v m², length by %v m", step, a, l)
			}
		}
	}
}

func smoothFigures() []func(float64) Point {
	oval := func(a, b, n float64) func(float64) Point {
		return func(u float64) Point {
			s, c := math.Sincos(u)
			return Point{a * math.Copysign(math.Pow(math.Abs(c), 2/n), c), b * math.Copysign(math.Pow(math.Abs(s), 2/n), s)}
		}
	}
	lobed := func(a2, p2, a1, a3 float64) func(float64) Point {
		return func(u float64) Point {
			return Point{X: 3.4 * (1 + a2*math.Cos(2*u+p2) - a1*math.Sin(u) + a3*math.Sin(3*u))}.Turn(u)
		}
	}
	return []func(float64) Point{
		oval(5, 2.5, 2), oval(4, 3, 2), oval(4.5, 2.5, 2.5), // ellipses, a superellipse
		lobed(0.25, 0, 0.15, 0), lobed(0.12, 0.3, 0, 0.06), // a kidney, a free form
	}
}

func samples(f func(float64) Point, n int) []Point {
	out := make([]Point, n)
	for i := range out {
		out[i] = f(2 * math.Pi * float64(i) / float64(n))
	}
	return out
}

func jittered(fine []Point, length, step float64, r *rand.Rand) []Point {
	n := int(math.Round(length / step))
	var want []float64
	for i := range n {
		want = append(want, length*(float64(i)+0.3+0.6*(r.Float64()-0.5))/float64(n))
	}
	var out []Point
	way := 0.0
	for i := 0; len(out) < n; i++ {
		if way >= want[len(out)] {
			out = append(out, fine[i%len(fine)])
		}
		way += fine[i%len(fine)].Dist(fine[(i+1)%len(fine)])
	}
	return out
}

func joined(pts, tangents []Point) Path {
	p := Path{Closed: true}
	for i := range pts {
		j := (i + 1) % len(pts)
		a, b := biarc(pts[i], tangents[i], pts[j], tangents[j])
		p.Segs = append(p.Segs, a, b)
	}
	return p
}

func threePointTangents(pts []Point) []Point {
	n := len(pts)
	out := make([]Point, n)
	for i, q := range pts {
		s := ArcThrough(pts[(i+n-1)%n], q, pts[(i+1)%n])
		_, at := s.Nearest(q)
		out[i] = s.Tangent(at)
	}
	return out
}

func cubicTangents(pts []Point) []Point {
	n := len(pts)
	lower, diag, upper, x, y := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i, b := range pts {
		u, v := b.Sub(pts[(i+n-1)%n]), pts[(i+1)%n].Sub(b)
		h, k := u.Len(), v.Len()
		lower[i], diag[i], upper[i] = 1/h, 2/h+2/k, 1/k
		right := u.Mul(3 / (h * h)).Add(v.Mul(3 / (k * k)))
		x[i], y[i] = right.X, right.Y
	}
	x, y = solveRing(lower, diag, upper, x), solveRing(lower, diag, upper, y)
	out := make([]Point, n)
	for i := range out {
		out[i] = Point{x[i], y[i]}.Unit()
	}
	return out
}
