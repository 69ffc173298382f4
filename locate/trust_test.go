package locate_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/plane"
)

// turns reads the angle at a mark from one to another, clockwise, in degrees.
func (s *scene) turns(at, from, to string) *scene {
	a, b := s.at[from].Sub(s.at[at]), s.at[to].Sub(s.at[at])
	turn := math.Mod(plane.Angle(a)-plane.Angle(b)+4*math.Pi, 2*math.Pi) * 180 / math.Pi
	return s.say(fmt.Sprintf("{turn: %s %s, at: %s, is: %.4f}", from, to, at, turn))
}

// A figure on one side of the base, of which r is read in different ways.
const yard = "A 0 0, B 8 0, k -1 5, r 3.2 4.1, s 6 5"

// Here r is farther from B than A is, so that the tie from B meets the ray from A once.
const wide = "A 0 0, B 8 0, r -3 7"

// A mark with one tie is placed by a turn, a square, or a straight; the hand comes from the turn.
func TestPlacedByTurnSquareStraight(t *testing.T) {
	for _, c := range []struct {
		name string
		s    *scene
	}{
		{"turn at a peg and a tie", scenery(yard).ties("A B, A r").turns("A", "B", "r")},
		{"turn, its first mark unknown", scenery(wide).ties("A B, B r").turns("A", "r", "B")},
		{"two turns, no tie to it", scenery(yard).ties("A B").turns("A", "B", "r").turns("B", "A", "r")},
		{"turn and a check tie alone", scenery(wide).ties("A B").turns("A", "B", "r").say("{tie: B r, is: 13.0384, check: true}")},
		{"square and a tie", scenery("A 0 0, B 8 0, r 8 3, s 2 4").ties("A B, A r, A s, B s").turns("A", "B", "s").say("{square: A B r}").rim("s", "r", "B")},
		{"straight and a tie", scenery("A 0 0, B 8 0, k 3 4, s 6 5, r 9 6").ties("A B, A k, B k, A s, B s, k s, k r").turns("A", "B", "k").say("{straight: k s r}").rim("k", "s", "r", "B")},
	} {
		r := c.s.find(t)
		if got := r.right(); got > 0.03 {
			t.Errorf("%s: %.3f m off, findings %v\n%s", c.name, got, r.codes(), c.s.book())
		}
		for _, code := range r.codes() {
			if code == "mirror-all" || code == "mirror-said" || code == "unfixed" {
				t.Errorf("%s: %v", c.name, r.codes())
			}
		}
	}
}

// A turn shows on which hand a figure of ties lies, though custom says the other.
func TestTurnShowsTheHand(t *testing.T) {
	r := scenery("A 0 0, B 8 0, r 3 -4, s 6 -5, q 2 -6").ties("A B, A r, B r, A s, B s, r s, A q, B q, q r").turns("A", "r", "B").find(t)
	if got := r.right(); got > 0.02 || len(r.Findings) > 0 {
		t.Errorf("%.3f m off, findings %v", got, r.Findings)
	}
}

// A turn at the mark, a square and a straight choose between the two places that ties leave.
func TestTrustChoosesTheMirror(t *testing.T) {
	base := func() *scene {
		return scenery("A 0 0, B 8 0, k 3 3, s 6 4, r 4 -3").ties("A B, A k, B k, A s, B s, k s, A r, B r").say("{side: k, of: A B, hand: left}")
	}
	for name, s := range map[string]*scene{
		"check tie": base().ties("k r").say(""), "turn at it": base().turns("r", "k", "s"), "turn at another": base().turns("k", "s", "r"),
	} {
		if s.read[len(s.read)-1] == "" {
			last := len(s.read) - 2
			s.read[last] = s.read[last][:len(s.read[last])-1] + ", check: true}"
			s.read = s.read[:last+1]
		}
		r := s.find(t)
		if got := r.right(); got > 0.02 {
			t.Errorf("%s: %.3f m off, findings %v", name, got, r.codes())
		}
		for _, f := range r.Findings {
			if f.Code == "mirror" {
				t.Errorf("%s: still open: %v", name, f)
			}
		}
	}
}

// A check proposes no place: with a wrong one the mark stays where its readings put it. Where there
// is nothing else it places.
func TestChecksProposeNothing(t *testing.T) {
	s := scenery(yard).ties("A B, A k, B k, A s, B s, k s, A r, B r, s r")
	wrong := s.say("{tie: k r, is: 2.0, check: true}").find(t)
	if got := wrong.right(); got > 0.02 {
		t.Errorf("a wrong check moves a mark by %.3f m", got)
	}
	alone := scenery(yard).ties("A B, A k, B k").say("{tie: A r, is: 5.2010, check: true}").say("{tie: B r, is: 6.3127, check: true}").say("{tie: k r, is: 4.2953, check: true}").find(t)
	if got := alone.right("A", "B", "k", "r"); got > 0.02 {
		t.Errorf("placed by checks alone: %.3f m off, %v", got, alone.codes())
	}
}

// A tape bent round something is too long, and the mark still goes where the others meet.
func TestBentIsLoose(t *testing.T) {
	r := scenery(yard).ties("A B, A k, B k, A s, B s, k s, A r, s r").say("{tie: B r, is: 6.4300, bent: true}").find(t)
	if got := r.right(); got > 0.02 {
		t.Errorf("%.3f m off, findings %v", got, r.codes())
	}
}

// A peg that was moved is two marks, and both are placed.
func TestMovedPegIsTwoMarks(t *testing.T) {
	s := scenery("A 0 0, B 8 0, k 3 3, s 6 4, r 4 5").ties("A B, A k, B k, A s, B s, k s")
	s.at["B"] = plane.Point{X: 8.6, Y: 0.4}
	s.say("{moved: B}").ties("B k, B s, B r, A r, k r")
	s.at["B (2)"], s.at["B"] = s.at["B"], plane.Point{X: 8}
	if got := s.find(t).right(); got > 0.02 {
		t.Errorf("%.3f m off", got)
	}
}

// Readings with unknowns of their own take their part: a tool whose zero is solved fixes the figure,
// and what they bring along is left to the adjustment.
func TestFreeBlocksAreNoHindrance(t *testing.T) {
	s := scenery(yard).ties("A B, A k, B k, A s, B s, k s, A r, B r, s r").say("{straight: k r s}").say("{bow: r s, is: 0.3}").say("{arc: A k r s}")
	for i := range s.read[:9] {
		s.read[i] = s.read[i][:len(s.read[i])-1] + ", tool: reel}"
	}
	s.tail = "tools: {reel: {zero: solve, scale: solve}}\n"
	r := s.find(t)
	if got := r.right(); got > 0.15 { // k, r and s are said to be in line and are not, by 0.3 m
		t.Errorf("%.3f m off, findings %v", got, r.codes())
	}
	for f := range r.n.Free {
		if r.n.Placed(r.X, r.n.FreeBlock(f)) {
			t.Errorf("free block %d has a place", f)
		}
	}
}

// A tie shorter than the base meets the ray twice: both places are given, and a tape that tells.
func TestRayMeetsCircleTwice(t *testing.T) {
	r := scenery("A 0 0, B 8 0, r 7 4, s 3 5").ties("A B, B r, A s, B s").turns("A", "B", "r").turns("A", "B", "s").find(t)
	f := r.finding("mirror")
	if len(f.Marks) != 1 || f.Marks[0] != "r" || f.Words["cure"] == "" {
		t.Errorf("%+v", f)
	}
	other := r.Other[r.n.ByName["r"]]
	if len(other) != 1 || math.Abs(other[0].Dist(r.point("B"))-r.at["B"].Dist(r.at["r"])) > 0.02 || other[0].Dist(r.point("r")) < 1 {
		t.Errorf("the other place of r is %v, it stands at %v", other, r.point("r"))
	}
}
