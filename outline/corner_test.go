package outline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/outline"
	"brimline/plane"
)

// corner names the marks of an unreached corner.
func (s *scene) corner(c outline.Corner, a, b, d, e string) {
	c.MeetNames = [2][2]string{{a, b}, {d, e}}
	c.Meet = [2][2]int{{s.number(a), s.number(b)}, {s.number(d), s.number(e)}}
	s.corners = append(s.corners, c)
}

// cornerless is an 8 × 4 rectangle whose corner at (8, 4) could not be reached: the last marks on its
// sides are p and q; two of its other corners are rounded by 0.5.
func cornerless(c outline.Corner) *scene {
	s := newScene(true)
	mark := func(n string, x, y float64) { s.mark(n, plane.Point{X: x, Y: y}, usual) }
	arc := func(k string, cx, cy, from float64) {
		for i, n := range []string{"a", "b", "c"} {
			a := from + float64(i)*math.Pi/4
			mark(k+n, cx+0.5*math.Cos(a), cy+0.5*math.Sin(a))
		}
	}
	mark("o", 0, 0)
	arc("u", 7.5, 0.5, -math.Pi/2)
	mark("m", 8, 1.5)
	mark("p", 8, 3)
	mark("q", 6.5, 4)
	mark("n", 3, 4)
	arc("v", 0.5, 3.5, math.Pi/2)
	s.run("straight", "", "o", "ua")
	s.run("arc", "tangent", "ua", "ub", "uc")
	s.run("straight", "tangent", "uc", "m", "p", "k")
	s.run("straight", "", "k", "q", "n", "va")
	s.run("arc", "tangent", "va", "vb", "vc")
	s.run("straight", "tangent", "vc", "o")
	c.Name = "k"
	s.corner(c, "m", "p", "n", "q")
	return s
}

const roundLoss = 1 - math.Pi/4 // of the square of a radius, at a right angle

// A corner that nobody reached lies where the straights meet, sharp, rounded by what the book says,
// or as corners that were measured; what nobody touched is inferred.
func TestUnreachedCorner(t *testing.T) {
	measured := 32 - 2*0.25*roundLoss
	for _, c := range []struct {
		c      outline.Corner
		kinds  string
		radius float64
	}{
		{outline.Corner{}, "sassas", 0},
		{outline.Corner{Round: 0.15, Sigma: 0.02}, "sasasas", 0.15},
		{outline.Corner{Like: []string{"ub", "vc"}, Sigma: 0.02}, "sasasas", 0.5},
	} {
		s := cornerless(c.c)
		l, found := s.fit(t)
		if codes(found) != "" || kindsOf(l) != c.kinds || len(l.Corners) != 1 {
			t.Fatalf("found %s, runs %s, %d corners", codes(found), kindsOf(l), len(l.Corners))
		}
		x := l.Corners[0]
		near(t, "x", x.At.X, 8, fine)
		near(t, "y", x.At.Y, 4, fine)
		near(t, "radius", x.Radius, c.radius, fine)
		near(t, "area", l.Area, measured-c.radius*c.radius*roundLoss, fine)
		near(t, "inferred", l.Inferred, 2.5-c.radius*(2-math.Pi/2), 1e-6)
		if len(l.Marks) != len(s.names)-2 || len(l.Normals) != len(l.Marks) {
			t.Errorf("%d marks, %d normals", len(l.Marks), len(l.Normals))
		}
		if got := l.Family; got == nil || got.Kind != "rectangle" {
			t.Errorf("family %+v", got)
		}
	}
}

// Of noisy marks the corner lies within its ellipse, and the area within 1.96 sd, as often as they
// say; the rounding of the corner scatters as its sigma says.
func TestUnreachedCoverage(t *testing.T) {
	for _, c := range []outline.Corner{{Sigma: 0.01}, {Round: 0.3, Sigma: 0.01}, {Like: []string{"ub", "vb"}, Sigma: 0.01}} {
		r := rand.New(rand.NewPCG(81, 3))
		n, in, area := draws()/2, 0, 0
		sum, quoted := 0.0, 0.0
		for range n {
			s := cornerless(c)
			move := plane.Point{X: c.Sigma * r.NormFloat64(), Y: c.Sigma * r.NormFloat64()}
			truth := plane.Point{X: 8, Y: 4}.Add(move)
			radius := c.Round
			if radius > 0 {
				radius += c.Sigma * r.NormFloat64()
			} else if len(c.Like) > 0 {
				radius = 0.5
			}
			l, _ := s.noisy(r).fit(t)
			x := l.Corners[0]
			sum += math.Pow(x.At.Dist(truth), 2)
			quoted += x.SD * x.SD
			if x.At.Dist(truth) < 2.4477*x.SD {
				in++
			}
			// the corner moved takes half of its sides' lengths with it
			true := 32 - 2*0.25*roundLoss - radius*radius*roundLoss + (move.X*1+move.Y*1.5)/2
			if math.Abs(l.Area-true) <= 1.96*l.AreaSD {
				area++
			}
		}
		t.Logf("corner within %d of %d, area %d; scatter %.1f mm, larger semi-axis %.1f mm, %+v", in, n, area, 1e3*math.Sqrt(sum/float64(n)), 1e3*math.Sqrt(quoted/float64(n)), c)
		near(t, "area within 1.96 sd", float64(area)/float64(n), 0.95, 4.5*math.Sqrt(0.95*0.05/float64(n)))
		if in < n*94/100 {
			t.Errorf("the corner lies in its circle in %d of %d", in, n)
		}
	}
}

// Corners whose marks are not read wait for them; straights that run nearly the same way do not say
// where they meet; a corner like one without a radius stays sharp.
func TestUnreachedUntold(t *testing.T) {
	s := cornerless(outline.Corner{})
	s.corners[0].MeetNames[1][0], s.corners[0].Meet[1][0] = "z", -1
	l, found := s.fit(t)
	if codes(found) != "line-unread z" || len(l.Waits) != 1 || len(l.Path.Segs) != 0 {
		t.Errorf("found %s", codes(found))
	}
	s = cornerless(outline.Corner{})
	s.corners[0].MeetNames[1], s.corners[0].Meet[1] = [2]string{"o", "uc"}, [2]int{s.number("ua"), s.number("uc")}
	s.at[s.number("ua")] = plane.Point{X: 7.9, Y: 0}
	s.at[s.number("uc")] = plane.Point{X: 8, Y: 0.9}
	if _, found = s.fit(t); codes(found) != "corner-flat m p o uc; line-unread k" {
		t.Errorf("found %s", codes(found))
	}
	s = cornerless(outline.Corner{Like: []string{"m"}})
	if l, found = s.fit(t); codes(found) != "corner-like m" || l.Corners[0].Radius != 0 {
		t.Errorf("found %s", codes(found))
	}
}

// Left to be found, the sides beside a corner are found; two corners in a row, one like the other, and
// a line that begins at a corner.
func TestUnreachedAny(t *testing.T) {
	s := newScene(true)
	s.points(0, 0, 2, 0, 4, 0, 6, 0, 7.2, 0, 8, 1, 8, 2, 8, 3, 7.2, 4, 6, 4, 4, 4, 2, 4, 0, 4, 0, 2)
	s.run("any", "", "k", "r6", "r7", "r8", "m", "r9", "r10", "r11", "r12", "r13", "r14", "r1", "r2", "r3", "r4", "r5", "k")
	s.corner(outline.Corner{Name: "k", Round: 0.3, Sigma: 0.01}, "r4", "r5", "r6", "r8")
	s.corner(outline.Corner{Name: "m", Like: []string{"k"}, Sigma: 0.01}, "r6", "r8", "r10", "r9")
	for _, seed := range []uint64{0, 1, 2} {
		n := s
		if seed > 0 {
			n = s.noisy(rand.New(rand.NewPCG(seed, 5)))
		}
		l, found := n.fit(t)
		if codes(found) != "" || !roundAbout(kindsOf(l), "sasasss") && !roundAbout(kindsOf(l), "sasass") {
			t.Fatalf("seed %d: found %s, runs %s", seed, codes(found), kindsOf(l))
		}
		near(t, "area in sd", (l.Area-(32-2*0.09*roundLoss))/math.Max(l.AreaSD, fine), 0, 4)
		for _, x := range l.Corners {
			near(t, "radius of "+x.Name, x.Radius, 0.3, 1e-3)
		}
	}
}
