package basin_test

import (
	"math"
	"testing"

	"brimline/basin"
	"brimline/plane"
)

// TestFindings: what a person should know of the readings, each by its code.
func TestFindings(t *testing.T) {
	at := func(x, y, z float64, name string) basin.Sounding {
		return basin.Sounding{Name: name, At: plane.Point{X: x, Y: y}, Height: basin.Exact(z)}
	}
	for _, x := range []struct {
		code   string
		change func(s *basin.Spec)
	}{
		{"floor-stray", func(s *basin.Spec) { s.Floor = append(s.Floor, at(4, -0.5, -1.5, "f9")) }},
		{"floor-cove", func(s *basin.Spec) {
			s.Coves = []basin.Cove{{Size: 0.2}}
			s.Floor = append(s.Floor, at(4, 0.1, -1.4, "f9"))
		}},
		{"floor-crossing", func(s *basin.Spec) {
			s.Floor = append(s.Floor, at(2, 1, -1.5, "f1"), at(6, 3, -1.5, "f2"), at(2, 3, -1.6, "f3"), at(6, 1, -1.6, "f4"))
			s.Breaks = [][]int{{0, 1}, {2, 3}}
		}},
		{"floor-twice", func(s *basin.Spec) { s.Floor = append(s.Floor, at(2, 1, -1.5, "f1"), at(2, 1, -1.7, "f2")) }},
		{"floor-far", func(s *basin.Spec) {
			s.Walls, s.Floor = nil, append(s.Floor, at(3, 2, -1.5, "f1"), at(5, 2, -1.5, "f2"), at(4, 3, -1.5, "f3"))
		}},
		{"step-sunken", func(s *basin.Spec) {
			s.Ledges = []basin.Ledge{{Name: "seat", Ring: box(2, 0, 4, 0.5), Height: basin.Exact(-1.8)}}
		}},
	} {
		s := level(8, 4, 1.5)
		x.change(&s)
		b, found, err := basin.New(s)
		if err != nil || b == nil || len(found) != 1 || found[0].Code != x.code {
			t.Errorf("%s: findings %v, %v", x.code, found, err)
			continue
		}
		if text := found[0].Text(nil); text == "" || text == x.code {
			t.Errorf("%s has no sentence", x.code)
		}
	}
	s := level(8, 4, 1.5)
	s.Walls = nil
	if b, found, err := basin.New(s); b != nil || err != nil || len(found) != 1 || found[0].Code != "floor-unread" {
		t.Errorf("without depths: %v, %v, %v", b, found, err)
	}
	s.Floor = []basin.Sounding{at(4, -5, -1.5, "f1")}
	if b, found, err := basin.New(s); b != nil || err != nil || len(found) != 2 || found[0].Code != "floor-stray" || found[1].Code != "floor-unread" {
		t.Errorf("with none but a stray one: %v, %v, %v", b, found, err)
	}
}

// TestRefused: what cannot be built is an error.
func TestRefused(t *testing.T) {
	for name, change := range map[string]func(s *basin.Spec){
		"open rim":         func(s *basin.Spec) { s.Rim.Closed = false },
		"no rim":           func(s *basin.Spec) { s.Rim = plane.Path{} },
		"cov not square":   func(s *basin.Spec) { s.Cov = make([]float64, 3) },
		"row beyond":       func(s *basin.Spec) { s.Walls[0].Height.Index = 4 },
		"height no number": func(s *basin.Spec) { s.Walls[0].Height.Z = math.NaN() },
		"break to nothing": func(s *basin.Spec) { s.Breaks = [][]int{{0, 9}} },
	} {
		s := level(8, 4, 1.5)
		change(&s)
		if _, _, err := basin.New(s); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

// TestFloorKeepsDepth: with three rows of soundings 0.5 m from the walls of a sloping floor, every place
// between the outermost and the wall is as deep as the nearest of them.
func TestFloorKeepsDepth(t *testing.T) {
	s := basin.Spec{Rim: rectangle(8, 4)}
	for _, x := range []float64{0.5, 4, 7.5} {
		for _, y := range []float64{0.5, 2, 3.5} {
			s.Floor = append(s.Floor, basin.Sounding{At: plane.Point{X: x, Y: y}, Height: basin.Exact(-1 - 0.1*x)})
		}
	}
	b := build(t, s)
	for _, x := range []struct{ p, from plane.Point }{
		{plane.Point{X: 0.01, Y: 2}, plane.Point{X: 0.5, Y: 2}}, {plane.Point{X: 7.99, Y: 1}, plane.Point{X: 7.5, Y: 1}},
		{plane.Point{X: 7.99, Y: 3.99}, plane.Point{X: 7.5, Y: 3.5}}, {plane.Point{X: 2.25, Y: 0.01}, plane.Point{X: 2.25, Y: 0.5}},
	} {
		z, sd, part, ok := b.At(x.p)
		if !ok || part != basin.Floor || !(sd > 0) {
			t.Errorf("at %v: %v %v %v", x.p, ok, part, sd)
		}
		near(t, "height by the wall", z, -1-0.1*x.from.X, 0.004) // the foot is straight between places 0.4 m apart
	}
	if _, _, _, ok := b.At(plane.Point{X: 8.1, Y: 2}); ok {
		t.Error("there is a floor beyond the wall")
	}
}

// TestRoundRim: half circles at both ends, a floor read in the middle only. Volume by the area.
func TestRoundRim(t *testing.T) {
	rim := plane.Path{Closed: true, Segs: []plane.Segment{
		{A: plane.Point{X: 2}, B: plane.Point{X: 6}}, {A: plane.Point{X: 6}, B: plane.Point{X: 6, Y: 4}, Bulge: 1},
		{A: plane.Point{X: 6, Y: 4}, B: plane.Point{X: 2, Y: 4}}, {A: plane.Point{X: 2, Y: 4}, B: plane.Point{X: 2}, Bulge: 1},
	}}
	s := basin.Spec{Rim: rim}
	for _, p := range []plane.Point{{X: 2, Y: 2}, {X: 5, Y: 1}, {X: 5, Y: 3}} {
		s.Floor = append(s.Floor, basin.Sounding{At: p, Height: basin.Exact(-1.5)})
	}
	w := build(t, s).Water(basin.Exact(0))
	near(t, "area", w.Area, 16+4*math.Pi, 0.01) // chords leave half a millimetre of the arcs
	near(t, "volume", w.Volume, w.Area*1.5, 1e-9)
	near(t, "walls", w.Parts[basin.Walls], (8+4*math.Pi)*1.5, 0.01)
}

// TestStrayIsNotDeepest: a depth that was left out is not the greatest.
func TestStrayIsNotDeepest(t *testing.T) {
	s := level(8, 4, 1.5)
	s.Floor = []basin.Sounding{{Name: "f1", At: plane.Point{X: 4, Y: -1}, Height: basin.Exact(-5)}, {Name: "f2", At: plane.Point{X: 4, Y: 2}, Height: basin.Exact(-1.6)}}
	w := build(t, s).Water(basin.Exact(0))
	near(t, "greatest depth", w.Deepest.Depth, 1.6, 1e-12)
	if w.Deepest.Name != "f2" {
		t.Errorf("at %q", w.Deepest.Name)
	}
}

// TestManySoundings: a pool read by an instrument, two thousand depths, comes out within a few seconds.
func TestManySoundings(t *testing.T) {
	s := level(12, 6, 1.5)
	for i := range 50 {
		for j := range 40 {
			p := plane.Point{X: 0.2 + 11.6*(float64(i)+0.3*math.Sin(float64(7*j)))/50, Y: 0.2 + 5.6*(float64(j)+0.3*math.Cos(float64(5*i)))/40}
			s.Floor = append(s.Floor, basin.Sounding{At: p, Height: basin.Exact(-1.5 - 0.01*math.Sin(p.X)*math.Sin(p.Y))})
		}
	}
	w := build(t, s).Water(basin.Exact(0))
	// ∫∫ sin x sin y over 12 by 6, a hundredth of it, beside 12·6·1.5.
	near(t, "volume", w.Volume, 108+0.01*(1-math.Cos(12))*(1-math.Cos(6)), 2e-3)
}
