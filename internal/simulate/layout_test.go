package simulate_test

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"testing"

	"brimline/internal/simulate"
	"brimline/plane"
)

func title(c simulate.Case) string {
	return fmt.Sprintf("%s, %s, seed %d", c.Shape.Name(), c.Method.Name(), c.Seed)
}

func TestSameSeedSameCase(t *testing.T) {
	var last []byte
	every(2, func(c simulate.Case) {
		again := simulate.Pool(c.Seed, c.Shape, c.Method, simulate.Options{})
		if !reflect.DeepEqual(c, again) {
			t.Fatalf("%s: differs the second time", title(c))
		}
		if bytes.Equal(last, c.Book) {
			t.Fatalf("%s: the same book as the one before", title(c))
		}
		last = c.Book
	})
}

func TestSamePoolByEveryMethod(t *testing.T) {
	for _, s := range simulate.Shapes {
		first := simulate.Pool(9, s, simulate.Methods[0], simulate.Options{})
		for _, m := range simulate.Methods[1:] {
			c := simulate.Pool(9, s, m, simulate.Options{})
			if math.Abs(c.Area-first.Area) > 1e-9 || math.Abs(c.Perimeter-first.Perimeter) > 1e-9 {
				t.Errorf("%s: another pool by %s", s.Name(), m.Name())
			}
		}
	}
}

func TestFrameAndNames(t *testing.T) {
	every(6, func(c simulate.Case) {
		if a, b := c.Truth["A"], c.Truth["B"]; a != (plane.Point{}) || b.Y != 0 || b.X <= 2 {
			t.Fatalf("%s: A %v, B %v", title(c), a, b)
		}
		turned := 0.0 // twice the area of the polygon of the marks
		for i, m := range c.Order {
			p, q := c.Truth[m], c.Truth[c.Order[(i+1)%len(c.Order)]]
			turned += p.X*q.Y - q.X*p.Y
			if distance(p, plane.Point{}) < distance(c.Truth["r1"], plane.Point{}) {
				t.Fatalf("%s: %s is nearer to A than r1", title(c), m)
			}
			if m != fmt.Sprintf("r%d", i+1) {
				t.Fatalf("%s: mark %d is called %s", title(c), i+1, m)
			}
		}
		if turned >= 0 || c.Area <= 0 {
			t.Fatalf("%s: marks turn %v, area %v", title(c), turned, c.Area)
		}
		// 85: a rim of some 40 m with a mark every 0.5 m.
		if n := len(c.Order); n < 12 || n > 85 || len(c.Truth) != n+len(c.Pegs) {
			t.Fatalf("%s: %d marks, %d places", title(c), n, len(c.Truth))
		}
	})
}

func TestHandIsSaidWhereItMustBe(t *testing.T) {
	right, all, crossing := 0, 0, 0
	every(20, func(c simulate.Case) {
		all++
		left, both := true, false
		for _, list := range [][]string{c.Order, c.Pegs[2:]} {
			for _, m := range list {
				left = left && c.Truth[m].Y > 0
				both = both || (c.Truth[m].Y > 0) != (c.Truth["r1"].Y > 0)
			}
		}
		if left != (c.Side == nil) {
			t.Fatalf("%s: all left is %v, side entry %v", title(c), left, c.Side)
		}
		if both {
			crossing++
		}
		if c.Side == nil {
			return
		}
		if !c.Side.Left {
			right++
		}
		if y := c.Truth[c.Side.Mark].Y; (y > 0) != c.Side.Left || math.Abs(y) < 0.3 {
			t.Fatalf("%s: %v, but it lies %v off the base", title(c), *c.Side, y)
		}
	})
	t.Logf("%d cases: %d to the right, %d on both hands", all, right, crossing)
	if share := float64(right) / float64(all); share < 0.40 || share > 0.60 {
		t.Errorf("%d of %d cases lie to the right", right, all)
	}
	if crossing < all/20 {
		t.Errorf("only %d of %d cases have a base across the pool", crossing, all)
	}
}

func TestRunsGoRound(t *testing.T) {
	every(6, func(c simulate.Case) {
		runs := c.Rim.Runs
		count, length, sweep := map[string]int{}, 0.0, 0.0
		for i, r := range runs {
			next := runs[(i+1)%len(runs)]
			if r.Marks[len(r.Marks)-1] != next.Marks[0] {
				t.Fatalf("%s: run %d does not end where the next begins", title(c), i)
			}
			for _, m := range r.Marks[1:] {
				count[m]++
			}
			if r.Kind == "arc" && len(r.Marks) < 3 {
				t.Fatalf("%s: an arc of %d marks", title(c), len(r.Marks))
			}
			length += r.Length
			sweep += r.Sweep
			if d := math.Abs(r.Radius*math.Abs(r.Sweep) - r.Length); r.Kind == "arc" && d > 1e-9 {
				t.Fatalf("%s: arc %d of radius %v, sweep %v, length %v", title(c), i, r.Radius, r.Sweep, r.Length)
			}
		}
		for _, m := range c.Order {
			if count[m] != 1 {
				t.Fatalf("%s: %s stands in %d runs", title(c), m, count[m])
			}
		}
		if math.Abs(length-c.Perimeter) > 1e-9 {
			t.Fatalf("%s: runs are %v long, the rim %v", title(c), length, c.Perimeter)
		}
		smooth := true
		for _, r := range runs {
			smooth = smooth && r.Joint == "tangent" && r.Kind != "curve"
		}
		if smooth && math.Abs(sweep+2*math.Pi) > 1e-9 {
			t.Fatalf("%s: the sweeps sum to %v", title(c), sweep)
		}
	})
}

func TestBookRunsAreTheTrueOnes(t *testing.T) {
	said := map[bool]int{}
	every(3, func(c simulate.Case) {
		p := parsed(t, c.Book)
		rim := p.Lines["rim"]
		if !rim.Closed || len(rim.Runs) != len(c.Rim.Runs) {
			t.Fatalf("%s: rim %+v", title(c), rim)
		}
		for i, r := range c.Rim.Runs {
			var marks []string
			for _, m := range rim.Runs[i][r.Kind].([]any) {
				marks = append(marks, m.(string))
			}
			joint, ok := rim.Runs[i]["joint"]
			if !reflect.DeepEqual(marks, r.Marks) || ok != c.Rim.JointsSaid || (ok && joint != r.Joint) {
				t.Fatalf("%s: run %v stands in the book as %v", title(c), r, rim.Runs[i])
			}
			said[ok]++
		}
	})
	if said[true] == 0 || said[false] == 0 {
		t.Errorf("joints said: %v", said)
	}
}

func TestTapesWithinReach(t *testing.T) {
	every(6, func(c simulate.Case) {
		checks := 0
		for _, r := range c.Readings {
			if r.Kind == "tie" && (r.True[0] > 30 || r.True[0] < 0.2) {
				t.Fatalf("%s: a tape of %v", title(c), r.True[0])
			}
			if r.Kind == "tie" && r.Marks[0][0] == 'r' {
				checks++
			}
		}
		share := float64(checks) / float64(len(c.Order))
		if c.Method == simulate.Methods[0] && (share < 0.15-0.05 || share > 0.30+0.05) {
			t.Fatalf("%s: %d check tapes for %d marks", title(c), checks, len(c.Order))
		}
	})
}
