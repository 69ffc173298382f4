package outline_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/outline"
	"brimline/plane"
)

// Runs of every kind in any order, with joints that slide, soft edges and unreached corners, never
// stop the fit: what has a path has figures that are numbers.
func TestOddRuns(t *testing.T) {
	drawn := 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 52))
		s := newScene(seed%4 != 0)
		n := 8 + int(seed%9)
		at := func(k int) string { return fmt.Sprint("r", (k+n)%n) }
		for k := range n {
			a := 2 * math.Pi * (float64(k) + 0.3*r.Float64()) / float64(n)
			s.mark(at(k), plane.Point{X: (4 + r.Float64()) * math.Cos(a), Y: 3 * math.Sin(a)}, usual)
		}
		joint := 1 + r.IntN(n-2) // an unreached corner stands in the place of this mark
		for k := 0; k < n; {
			names := []string{at(k)}
			for m := 1 + r.IntN(4); m > 0 && k < n; m-- {
				k++
				names = append(names, at(k))
			}
			for i, name := range names {
				if name == at(joint) && seed%3 == 0 {
					names[i] = "c"
				}
			}
			s.run([]string{"straight", "arc", "curve", "any", "soft"}[r.IntN(5)], []string{"", "tangent", "kink"}[r.IntN(3)], names...)
			last := &s.runs[len(s.runs)-1]
			last.Sigma, last.Slide = 0.02*r.Float64(), 0.2*float64(r.IntN(2))
		}
		if seed%3 == 0 {
			c := outline.Corner{Name: "c", Round: 0.3 * float64(r.IntN(2)), Sigma: 0.01}
			if r.IntN(2) == 0 {
				c.Like = []string{at(joint + 3), "c"}
			}
			s.corner(c, at(joint-2), at(joint-1), at(joint+1), at(joint+2))
		}
		l, _ := s.fit(t)
		if len(l.Waits) > 0 {
			continue
		}
		drawn++
		for _, v := range []float64{l.Length, l.LengthSD, l.Area, l.AreaSD, l.AreaReadSD, l.Inferred} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("seed %d, runs %s: length %g ± %g, area %g ± %g", seed, kindsOf(l), l.Length, l.LengthSD, l.Area, l.AreaSD)
				break
			}
		}
		near(t, "area against the path", l.Area, math.Abs(l.Path.Area())*map[bool]float64{true: 1}[l.Closed], 1e-9)
		near(t, "length against the path", l.Length, l.Path.Length(), 1e-9)
	}
	if drawn < 250 {
		t.Errorf("%d of 300 drawn", drawn)
	}
}
