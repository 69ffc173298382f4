package basin_test

import (
	"math"
	"testing"

	"brimline/basin"
	"brimline/plane"
)

// TestLeanBetweenStations: a wall that leans out by 30 mm per metre at one station and is plumb at the
// next has, along the stretch, a wedge of half of that.
func TestLeanBetweenStations(t *testing.T) {
	const l, w, depth, lean = 8.0, 4.0, 1.5, 0.03
	s := level(l, w, depth)
	face := func(at, lean float64) basin.Profile {
		return basin.Profile{S: at, Points: []basin.Out{{Down: 0.5, Outward: 0.5 * lean}, {Down: 1, Outward: lean}}}
	}
	s.Profiles = []basin.Profile{face(1, lean), face(7, 0), face(7.5, 0), face(2*l+2*w-0.5, 0), face(0.5, 0)}
	water, _ := build(t, s).Fill(basin.Exact(0))
	wedges := (6 + 0.5) / 2 * lean * depth * depth / 2 // both stretches beside the station, each by half
	near(t, "volume", water.Volume, l*w*depth+wedges, 2e-3)
}

// TestEdgeProfile: the wall begins at a track 32 mm behind the nose and is plumb below it.
func TestEdgeProfile(t *testing.T) {
	const l, w, depth, back = 8.0, 4.0, 1.5, 0.032
	s := level(l, w, depth)
	s.Profiles = []basin.Profile{{S: 1, Points: []basin.Out{{Down: 0.048, Outward: back, Edge: true}}}}
	b := build(t, s)
	wide := (l + 2*back) * (w + 2*back)
	near(t, "water below the track", b.Water(basin.Exact(-0.2)).Volume, wide*(depth-0.2), 1e-9)
	near(t, "its surface", b.Water(basin.Exact(-0.2)).Area, wide, 1e-9)
}

// TestUnreadLean: plumb walls that nobody read still have their lean to answer for, those that were
// read have not.
func TestUnreadLean(t *testing.T) {
	s := level(8, 4, 1.5)
	first := build(t, s).Water(basin.Exact(0)).VolumeTrust
	unread := first.Cause[basin.WallReadings]
	want := 0.0 // by each side: lean × length × depth²/2
	for _, side := range []float64{8, 4, 8, 4} {
		want += math.Pow(0.004*side*1.5*1.5/2, 2)
	}
	near(t, "variance", unread, want, 0.01*want)
	for at := 0.5; at < 24; at++ {
		s.Profiles = append(s.Profiles, basin.Profile{S: at, Points: []basin.Out{{Down: 1.2, SD: 0.001}}})
	}
	read := build(t, s).Water(basin.Exact(0)).VolumeTrust
	if both := read.Cause[basin.WallReadings] + read.Cause[basin.Spacing] - first.Cause[basin.Spacing]; !(both < unread/5) {
		t.Errorf("%g read, %g unread", both, unread)
	}
}

// TestLawsOfPlace: shifted, turned, mirrored and run the other way, and with rim and soundings in
// another order, the pool holds the same.
func TestLawsOfPlace(t *testing.T) {
	v := everything()
	v.z[0], v.z[1], v.z[2], v.z[3] = 0, 0, 0, 0
	first := build(t, v.spec()).Water(v.level())
	same := func(what string, s basin.Spec) {
		w := build(t, s).Water(v.level())
		// Four points on one circle may be joined either way.
		near(t, what+": volume", w.Volume, first.Volume, 2e-5*first.Volume)
		near(t, what+": wetted", w.Wetted, first.Wetted, 2e-5*first.Wetted)
		near(t, what+": sd", w.VolumeTrust.SD, first.VolumeTrust.SD, 1e-3*first.VolumeTrust.SD)
	}
	m := plane.Turned(0.7, plane.Point{X: 31, Y: -12})
	moved := v.spec()
	moved.Rim = moved.Rim.Move(m)
	for i := range moved.Floor {
		moved.Floor[i].At = m.Apply(moved.Floor[i].At)
	}
	moved.Steps[0].Treads[0].Ring = moved.Steps[0].Treads[0].Ring.Move(m)
	same("moved", moved)

	back := v.spec()
	whole := back.Rim.Length()
	back.Rim = back.Rim.Reverse()
	for i := range back.Levels {
		back.Levels[i].S = whole - back.Levels[i].S
	}
	for i := range back.Walls {
		back.Walls[i].S = whole - back.Walls[i].S
	}
	for i := range back.Profiles {
		back.Profiles[i].S = whole - back.Profiles[i].S
	}
	c := &back.Coves[0]
	c.From, c.To = whole-c.To, whole-c.From
	same("clockwise", back)

	other := v.spec()
	n := len(other.Floor)
	for i := 2; i < n; i++ {
		other.Floor[i] = v.spec().Floor[n+1-i]
	}
	same("in another order", other)
}
