package simulate_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// Marks tied to pegs at bearings chosen by hand. In line with two pegs a mark with four tapes
// keeps, of the worst two lost, two that cannot fix it.
func TestSpareByHand(t *testing.T) {
	for _, k := range []struct {
		angles []float64 // of the tapes, degrees
		want   int
	}{
		{[]float64{0, 90}, 0},
		{[]float64{0, 20}, -1},
		{[]float64{0, 175}, -1},
		{[]float64{0, 60, 120}, 1},
		{[]float64{0, 45, 90, 135}, 2},
		{[]float64{0, 180, 60, 120}, 1},
		{[]float64{10, 200, 60, 250}, 1},
		{[]float64{0, 40, 80, 120, 160}, 2},
		{[]float64{0, 90, 0, 90}, 1},
	} {
		if got := around(k.angles).Spare("r1"); got != k.want {
			t.Errorf("tapes at %v: %d to spare, want %d", k.angles, got, k.want)
		}
	}
	c := around([]float64{0, 5})
	c.Readings = append(c.Readings, simulate.Reading{Kind: "seen", Marks: []string{"r1"}})
	if got := c.Spare("r1"); got != 0 {
		t.Errorf("two tapes in line and an instrument's point: %d to spare, want 0", got)
	}
}

// around is one mark with a tape of 5 m at each angle.
func around(angles []float64) simulate.Case {
	c := simulate.Case{Truth: map[string]plane.Point{"r1": {X: 1, Y: 2}}, Order: []string{"r1"}}
	for i, a := range angles {
		peg := string(rune('A' + i))
		c.Pegs = append(c.Pegs, peg)
		c.Truth[peg] = c.Truth["r1"].Add(plane.Point{X: 5}.Turn(a * math.Pi / 180))
		c.Readings = append(c.Readings, simulate.Reading{Kind: "tie", Marks: []string{peg, "r1"}})
	}
	return c
}

// By leaving out every two readings in turn, of pools as they are drawn.
func TestSpareAgainstLeavingOut(t *testing.T) {
	found := map[bool]int{}
	for _, p := range plans[:2] {
		for seed := range uint64(4) {
			c := simulate.Visit(seed+1, simulate.Shapes[seed], p)
			for _, m := range c.Order {
				want := survives(c, m)
				found[want]++
				if got := c.Spare(m) >= 2; got != want {
					t.Errorf("%s: %s can lose any two: %v, by leaving out %v", title(c), m, got, want)
				}
			}
		}
	}
	if found[true] < 20 || found[false] < 20 {
		t.Errorf("asked too little: %v", found)
	}
}

// survives says that without any two of its readings two of the rest cross at the mark at 30° or
// more.
func survives(c simulate.Case, m string) bool {
	var rays []plane.Point
	for _, x := range c.Readings {
		if x.Marks[0] == m || x.Marks[1] == m {
			rays = append(rays, c.Truth[x.Marks[1]].Sub(c.Truth[x.Marks[0]]).Unit())
		}
	}
	for a := range rays {
		for b := range a {
			crossed := false
			for i := range rays {
				for k := range i {
					if i != a && i != b && k != a && k != b && math.Abs(rays[i].Cross(rays[k])) >= 0.5 {
						crossed = true
					}
				}
			}
			if !crossed {
				return false
			}
		}
	}
	return true
}
