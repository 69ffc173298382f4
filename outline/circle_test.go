package outline_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"brimline/internal/checks"
	"brimline/plane"
)

// An arc through marks of equal, independent covariance is the circle of least squared
// distances. Outside checks C-01 (W. Gander, G. H. Golub, R. Strebel, BIT 34, 1994) and C-03
// (SciPy Cookbook, least squares circle); the pegs are sharp, so that the frame takes nothing.
func TestPublishedCircles(t *testing.T) {
	for _, id := range []string{"C-01", "C-03"} {
		for _, closed := range []bool{false, true} {
			item := checks.Get(t, id)
			var pts []plane.Point
			var mean plane.Point
			for _, p := range item.Inputs.Rows("points") {
				pts = append(pts, plane.Point{X: p[0], Y: p[1]})
				mean = mean.Add(plane.Point{X: p[0], Y: p[1]}.Mul(1 / float64(len(item.Inputs.Rows("points")))))
			}
			if id == "C-01" { // all on the upper side of their circle
				mean = plane.Point{X: 4.7, Y: 3}
			}
			l := arcThrough(t, pts, mean, closed)
			for _, r := range l {
				item.Compare("geometric_centre", r.centre.X, r.centre.Y)
				item.Compare("geometric_radius", r.radius)
			}
			sum := 0.0
			for _, p := range pts {
				sum += math.Pow(p.Dist(l[0].centre)-l[0].radius, 2)
			}
			item.Compare("geometric_sum_sq", sum)
		}
	}
}

type circle struct {
	centre plane.Point
	radius float64
}

// arcThrough fits one arc run through the points in their order round about, clockwise.
func arcThrough(t *testing.T, pts []plane.Point, about plane.Point, closed bool) []circle {
	s := newScene(closed)
	s.sd[0], s.sd[1] = sharp, sharp
	pts = slices.Clone(pts)
	slices.SortFunc(pts, func(a, b plane.Point) int {
		return cmp.Compare(plane.Bearing(a.Sub(about)), plane.Bearing(b.Sub(about)))
	})
	var names []string
	for i, p := range pts {
		names = append(names, fmt.Sprintf("r%d", i+1))
		s.mark(names[i], p, 1) // about as far as they lie off the circle
	}
	if closed {
		names = append(names, names[0])
	}
	s.run("arc", "", names...)
	l, _ := s.fit(t)
	var out []circle
	for _, r := range l.Runs {
		out = append(out, circle{r.Centre, r.Radius})
	}
	return out
}

// scatter is the sd of the radius of a circle fitted to n marks spread evenly over a sweep: from
// the linear model r = dR + dx·cos φ + dy·sin φ, its normal matrix inverted by hand.
func scatter(n int, sweep, sd float64) float64 {
	var one, c, cc float64 // the sine column is orthogonal to the others by symmetry
	for k := range n {
		f := sweep * (float64(k)/float64(n-1) - 0.5)
		one, c, cc = one+1, c+math.Cos(f), cc+math.Cos(f)*math.Cos(f)
	}
	return sd * math.Sqrt(cc/(one*cc-c*c))
}

// The sd quoted of a radius against the table of the trade handbook, 2.6 (5 mm marks spread
// evenly over the sweep, printed in millimetres), and against the linear model.
func TestRadiusTable(t *testing.T) {
	points := []int{3, 5, 7, 9, 13}
	for _, row := range []struct {
		sweep float64
		mm    []float64
		print float64 // half of the last place that is printed
	}{
		{20, []float64{400, 350, 320, 300, 260}, 5},
		{30, []float64{176, 154, 142, 132, 116}, 0.5},
		{45, []float64{76, 68, 62, 58, 51}, 0.5},
		{60, []float64{42, 37, 35, 32, 28}, 0.5},
		{90, []float64{17, 16, 15, 14, 12}, 0.5},
		{120, []float64{9, 8, 8, 7, 7}, 0.5},
		{180, []float64{4, 3, 3, 3, 3}, 0.5},
	} {
		for i, n := range points {
			l, _ := arcScene(n, row.sweep*deg, 2.4, 0.005).fit(t)
			r := l.Runs[0]
			want := scatter(n, row.sweep*deg, 0.005)
			near(t, fmt.Sprintf("sd of the radius, %g°, %d marks, by the linear model", row.sweep, n), r.RadiusSD, want, 0.002*want)
			near(t, fmt.Sprintf("sd of the radius in mm, %g°, %d marks, as printed", row.sweep, n), 1000*r.RadiusSD, row.mm[i], row.print)
		}
	}
}

// arcScene is one open arc with n marks evenly spread.
func arcScene(n int, sweep, radius, sd float64) *scene {
	s := newScene(false)
	s.sd[0], s.sd[1] = sharp, sharp
	var names []string
	for k := range n {
		names = append(names, fmt.Sprintf("r%d", k+1))
		a := sweep * (float64(k)/float64(n-1) - 0.5)
		s.mark(names[k], plane.Point{X: 3 + radius*math.Cos(a), Y: 4 + radius*math.Sin(a)}, sd)
	}
	s.run("arc", "", names...)
	return s
}
