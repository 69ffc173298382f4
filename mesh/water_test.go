package mesh_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/mesh"
)

// hopper is a pool with a flat shallow end, a slope, a pad and a back slope along its length, and
// side slopes beside the pad that run out to nothing at the break and at the back wall.
type hopper struct {
	flat, slope, pad, back float64 // along
	side, padWide          float64 // across: side + padWide + side
	shallow, deep          float64
}

func (h hopper) size() (length, width float64) {
	return h.flat + h.slope + h.pad + h.back, h.padWide + 2*h.side
}

// volume is by Simpson's rule on each part, exact because every section is a quadratic in the run.
func (h hopper) volume() float64 {
	l, w := h.size()
	d := h.deep - h.shallow
	section := func(t float64) float64 { return d * t * (w - h.side*t) }
	wedge := (section(0) + 4*section(0.5) + section(1)) / 6
	return l*w*h.shallow + (h.slope+h.back)*wedge + h.pad*section(1)
}

// depth is the depth at a place: each facet's plane rises from the pad, and the shallowest rules.
func (h hopper) depth(x, y float64) float64 {
	l, w := h.size()
	t := math.Min((x-h.flat)/h.slope, (l-x)/h.back)
	t = math.Min(t, math.Min(y/h.side, (w-y)/h.side))
	return h.shallow + (h.deep-h.shallow)*math.Max(0, math.Min(1, t))
}

// points are its ten corners, with ring and breaks.
func (h hopper) points() (points []mesh.Point3, ring []int, breaks [][]int) {
	l, w := h.size()
	toe := h.flat + h.slope
	for _, p := range [][2]float64{
		{0, 0}, {h.flat, 0}, {l, 0}, {l, w}, {h.flat, w}, {0, w},
		{toe, h.side}, {toe + h.pad, h.side}, {toe + h.pad, w - h.side}, {toe, w - h.side},
	} {
		points = append(points, mesh.Point3{X: p[0], Y: p[1], Z: -h.depth(p[0], p[1])})
	}
	return points, span(0, 6), [][]int{{1, 4}, {6, 7, 8, 9, 6}, {1, 6}, {4, 9}, {2, 7}, {3, 8}}
}

// Two pools whose volumes were worked out part by part, as prisms and wedges: common practice, no source.
var (
	first  = hopper{3.6, 2.7, 2.4, 1.3, 1.3, 2.4, 1.0, 2.4}
	second = hopper{3.66, 3.05, 2.74, 1.52, 1.22, 3.05, 1.07, 2.29}
)

func TestHoppers(t *testing.T) {
	for _, c := range []struct {
		hopper hopper
		want   float64
	}{{first, 74.00533}, {second, 91.75197}} {
		points, ring, breaks := c.hopper.points()
		s, issues := mesh.Triangulate(points, breaks, ring, nil)
		if len(issues) > 0 {
			t.Errorf("issues %v", issues)
		}
		demand(t, s)
		near(t, "volume", s.Under(0).Volume, c.want, 5e-6)
		near(t, "volume by parts", s.Under(0).Volume, c.hopper.volume(), 1e-12)
	}
	l, w := first.size()
	near(t, "the usual shortcut", l*w*(first.shallow+first.deep)/2, 85.0, 1e-9)
}

// TestPartsOfTheHopper: the slope lengths and the true area of the floor, facet by facet.
func TestPartsOfTheHopper(t *testing.T) {
	points, ring, breaks := first.points()
	s, _ := mesh.Triangulate(points, breaks, ring, nil)
	main, side := math.Hypot(2.7, 1.4)/2.7, math.Hypot(1.3, 1.4)/1.3
	facets := 3.6*5 + 2.4*2.4 + 2.7*(5+2.4)/2*main + 1.3*(5+2.4)/2*side + 2*side*1.3*(2.4+6.4)/2
	plan, slope := s.Areas()
	near(t, "plan", plan, 50, 1e-12)
	near(t, "slope", slope, facets, 1e-12)
	steep, ok := s.Steepest(0)
	near(t, "steepest", steep.Rise, 1.4/1.3, 1e-12)
	if !ok || first.depth(steep.At.X, steep.At.Y) == first.shallow {
		t.Errorf("steepest at %v", steep.At)
	}
}

// TestVolumeAtEverySize: hoppers with 1e3, 1e5 and 1e6 soundings on them against the exact volume, and
// the same surfaces against a fine midpoint rule over the depth itself.
func TestVolumeAtEverySize(t *testing.T) {
	fine := 0.0
	l, w := first.size()
	const nx, ny = 4000, 2000
	for i := range nx {
		for j := range ny {
			fine += first.depth((float64(i)+0.5)*l/nx, (float64(j)+0.5)*w/ny)
		}
	}
	fine *= l * w / nx / ny
	for _, n := range []int{1e3, 1e5, 1e6} {
		r := rand.New(rand.NewPCG(uint64(n), 3))
		points, ring, breaks := first.points()
		for len(points) < n {
			x, y := l*r.Float64(), w*r.Float64()
			points = append(points, mesh.Point3{X: x, Y: y, Z: -first.depth(x, y)})
		}
		s, issues := mesh.Triangulate(points, breaks, ring, nil)
		if len(issues) > 0 {
			t.Errorf("%d points: issues %v", n, issues)
		}
		v := s.Under(0).Volume
		near(t, fmt.Sprint(n, " points, by parts"), v, first.volume(), 1e-10)
		near(t, fmt.Sprint(n, " points, fine integration"), v, fine, 1e-6*fine)
		if got, want := len(s.Triangles), 2*n-2-len(ring); got != want {
			t.Errorf("%d points: %d triangles, want %d", n, got, want)
		}
	}
}

// TestVolumeAdditive: two parts along a shared break hold what the whole holds.
func TestVolumeAdditive(t *testing.T) {
	points, ring, breaks := second.points()
	whole, _ := mesh.Triangulate(points, breaks, ring, nil)
	left, _ := mesh.Triangulate(points, breaks, []int{0, 1, 4, 5}, nil)
	right, _ := mesh.Triangulate(points, breaks, []int{1, 2, 3, 4}, nil)
	for _, level := range []float64{0, -1, -1.07, -1.5, -2} {
		w, a, b := whole.Under(level), left.Under(level), right.Under(level)
		near(t, "volume", a.Volume+b.Volume, w.Volume, 1e-12)
		near(t, "plan", a.Plan+b.Plan, w.Plan, 1e-12)
		near(t, "wetted", a.Wetted+b.Wetted, w.Wetted, 1e-12)
	}
}
