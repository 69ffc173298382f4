package simulate_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// fine is the outline as a polygon of chords of about 1 mm on arcs.
func fine(p plane.Path, chord float64) []plane.Point {
	var out []plane.Point
	for _, s := range p.Segs {
		n := 1
		if s.Bulge != 0 {
			n += int(s.Length() / chord)
		}
		for i := range n {
			out = append(out, s.At(float64(i)/float64(n)))
		}
	}
	return out
}

func polygon(pts []plane.Point) (area, length float64) {
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		area += (p.X - pts[0].X) * (q.Y - pts[0].Y) / 2
		area -= (q.X - pts[0].X) * (p.Y - pts[0].Y) / 2
		length += distance(p, q)
	}
	return area, length
}

func TestAreaAndPerimeterOfAFinePolygon(t *testing.T) {
	every(3, func(c simulate.Case) {
		area, length := polygon(fine(c.Outline, 0.001))
		// Chords of 1 mm on radii of 0.25 m and more miss 7e-7 of the length and 1e-6 m² at most.
		if math.Abs(area-c.Area) > 1e-5 || math.Abs(length-c.Perimeter) > 3e-5 {
			t.Errorf("%s: area %v, polygon %v; perimeter %v, polygon %v", title(c), c.Area, area, c.Perimeter, length)
		}
	})
}

func TestMarksLieOnTheOutline(t *testing.T) {
	every(3, func(c simulate.Case) {
		for _, m := range c.Order {
			if _, _, q := c.Outline.Nearest(c.Truth[m]); distance(q, c.Truth[m]) > 1e-9 {
				t.Fatalf("%s: %s lies %v off the rim", title(c), m, distance(q, c.Truth[m]))
			}
		}
		for _, p := range c.Pegs {
			if d := c.Outline.Distance(c.Truth[p]); d < 0.2 {
				t.Fatalf("%s: peg %s stands %v outside the rim", title(c), p, d)
			}
		}
	})
}

func TestOutlinesArePools(t *testing.T) {
	for _, s := range simulate.Shapes {
		for seed := range uint64(40) {
			c := simulate.Pool(seed, s, simulate.Methods[0], simulate.Options{})
			pts := fine(c.Outline, 0.15)
			long := 0.0
			for i, p := range pts {
				for k := i + 2; k < len(pts); k++ {
					long = math.Max(long, distance(p, pts[k]))
					if (k+1)%len(pts) != i && cross(p, pts[i+1], pts[k], pts[(k+1)%len(pts)]) {
						t.Fatalf("%s: the rim crosses itself", title(c))
					}
				}
			}
			if long < 5.5 || long > 15.5 {
				t.Errorf("%s: %v long", title(c), long)
			}
			for _, g := range c.Outline.Segs {
				if g.Bulge != 0 && math.Abs(g.Radius()) < 0.25 {
					t.Errorf("%s: radius %v", title(c), g.Radius())
				}
			}
		}
	}
}

func cross(a, b, c, d plane.Point) bool {
	side := func(p, q, r plane.Point) bool { return (q.X-p.X)*(r.Y-p.Y) > (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
}

func TestTangentJointsAreSmooth(t *testing.T) {
	for _, s := range simulate.Shapes {
		c := simulate.Pool(5, s, simulate.Methods[0], simulate.Options{})
		p := c.Outline.Reverse() // the book's direction
		tangent, kinks := 0, 0
		for _, r := range c.Rim.Runs {
			for i, g := range p.Segs {
				if distance(g.A, c.Truth[r.Marks[0]]) > 1e-9 {
					continue
				}
				before := p.Segs[(i+len(p.Segs)-1)%len(p.Segs)]
				turn := math.Abs(plane.Between(before.Tangent(1), g.Tangent(0)))
				switch {
				case r.Joint == "tangent" && turn < 1e-5:
					tangent++
				case r.Joint == "kink" && turn > 0.2:
					kinks++
				default:
					t.Errorf("%s: joint at %s called %s turns %v", title(c), r.Marks[0], r.Joint, turn)
				}
			}
		}
		if tangent+kinks != len(c.Rim.Runs) {
			t.Errorf("%s: %d joints of %d found", title(c), tangent+kinks, len(c.Rim.Runs))
		}
	}
}

// Closed formulas of each family, computed to eight places outside this program.
func TestKnownFigures(t *testing.T) {
	for _, x := range []struct {
		name            string
		figure          simulate.Figure
		perimeter, area float64
	}{
		// 2(L+W) − (8 − 2π)r and LW − (4 − π)r²
		{"rounded rectangle 8 × 4, r 0.6", simulate.Rounded(simulate.Box4(8, 4, 0), []float64{.6, .6, .6, .6}), 22.96991118, 31.69097336},
		{"stadium 10 × 5", simulate.Stadium(10, 5), 25.70796327, 44.63495408},
		{"oval 9.6 × 5.1, ends 2.2", simulate.Oval(9.6, 5.1, 2.2), 24.34819685, 40.79616353},
		{"kidney 2.4, 1.8, 5.0, 6.1, 1.5", simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 24.17693144, 36.73126037},
		// chord 3.4, rise 1.25: arc 4.51677785, segment 3.11949068
		{"body 8.5 × 5, shoulders 0.8", simulate.Roman(8.5, 5, 0.8, 1.25, 1.25), 2*8.5 + 4*0.8 + 2*4.51677785, 8.5*5 + 2*3.11949068},
		// six straights less 5·(2 − π/2)·0.3 and 1·(2 − π/2)·0.6; corners less 5·(1 − π/4)·0.3², and plus (1 − π/4)·0.6²
		{"L 12 × 4 + leg 5 × 3.5", simulate.Ell(12, 4, 5, 7.5, 0.3, 0.6), 2*(12+7.5) - (5*0.3+0.6)*(2-math.Pi/2), 12*4 + 5*3.5 - (5*0.09-0.36)*(1-math.Pi/4)},
	} {
		p := x.figure.Path()
		if err := p.Validate(); err != nil {
			t.Errorf("%s: %v", x.name, err)
		}
		if math.Abs(p.Length()-x.perimeter) > 2e-8 || math.Abs(p.Area()-x.area) > 2e-8 {
			t.Errorf("%s: P %.8f, A %.8f; want %.8f, %.8f", x.name, p.Length(), p.Area(), x.perimeter, x.area)
		}
	}
	if r := simulate.SideRadius(9.6, 5.1, 2.2); math.Abs(r-12.03214286) > 1e-8 {
		t.Errorf("side radius %v", r)
	}
}

// A freeform outline against its own polar formula would repeat the code; its smoothness is the
// law instead: the radius changes by little from one short arc to the next.
func TestFreeformIsFair(t *testing.T) {
	for seed := range uint64(30) {
		c := simulate.Pool(seed, simulate.Shapes[6], simulate.Methods[0], simulate.Options{})
		segs := c.Outline.Segs
		for i, s := range segs {
			next := segs[(i+1)%len(segs)]
			if d := math.Abs(s.Curvature() - next.Curvature()); d > 0.05 {
				t.Fatalf("%s: curvature jumps by %v at arc %d", title(c), d, i)
			}
			if turn := math.Abs(plane.Between(s.Tangent(1), next.Tangent(0))); turn > 1e-5 {
				t.Fatalf("%s: a kink of %v at arc %d", title(c), turn, i)
			}
		}
	}
}
