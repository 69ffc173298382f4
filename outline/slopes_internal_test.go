package outline

import (
	"context"
	"fmt"
	"math"
	"testing"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/network"
	"brimline/plane"
)

// What the marks around one tell of its pull on length and area is what the whole line tells, for a
// ring and for a curve between straights.
func TestNearSlopes(t *testing.T) {
	for _, closed := range []bool{true, false} {
		c := wave(t, closed)
		got := c.figureCov()
		want := c.covOf(c.figures)
		for i := range want {
			if math.Abs(got[i]-want[i]) > 1e-3*math.Abs(want[i])+1e-15 {
				t.Errorf("closed %v: covariance %d is %g, want %g", closed, i, got[i], want[i])
			}
		}
	}
}

// wave is a settled chain with a fair curve of forty marks.
func wave(t *testing.T, closed bool) *chain {
	var b fieldbook.Book
	var at []plane.Point
	var run SpecRun
	for k := range 44 {
		a := float64(k) * 2 * math.Pi / 44
		p := plane.Point{X: 4 + 0.4*math.Cos(3*a)}.Turn(a)
		at = append(at, p)
		run.Marks, run.Names = append(run.Marks, k), append(run.Names, fmt.Sprint("r", k))
		b.Readings = append(b.Readings, fieldbook.Taken{N: fmt.Sprint(k + 1), Reading: fieldbook.Reading{
			Kind: "seen", Marks: []string{run.Names[k]}, Setup: "T1", Sigma: []float64{0.003 + 0.001*float64(k%4)},
			Values: []fieldbook.Value{{Part: "x", Metres: p.X}, {Part: "y", Metres: p.Y}}}})
	}
	n, _ := network.Build(&b, nil)
	x := n.NewState()
	for i, p := range at {
		x.SetPoint(i, p)
	}
	copy(x[2*len(at):], []float64{0, 0, 0})
	s, _ := adjust.Solve(context.Background(), n, x, adjust.Options{})
	if !s.Converged {
		t.Fatal("not adjusted")
	}
	part := func(kind, joint string, from, to int) SpecRun {
		return SpecRun{Kind: kind, Joint: joint, Marks: run.Marks[from : to+1], Names: run.Names[from : to+1]}
	}
	l := Spec{Closed: closed, Runs: []SpecRun{part("straight", "", 0, 1), part("curve", "tangent", 1, 42), part("straight", "tangent", 42, 43)}}
	if closed {
		run.Kind, run.Marks, run.Names = "curve", append(run.Marks, 0), append(run.Names, "r0")
		l.Runs = []SpecRun{run}
	}
	c := newChain(newBlock(s, l, nil), l)
	c.begin()
	c.settle(make([]float64, len(n.Marks)))
	return c
}
