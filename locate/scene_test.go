package locate_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/finding"
	"brimline/locate"
	"brimline/network"
	"brimline/plane"
)

// scene writes a field book by hand with what true places would give, to the tenth of a
// millimetre.
type scene struct {
	at   map[string]plane.Point
	read []string
	tail string
}

// scenery takes "A 0 0, B 8 0".
func scenery(text string) *scene {
	s := &scene{at: map[string]plane.Point{}}
	for _, part := range strings.Split(text, ",") {
		var name string
		var p plane.Point
		if _, err := fmt.Sscan(part, &name, &p.X, &p.Y); err != nil {
			panic(err)
		}
		s.at[name] = p
	}
	return s
}

// ties takes "A B, A r1" and reads each distance, with an error where "A r1 +1" says so.
func (s *scene) ties(text string) *scene {
	for _, part := range strings.Split(text, ",") {
		f := strings.Fields(part)
		wrong := 0.0
		if len(f) > 2 {
			if _, err := fmt.Sscan(strings.TrimPrefix(f[2], "+"), &wrong); err != nil {
				panic(err)
			}
		}
		s.read = append(s.read, fmt.Sprintf("{tie: %s %s, is: %.4f}", f[0], f[1], s.at[f[0]].Dist(s.at[f[1]])+wrong))
	}
	return s
}

// offsets reads marks from the line a to b.
func (s *scene) offsets(a, b string, marks ...string) *scene {
	u := s.at[b].Sub(s.at[a]).Unit()
	for _, m := range marks {
		d := s.at[m].Sub(s.at[a])
		hand, left := "left", u.Cross(d)
		if left < 0 {
			hand = "right"
		}
		s.read = append(s.read, fmt.Sprintf("{offset: %s, line: %s %s, at: %.4f, %s: %.4f}", m, a, b, d.Dot(u), hand, math.Abs(left)))
	}
	return s
}

// seen reads marks in the frame of a set-up; flip gives y downward.
func (s *scene) seen(setup string, at plane.Rigid, flip bool, marks ...string) *scene {
	for _, m := range marks {
		p, word := at.Inverse().Apply(s.at[m]), ""
		if flip {
			p.Y, word = -p.Y, ", flip: true"
		}
		s.read = append(s.read, fmt.Sprintf("{seen: %s, setup: %s, at: [%.4f, %.4f]%s}", m, setup, p.X, p.Y, word))
	}
	return s
}

func (s *scene) say(entry string) *scene {
	s.read = append(s.read, entry)
	return s
}

// rim is a closed line of straights through marks.
func (s *scene) rim(marks ...string) *scene {
	s.tail += "lines:\n  rim:\n    closed: true\n    runs:\n"
	for i, m := range marks {
		s.tail += fmt.Sprintf("    - {straight: [%s, %s]}\n", m, marks[(i+1)%len(marks)])
	}
	return s
}

func (s *scene) book() string {
	out := "brimline: 1\n" + s.tail
	if len(s.read) > 0 {
		out += "readings:\n- " + strings.Join(s.read, "\n- ") + "\n"
	}
	return out
}

// result is what locate found of a scene.
type result struct {
	t  *testing.T
	at map[string]plane.Point
	n  *network.Network
	locate.Start
}

func (s *scene) find(t *testing.T) *result {
	t.Helper()
	b, err := fieldbook.Parse("scene.yaml", []byte(s.book()))
	if err != nil {
		t.Fatalf("%v\n%s", err, s.book())
	}
	n, _ := network.Build(&b, nil)
	return &result{t, s.at, n, locate.Find(n)}
}

// right lays the marks (all when none is named) on their true places without mirroring and says
// how far the worst is off; a mark without a place is infinitely far.
func (r *result) right(marks ...string) float64 {
	if len(marks) == 0 {
		marks = r.n.Marks
	}
	var from, to []plane.Point
	for _, m := range marks {
		i, ok := r.n.ByName[m]
		if !ok || !r.n.Placed(r.X, network.Unknown(i)) {
			return math.Inf(1)
		}
		from, to = append(from, r.X.Point(i)), append(to, r.at[m])
	}
	return off(from, to)
}

func off(from, to []plane.Point) float64 {
	fit, _ := plane.FitRigid(from, to, nil)
	worst := 0.0
	for i, p := range from {
		worst = math.Max(worst, fit.Apply(p).Dist(to[i]))
	}
	return worst
}

func (r *result) codes() []string {
	out := []string{}
	for _, f := range r.Findings {
		out = append(out, f.Code)
	}
	return out
}

func (r *result) finding(code string) finding.Finding {
	r.t.Helper()
	for _, f := range r.Findings {
		if f.Code == code {
			return f
		}
	}
	r.t.Fatalf("no finding %s in %v", code, r.Findings)
	return finding.Finding{}
}

func (r *result) point(mark string) plane.Point { return r.X.Point(r.n.ByName[mark]) }
