package advise_test

import (
	"math"
	"testing"

	"brimline/advise"
	"brimline/plane"
)

// The sd of a move along the normal in the line's own datum is that of the datum of a rigid fit on
// the line's marks (package adjust), and does not depend on the base of the solution.
func TestOutlineHasTheDatumOfTheLine(t *testing.T) {
	for seed := range uint64(5) {
		s := twoPegs(seed, 12, 1, 0.004)
		s.tie(s.rim[0], s.rim[6])
		for _, base := range [][2]int{{0, 1}, {4, 9}} {
			s.net.Base = base
			sol := s.solve(t)
			frame := sol.FitFrame(s.rim)
			for i, f := range advise.Outline(sol, s.rim, s.normals()) {
				n, c := s.normals()[i], frame.MarkCov(s.rim[i])
				want := math.Sqrt(n.X*n.X*c[0] + 2*n.X*n.Y*c[1] + n.Y*n.Y*c[2])
				got, _, _ := sol.Ask(f)
				near(t, "sd of "+f.Name, got, want, 1e-9)
			}
		}
	}
}

// The short form of the same questions gives the same verdict as the long one.
func TestEdgesAreTheOutline(t *testing.T) {
	s := twoPegs(2, 14, 1, 0.004)
	sol := s.solve(t)
	short, long := s.shape(sol), s.shape(sol)
	long.Asks = nil
	for i, f := range advise.Outline(sol, s.rim, s.normals()) {
		long.Asks = append(long.Asks, advise.Ask{Name: "edge", At: s.net.Marks[s.rim[i]], Func: f, Tolerance: 0.025})
	}
	list := listed(sol)
	a := advise.Judge(sol, list, advise.Odd{}, short, 1)
	b := advise.Judge(sol, list, advise.Odd{}, long, 1)
	if a.State != b.State || a.Worst != b.Worst {
		t.Errorf("%s at %d, %s at %d", a.State, a.Worst, b.State, b.Worst)
	}
	near(t, "unseen", a.Unseen, b.Unseen, 1e-9)
	for i := range a.Tests {
		near(t, "U95", a.Tests[i].U95, b.Tests[i].U95, 1e-9)
		near(t, "unseen at a mark", a.Tests[i].Unseen, b.Tests[i].Unseen, 1e-9)
	}
}

// A rigid move of all marks is no move of the outline; a move of one mark along its normal is.
func TestOutlineForgetsRigidMoves(t *testing.T) {
	s := twoPegs(4, 9, 0, 0.004)
	sol := s.solve(t)
	const turn = 1e-3
	for i, f := range advise.Outline(sol, s.rim, s.normals()) {
		sum := 0.0
		for k, m := range f.Marks {
			p := sol.X.Point(m)
			d := plane.Point{X: 0.02 - turn*p.Y, Y: -0.03 + turn*p.X}
			sum += f.Grad[2*k]*d.X + f.Grad[2*k+1]*d.Y
		}
		near(t, "rigid move", sum, 0, 1e-12)
		own := f.Grad[2*i]*s.normals()[i].X + f.Grad[2*i+1]*s.normals()[i].Y
		if own < 0.5 || own >= 1 {
			t.Errorf("a move of %s by 1 counts %.3f", f.Name, own)
		}
	}
}
