package outline_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

// halfMarked is a rounded rectangle with marks along its sides and so many inside each corner, none
// where the arcs begin and end; and the middles of its corners.
func halfMarked(r *rand.Rand, radius float64, inside int) (s *scene, f simulate.Figure, middles []plane.Point) {
	f = simulate.Rounded(simulate.Box4(8, 4, 0.005), []float64{radius, radius, radius, radius})
	s = newScene(true)
	var names []string
	for _, p := range f {
		g, n, wide := p.Segs[0], int(p.Segs[0].Length()/0.8), 0.2
		first := 0.5
		if p.Kind == "arc" {
			middles = append(middles, g.At(0.5))
			n, first, wide = inside, 1, 0.1
		}
		for i := range n {
			steps := float64(n) - 1 + 2*first
			names = append(names, fmt.Sprint("r", len(names)))
			s.mark(names[len(names)-1], g.At((float64(i)+first+wide*(2*r.Float64()-1))/steps), usual)
		}
	}
	s.run("any", "", append(names, names[0])...)
	return s, f, middles
}

// Rounded corners of which one or two marks were set and no tangent point are found, their radii and
// the area inside 1.96 sd as often as they say.
func TestFillets(t *testing.T) {
	const seed = 3
	r := rand.New(rand.NewPCG(seed, 14))
	for _, inside := range []int{1, 2} {
		arcs, found, in, area, n := 0, 0, 0, 0, draws()/4
		for k := range n {
			radius := []float64{0.15, 0.2, 0.3, 0.5, 0.8}[k%5]
			s, f, middles := halfMarked(r, radius, inside)
			l, _ := s.noisy(r).fit(t)
			if math.Abs(l.Area-f.Path().Area()) <= 1.96*l.AreaSD {
				area++
			}
			for _, m := range middles {
				arcs++
				for _, x := range l.Runs {
					if x.Kind == "arc" && l.Path.Segs[x.First].At(0.5).Dist(m) < 0.3 {
						found++
						if math.Abs(x.Radius-radius) <= 1.96*x.RadiusSD {
							in++
						}
					}
				}
			}
		}
		t.Logf("%d inside: %d of %d corners found, radius of %d within 1.96 sd; area of %d in %d; seed %d", inside, found, arcs, in, area, n, seed)
		if found < arcs*97/100 {
			t.Errorf("%d of %d corners found", found, arcs)
		}
		near(t, "radii within 1.96 sd", float64(in)/float64(found), 0.95, 4*math.Sqrt(0.95*0.05/float64(found)))
		near(t, "areas within 1.96 sd", float64(area)/float64(n), 0.95, 4*math.Sqrt(0.95*0.05/float64(n)))
	}
}
