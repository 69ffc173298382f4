package survey_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/adjust"
	"brimline/internal/simulate"
	"brimline/network"
	"brimline/outline"
)

// Law: over simulated pools with a tape once round the rim, the area lies within 1.96 sd of the truth
// about 95 times in 100, the tape itself within its sd of what the rest says, and the area's sd falls.
func TestRoundCoverage(t *testing.T) {
	const seeds = 80
	r := rand.New(rand.NewPCG(41, 95))
	shapes := []simulate.Shape{}
	for _, s := range simulate.Shapes {
		if n := s.Name(); n == "semicircle ends" || n == "kidney" || n == "four-centre oval" {
			shapes = append(shapes, s)
		}
	}
	if len(shapes) != 3 {
		t.Fatal("the shapes have other names")
	}
	inside, all, sum, better, compared := 0, 0, 0.0, 0, 0
	for _, shape := range shapes {
		for seed := range uint64(seeds) {
			c := simulate.Pool(seed, shape, simulate.Methods[0], simulate.Options{})
			tape := c.Perimeter + r.NormFloat64()*math.Hypot(0.005, 0.001*c.Perimeter)
			with := areaOf(t, c, fmt.Sprintf("- {round: rim, is: %.4f m}\n", tape), true)
			compare := seed%8 == 0
			check := areaOf(t, c, fmt.Sprintf("- {round: rim, is: %.4f m, check: true}\n", tape), compare)
			all++
			if math.Abs(with.area-c.Area) <= 1.96*with.sd {
				inside++
			}
			if compare {
				compared++
				if with.sd < check.sd {
					better++
				}
			}
			sum += check.w * check.w
		}
	}
	share, rms := float64(inside)/float64(all), math.Sqrt(sum/float64(all))
	t.Logf("%d pools: area within 1.96 sd in %.3f, tape's own w %.2f rms, sd of the area smaller in %d of %d", all, share, rms, better, compared)
	if share < 0.92 || share > 0.98 {
		t.Errorf("area within 1.96 sd in %.3f of %d pools", share, all)
	}
	if rms < 0.85 || rms > 1.15 {
		t.Errorf("the tape's w is %.2f rms", rms)
	}
	if better < compared*9/10 {
		t.Errorf("the tape makes the area surer in %d of %d pools", better, compared)
	}
}

// measured is an outline found from a case and a further reading, which stands first in the book.
type measured struct{ area, sd, w float64 }

// areaOf runs the stages that bear on it: from the true places, without looking for mistakes.
func areaOf(t *testing.T, c simulate.Case, reading string, fit bool) measured {
	t.Helper()
	b := parse(t, strings.Replace(string(c.Book), "readings:\n", "readings:\n"+reading, 1))
	n, _ := network.Build(b, nil)
	x := n.NewState()
	for m, name := range n.Marks {
		x.SetPoint(m, c.Truth[name])
	}
	s, _ := adjust.Solve(context.Background(), n, x, adjust.Options{NoRobust: true})
	n = network.Hold(b, nil, nil, s.X)
	s, _ = adjust.Solve(context.Background(), n, s.X, adjust.Options{NoRobust: true})
	if !fit {
		return measured{w: s.W[s.First[0]]}
	}
	l := outline.Spec{Name: "rim", Closed: true}
	for _, r := range b.Lines[0].Runs {
		run := outline.SpecRun{Kind: r.Kind, Joint: r.Joint, Names: r.Marks}
		for _, m := range r.Marks {
			run.Marks = append(run.Marks, n.ByName[m])
		}
		l.Runs = append(l.Runs, run)
	}
	line, _ := outline.Fit(s, l, n.Edge)
	return measured{line.Area, line.AreaSD, s.W[s.First[0]]}
}
