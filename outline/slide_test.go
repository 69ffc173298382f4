package outline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/plane"
)

// byEye is a straight of 4 m, an arc of radius 2 and 90°, and a straight, whose joints somebody
// marked by eye: by so much too early and too late along the edge.
func byEye(early, late float64) *scene {
	s := newScene(false)
	on := func(name string, at float64) { // at metres after the first tangent point
		p := plane.Point{X: 4 + at}
		if turn := at / 2; at > 0 && turn < math.Pi/2 {
			p = plane.Point{X: 4, Y: 2}.Add(plane.Point{Y: -2}.Turn(turn))
		} else if at > 0 {
			p = plane.Point{X: 6, Y: 2 + at - math.Pi}
		}
		s.mark(name, p, usual)
	}
	for i, at := range []float64{-4, -2, -early, 0.6, 1.2, 1.8, 2.4, math.Pi + late, 5, 7} {
		on(string(rune('a'+i)), at)
	}
	s.run("straight", "", "a", "b", "c")
	s.run("arc", "tangent", "c", "d", "e", "f", "g", "h")
	s.run("straight", "tangent", "h", "i", "j")
	return s
}

// Where the marks of joints are by eye along the edge, the true tangent points are found, and the
// arc's radius.
func TestSlideFindsTangentPoint(t *testing.T) {
	stuck, _ := byEye(0.15, -0.2).fit(t)
	s := byEye(0.15, -0.2)
	s.runs[1].Slide = 0.2
	l, found := s.fit(t)
	if codes(found) != "" {
		t.Fatalf("found %s", codes(found))
	}
	near(t, "radius", l.Runs[1].Radius, 2, 1e-3)
	for i, want := range []plane.Point{{X: 4}, {X: 6, Y: 2}} {
		near(t, "off the true tangent point", l.Path.Segs[i+1].A.Dist(want), 0, 0.03)
	}
	if off := math.Abs(stuck.Runs[1].Radius - 2); off < 0.02 {
		t.Errorf("held at its marks the radius is off by %.4f only", off)
	}
}

// With joints marked by eye radius, sagitta and length lie within 1.96 sd as often as they say.
func TestSlideCoverage(t *testing.T) {
	const slide = 0.15
	r := rand.New(rand.NewPCG(33, 8))
	n := draws()
	var in [3]int
	for range n {
		s := byEye(slide*r.NormFloat64(), slide*r.NormFloat64())
		s.runs[1].Slide = slide
		l, _ := s.noisy(r).fit(t)
		arc := l.Runs[1]
		for k, x := range [][2]float64{{arc.Radius - 2, arc.RadiusSD}, {arc.Sagitta - 2*(1-math.Sqrt(0.5)), arc.SagittaSD}, {l.Length - 4 - 7, l.LengthSD}} {
			if math.Abs(x[0]) <= 1.96*x[1] {
				in[k]++
			}
		}
	}
	t.Logf("radius %d, sagitta %d, length %d of %d", in[0], in[1], in[2], n)
	for k, what := range []string{"radius", "sagitta", "length"} {
		near(t, what+": share within 1.96 sd", float64(in[k])/float64(n), 0.95, 4.5*math.Sqrt(0.95*0.05/float64(n)))
	}
}

// The rise of a short piece of a flat arc is good where its radius is not.
func TestSagitta(t *testing.T) {
	l, _ := arcScene(5, 20*deg, 2.4, usual).fit(t)
	arc := l.Runs[0]
	near(t, "sagitta", arc.Sagitta, 2.4*(1-math.Cos(10*deg)), fine)
	if share := arc.RadiusSD / arc.Radius; share < 0.05 || arc.SagittaSD > 0.006 {
		t.Errorf("radius to %.1f %%, sagitta to %.1f mm", 100*share, 1e3*arc.SagittaSD)
	}
}
