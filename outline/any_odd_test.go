package outline_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/plane"
)

// Marks in no order, on one place, few or many never stop the search: the line has runs, and figures
// that are numbers.
func TestAnyOfOddMarks(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 41))
		s := newScene(seed%3 != 0)
		n := 2 + int(seed%17)
		var names []string
		for k := range n {
			p := plane.Point{X: 6 * r.Float64(), Y: 4 * r.Float64()}
			switch {
			case seed%5 == 1 && k > 0 && r.Float64() < 0.4:
				p = s.at[len(s.at)-1] // on the one before
			case seed%5 == 2:
				p.Y = 0.002 * r.NormFloat64() // all in line, not in order
			}
			names = append(names, fmt.Sprint("r", k))
			s.mark(names[k], p, usual)
		}
		if s.closed {
			names = append(names, names[0])
		}
		s.run("any", "", names...)
		l, _ := s.fit(t)
		for _, v := range []float64{l.Length, l.LengthSD, l.Area, l.AreaSD, l.Inferred} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("seed %d, runs %s: length %g ± %g, area %g ± %g", seed, kindsOf(l), l.Length, l.LengthSD, l.Area, l.AreaSD)
				break
			}
		}
		if len(l.Runs) == 0 || len(l.Normals) != len(l.Marks) {
			t.Errorf("seed %d: %d runs, %d normals at %d marks", seed, len(l.Runs), len(l.Normals), len(l.Marks))
		}
	}
}
