package basin_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/basin"
	"brimline/plane"
)

// survey is a pool with a bit of everything, by what may be wrong in it: heights, the corner between
// the first and the second side, and the points of the profiles.
type survey struct {
	z      []float64
	corner plane.Point
	outs   []float64
}

func everything() survey {
	return survey{
		z: []float64{0.001, -0.002, 0.003, 0.001, // rim
			-1.2, -1.22, -1.21, -1.19, -1.8, -1.85, -2.2, -2.25, -1.5, // floor
			-2.3, -2.32, -0.6, -0.12}, // wall feet, tread, water
		corner: plane.Point{X: 9, Y: 0.1}, outs: []float64{0.004, 0.010, -0.020, 0.015},
	}
}

// spec is the survey read without error; row i of its covariance is height i.
func (v survey) spec() basin.Spec {
	corners := []plane.Point{{}, v.corner, {X: 9.31, Y: 4.13}, {X: -0.22, Y: 3.92}}
	s := basin.Spec{Rim: plane.Polyline(corners, true), Cov: make([]float64, len(v.z)*len(v.z))}
	at := func(side int, t float64) float64 {
		sum := 0.0
		for _, seg := range s.Rim.Segs[:side] {
			sum += seg.Length()
		}
		return sum + t*s.Rim.Segs[side].Length()
	}
	h := func(i int) basin.Height { return basin.Height{Z: v.z[i], Index: i} }
	for k := range 4 {
		s.Levels = append(s.Levels, basin.Level{S: at(k, 0), Height: h(k)})
	}
	for k, p := range []plane.Point{{X: 3, Y: 0.1}, {X: 3, Y: 3.9}, {X: 1.1, Y: 0.9}, {X: 1.2, Y: 3.1}, {X: 6, Y: 1.2}, {X: 6.3, Y: 2.9}, {X: 8.4, Y: 0.7}, {X: 8.3, Y: 3.2}, {X: 4.6, Y: 2.1}} {
		s.Floor = append(s.Floor, basin.Sounding{At: p, Height: h(4 + k)})
	}
	s.Breaks = [][]int{{0, 1}}
	s.Walls = []basin.Foot{{S: at(1, 0), Height: h(13)}, {S: at(2, 0), Height: h(14)}}
	out := func(i int, down float64) basin.Out { return basin.Out{Down: down, Outward: v.outs[i]} }
	s.Profiles = []basin.Profile{
		{S: at(0, 0.4), Points: []basin.Out{out(0, 0.3), out(1, 0.9)}}, {S: at(1, 0.5), Points: []basin.Out{out(2, 0.9)}},
		{S: at(2, 0.5), Points: []basin.Out{out(3, 0.9)}},
	}
	s.Coves = []basin.Cove{{From: at(1, 0.1), To: at(1, 0.9), Round: true, Size: 0.15}}
	s.Steps = []basin.Step{{Name: "entry", Treads: []basin.Tread{{Ring: box(-0.1, 1, 0.6, 3), Height: h(15)}}}}
	return s
}

// level is the water at its own height, which is the last.
func (v survey) level() basin.Height {
	return basin.Height{Z: v.z[len(v.z)-1] - 0.05, Index: len(v.z) - 1}
}

// TestSlopes: how volume and wetted area change with each height, the corner and each profile point, as
// the standard deviation says of one that alone has an error of 1, is what building the pool anew finds.
func TestSlopes(t *testing.T) {
	const step = 1e-5
	measure := func(change func(v *survey, by float64), by float64) [2]float64 {
		v := everything()
		change(&v, by)
		w := build(t, v.spec()).Water(v.level())
		return [2]float64{w.Volume, w.Wetted}
	}
	compare := func(what string, rel float64, change func(v *survey, by float64), alone func(s *basin.Spec)) {
		up, down := measure(change, step), measure(change, -step)
		v := everything()
		s := v.spec()
		alone(&s)
		w := build(t, s).Water(v.level())
		for k, got := range []basin.Trust{w.VolumeTrust, w.WettedTrust} {
			want := math.Abs(up[k]-down[k]) / (2 * step)
			sd := math.Sqrt(math.Max(0, got.SD*got.SD-got.Cause[basin.Spacing]))
			if !(math.Abs(sd-want) <= rel*want+0.005) {
				t.Errorf("%s, %s: slope %.4f, found %.4f", what, []string{"volume", "wetted"}[k], sd, want)
			}
		}
	}
	n := len(everything().z)
	for i := range n {
		compare(fmt.Sprint("height ", i), 0.003, func(v *survey, by float64) { v.z[i] += by }, func(s *basin.Spec) { s.Cov[i*n+i] = 1 })
	}
	// When a wall moves, the toe of its cove comes to a place where the floor is deeper or not so deep,
	// which the slopes leave out.
	for k := range everything().outs {
		compare(fmt.Sprint("profile ", k), 0.015, func(v *survey, by float64) { v.outs[k] += by }, func(s *basin.Spec) {
			for i, j := range [][2]int{{0, 0}, {0, 1}, {1, 0}, {2, 0}} {
				if i == k {
					s.Profiles[j[0]].Points[j[1]].SD = 1
				}
			}
		})
	}
	for k, way := range []plane.Point{{X: 1}, {Y: 1}} {
		// Breaks end where they were read, the slopes let their ends slide along the wall with it.
		compare(fmt.Sprint("corner ", k), 0.06, func(v *survey, by float64) { v.corner = v.corner.Add(way.Mul(by)) }, func(s *basin.Spec) {
			before, after := s.Rim.Segs[0].Length(), s.Rim.Segs[1].Length()
			s.Outline = func(pushes []basin.Push) float64 {
				sum := 0.0
				for _, p := range pushes {
					sum += p.By.Dot(way) * math.Max(0, math.Min(p.S/before, 1-(p.S-before)/after))
				}
				return sum * sum
			}
		})
	}
}

// TestCausesCancel: depths below the surface that is asked for have its error in common, so that the
// volume has none of it; at a level of its own the volume has all of it.
func TestCausesCancel(t *testing.T) {
	s := level(8, 4, 1.5)
	n := len(s.Walls)
	for i := range s.Walls {
		s.Walls[i].Height.Index = i + 1
	}
	s.Cov = make([]float64, (n+1)*(n+1))
	for i := range s.Cov {
		s.Cov[i] = 1e-4 // 10 mm
	}
	b := build(t, s)
	at := b.Water(basin.Height{Z: -0.1, Index: 0}).VolumeTrust
	for c, v := range at.Cause {
		if basin.Cause(c) == basin.WaterReference || basin.Cause(c) == basin.FloorReadings {
			near(t, basin.Causes[c], v, 0, 1e-12)
		}
	}
	own := b.Water(basin.Exact(-0.1)).VolumeTrust
	near(t, "floor readings", math.Sqrt(own.Cause[basin.FloorReadings]), 32*0.010, 1e-9)
	sum := 0.0
	for _, v := range own.Cause {
		sum += v
	}
	near(t, "sum of the causes", sum, own.SD*own.SD, 1e-15)
}

// TestSamplingFalls: with soundings twice as near, what their spacing leaves open becomes less, and a
// rougher floor leaves more.
func TestSamplingFalls(t *testing.T) {
	sampling := func(rows int, rough float64) float64 {
		s := basin.Spec{Rim: rectangle(8, 4), Cov: []float64{2.5e-5}}
		for i := range 2 * rows {
			for j := range rows {
				p := plane.Point{X: 0.2 + 7.6*float64(i)/float64(2*rows-1), Y: 0.2 + 3.6*float64(j)/float64(rows-1)}
				z := -1.5 + rough*math.Sin(2.1*p.X+0.4)*math.Cos(2.3*p.Y)
				s.Floor = append(s.Floor, basin.Sounding{At: p, Height: basin.Exact(z)})
			}
		}
		return build(t, s).Water(basin.Exact(0)).VolumeTrust.Cause[basin.Spacing]
	}
	if few, many := sampling(3, 0.01), sampling(6, 0.01); !(many < few/4) {
		t.Errorf("%g with few soundings, %g with many", few, many)
	}
	if even, rough := sampling(4, 0.002), sampling(4, 0.03); !(rough > 10*even) {
		t.Errorf("%g on an even floor, %g on a rough one", even, rough)
	}
}
