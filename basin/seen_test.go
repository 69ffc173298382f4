package basin_test

import (
	"math"
	"testing"

	"brimline/basin"
	"brimline/mesh"
)

// The faces of the hopper hold its volume: each with the level plane over it (the divergence theorem),
// and they sum to the wetted area by part.
func TestFacesHoldTheVolume(t *testing.T) {
	h := hopper{3.6, 2.7, 2.4, 1.3, 1.3, 2.4, 1.0, 2.4}
	s := h.spec(true)
	s.Levels = []basin.Level{{S: 0, Height: basin.Exact(0)}}
	b := build(t, s)
	volume, wetted := 0.0, [5]float64{}
	for _, f := range b.Faces() {
		n := normal(f.At)
		volume -= n[2] * (f.At[0].Z + f.At[1].Z + f.At[2].Z) / 3
		wetted[f.Part] += math.Sqrt(n[0]*n[0] + n[1]*n[1] + n[2]*n[2])
	}
	w := b.Water(basin.Exact(0))
	near(t, "volume of the faces", volume, w.Volume, 1e-9)
	for p, area := range wetted {
		near(t, basin.Part(p).String(), area, w.Parts[p], 1e-9)
	}
	if z, ok := b.RimAt(s.Rim.Segs[1].A); !ok || z != 0 {
		t.Errorf("the rim at %g, %v", z, ok)
	}
}

// normal is half the cross product of two sides.
func normal(at [3]mesh.Point3) [3]float64 {
	u := [3]float64{at[1].X - at[0].X, at[1].Y - at[0].Y, at[1].Z - at[0].Z}
	v := [3]float64{at[2].X - at[0].X, at[2].Y - at[0].Y, at[2].Z - at[0].Z}
	return [3]float64{(u[1]*v[2] - u[2]*v[1]) / 2, (u[2]*v[0] - u[0]*v[2]) / 2, (u[0]*v[1] - u[1]*v[0]) / 2}
}

// What was read and stated comes back: depths, breaks with their heights, tops.
func TestSeenAgain(t *testing.T) {
	h := hopper{3.6, 2.7, 2.4, 1.3, 1.3, 2.4, 1.0, 2.4}
	s := h.spec(false)
	s.Ledges = []basin.Ledge{{Name: "seat", Ring: box(0, 0, 1, 0.5), Height: basin.Exact(-0.45)}}
	b := build(t, s)
	deepest := 0.0
	for _, d := range b.Soundings(basin.Exact(0.1)) {
		deepest = math.Max(deepest, d.Depth)
	}
	near(t, "deepest sounding", deepest, 2.5, 1e-12)
	lines := b.BreakLines()
	if len(lines) != 2 || len(lines[0]) != 2 || len(lines[1]) < 4 {
		t.Fatalf("break lines %v", lines)
	}
	near(t, "height of the pad", lines[1][0].Z, -2.4, 1e-12)
	if tops := b.Tops(); len(tops) != 1 || tops[0].Name != "seat" || tops[0].Part != basin.Ledges || tops[0].Height != -0.45 {
		t.Errorf("tops %v", tops)
	}
	near(t, "rim", b.Outline().Length(), s.Rim.Length(), 0)
}
