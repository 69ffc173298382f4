package outline_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/finding"
	"brimline/internal/simulate"
	"brimline/network"
	"brimline/outline"
	"brimline/plane"
)

// scene is a line whose marks were all read from one set-up, two pegs A and B first. A stands at
// the origin and B on +x, so that exact readings give the frame of the truth.
type scene struct {
	names  []string
	at     []plane.Point
	sd     []float64
	runs   []outline.SpecRun
	bows   []fieldbook.Reading
	closed bool

	corners []outline.Corner
}

const (
	usual = 0.004 // sd of each coordinate read, metres
	sharp = 1e-6  // sd of a mark that stands for the frame
)

func newScene(closed bool) *scene {
	s := &scene{closed: closed}
	s.mark("A", plane.Point{}, usual)
	s.mark("B", plane.Point{X: 7}, usual)
	return s
}

func (s *scene) mark(name string, p plane.Point, sd float64) {
	s.names, s.at, s.sd = append(s.names, name), append(s.at, p), append(s.sd, sd)
}

// run adds a run of named marks; a mark that the scene does not have is one that nobody read.
func (s *scene) run(kind, joint string, names ...string) {
	r := outline.SpecRun{Kind: kind, Joint: joint, Names: names}
	for _, n := range names {
		r.Marks = append(r.Marks, s.number(n))
	}
	s.runs = append(s.runs, r)
}

// bow reads the rise of a chord.
func (s *scene) bow(a, b string, rise, sd float64, toward string) {
	s.bows = append(s.bows, fieldbook.Reading{Kind: "bow", Marks: []string{a, b}, Values: []fieldbook.Value{{Part: "is", Metres: rise}}, Sigma: []float64{sd}, Toward: toward})
}

func (s *scene) number(name string) int {
	for i, n := range s.names {
		if n == name {
			return i
		}
	}
	return -1
}

// points adds marks r1, r2, …
func (s *scene) points(xy ...float64) {
	for i := 0; i < len(xy); i += 2 {
		s.mark(fmt.Sprintf("r%d", i/2+1), plane.Point{X: xy[i], Y: xy[i+1]}, usual)
	}
}

// figure marks a closed figure: the ends of its pieces and inner marks, evenly spaced in each.
func figure(f simulate.Figure, inner int) *scene {
	s := newScene(true)
	for i, piece := range f {
		from := fmt.Sprintf("r%d", i*(inner+1)+1)
		names := []string{from}
		s.mark(from, piece.Segs[0].A, usual)
		for k := range inner {
			n := fmt.Sprintf("r%d", i*(inner+1)+k+2)
			s.mark(n, piece.Segs[0].At(float64(k+1)/float64(inner+1)), usual)
			names = append(names, n)
		}
		to := fmt.Sprintf("r%d", (i+1)%len(f)*(inner+1)+1)
		joint := map[bool]string{true: "tangent", false: "kink"}[piece.Tangent]
		s.runs = append(s.runs, outline.SpecRun{Kind: piece.Kind, Joint: joint, Names: append(names, to)})
	}
	for i, r := range s.runs {
		for _, n := range r.Names {
			s.runs[i].Marks = append(s.runs[i].Marks, s.number(n))
		}
	}
	return s
}

// moved is the scene with every place mapped.
func (s *scene) moved(f func(plane.Point) plane.Point) *scene {
	out := *s
	out.at = nil
	for _, p := range s.at {
		out.at = append(out.at, f(p))
	}
	return &out
}

// noisy is the scene with normal noise on every coordinate.
func (s *scene) noisy(r *rand.Rand) *scene {
	k := -1
	return s.moved(func(p plane.Point) plane.Point {
		k++
		return plane.Point{X: p.X + s.sd[k]*r.NormFloat64(), Y: p.Y + s.sd[k]*r.NormFloat64()}
	})
}

// solution adjusts the readings of the scene, taken from a set-up with a pose of its own.
func (s *scene) solution(t testing.TB) *adjust.Solution {
	t.Helper()
	pose := plane.Turned(0.6, plane.Point{X: 2, Y: -3})
	var b fieldbook.Book
	for i, n := range s.names {
		p := pose.Inverse().Apply(s.at[i])
		b.Readings = append(b.Readings, fieldbook.Taken{N: fmt.Sprint(i + 1), Reading: fieldbook.Reading{
			Kind: "seen", Marks: []string{n}, Setup: "T1", Sigma: []float64{s.sd[i]},
			Values: []fieldbook.Value{{Part: "x", Metres: p.X}, {Part: "y", Metres: p.Y}}}})
	}
	for _, r := range s.bows {
		b.Readings = append(b.Readings, fieldbook.Taken{N: fmt.Sprint(len(b.Readings) + 1), Reading: r})
	}
	n, _ := network.Build(&b, nil)
	x := n.NewState()
	for i, p := range s.at {
		x.SetPoint(i, p)
	}
	copy(x[2*len(s.at):], []float64{pose.T.X, pose.T.Y, 0.6})
	sol, _ := adjust.Solve(context.Background(), n, x, adjust.Options{})
	if !sol.Converged {
		t.Fatal("the readings were not adjusted")
	}
	return sol
}

func (s *scene) fit(t testing.TB) (*outline.Line, []finding.Finding) {
	t.Helper()
	sol := s.solution(t)
	return outline.Fit(sol, s.spec(), make([]float64, len(sol.Net.Marks)))
}

func (s *scene) spec() outline.Spec {
	return outline.Spec{Name: "rim", Edge: "nose", Closed: s.closed, Runs: s.runs, Corners: s.corners}
}

// codes joins what was found: "crossing r1 r2 r3 r4; clockwise".
func codes(fs []finding.Finding) string {
	var out []string
	for _, f := range fs {
		out = append(out, strings.Join(append([]string{f.Code}, f.Marks...), " "))
	}
	return strings.Join(out, "; ")
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.9f, want %.9f within %g", what, got, want, tol)
	}
}

const deg = math.Pi / 180
