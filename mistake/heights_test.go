package mistake_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/mistake"
	"brimline/unit"
)

// levelled is a book of five marks read from two set-ups and above the water, true to the millimetre but
// for noise written by hand; edit changes one line.
func levelled(edit func(lines []string)) string {
	z := []float64{0, 0.004, -0.007, 0.002, -0.003}
	off := []float64{0.0006, -0.0004, 0.0009, -0.0011, 0.0002, 0.0007, -0.0008, 0.0003, -0.0005, 0.0010, 0.0001, -0.0006}
	var lines []string
	for s := range 2 {
		for k, v := range z {
			lines = append(lines, fmt.Sprintf("staff: r%d, setup: S%d, is: \"%.3f\"", k+1, s+1, 1.412+0.1*float64(s)-v+off[len(lines)]))
		}
	}
	for k, v := range z {
		lines = append(lines, fmt.Sprintf("water: w1, under: r%d, is: \"%.3f\"", k+1, v+0.151+off[k]))
	}
	for k := range 3 {
		lines = append(lines, fmt.Sprintf("depth: f%d, below: w1, is: \"%.3f\"", k+1, 1.4+0.1*float64(k)))
	}
	lines = append(lines, "staff: f1, setup: S1, is: \"2.966\"", "staff: f1, setup: S2, is: \"3.064\"")
	edit(lines)
	return "brimline: 1\nreadings:\n- {" + strings.Join(lines, "}\n- {") + "}\n"
}

// swap gives a line another value.
func swap(at int, from, to string) func([]string) {
	return func(lines []string) {
		if !strings.Contains(lines[at], from) {
			panic(lines[at] + " has no " + from)
		}
		lines[at] = strings.Replace(lines[at], from, to, 1)
	}
}

// A staff misread is named as one, with the figure that it should have been.
func TestStaffMisread(t *testing.T) {
	for _, c := range []struct {
		what     string
		at       int
		from, to string
		was      float64
	}{
		{"100 mm", 2, "1.420", "1.520", 1.420},
		{"a metre", 6, "1.507", "0.507", 1.507},
		{"10 mm", 2, "1.420", "1.430", 1.420},
		{"9 for 6, 3 mm: less than shows", 9, "1.516", "1.519", math.NaN()},
		{"1 for 7", 1, "1.408", "7.408", 1.408},
	} {
		a := ask(t, levelled(swap(c.at, c.from, c.to)))
		if math.IsNaN(c.was) {
			if len(a.Mistakes) > 0 {
				t.Errorf("%s: %s", c.what, a.told())
			}
			continue
		}
		if len(a.Mistakes) != 1 || a.State[c.at] != mistake.Suspect {
			t.Fatalf("%s: %v, %s", c.what, a.State, a.told())
		}
		m := a.Mistakes[0]
		if m.Code != "staff" || len(m.Edits) != 1 || math.Abs(m.Edits[0].Value-c.was) > 1e-9 {
			t.Errorf("%s: %s %+v", c.what, m.Code, m.Edits)
		}
	}
	if a := ask(t, levelled(func([]string) {})); len(a.Mistakes) > 0 {
		t.Errorf("without a mistake: %s", a.told())
	}
}

// What a staff may have been: never below its foot.
func TestStaffByHand(t *testing.T) {
	var got []float64
	for _, w := range (mistake.Staff{}).True("0.061", 0.061, unit.M) {
		got = append(got, math.Round(w.Metres*1000)/1000)
	}
	slices.Sort(got)
	if want := []float64{0.051, 0.067, 0.071, 0.091, 0.161, 1.061}; !slices.Equal(got, want) {
		t.Errorf("0.061 may have been %v, want %v", got, want)
	}
}

// A depth read along the slope is too long by what the others say; one too short is not.
func TestDepthOnSlope(t *testing.T) {
	a := ask(t, levelled(swap(15, "1.400", "1.560")))
	if len(a.Mistakes) != 1 || a.Mistakes[0].Code != "depth-slope" || len(a.Mistakes[0].Edits) != 1 {
		t.Fatalf("%v, %s", a.State, a.told())
	}
	if v := a.Mistakes[0].Edits[0].Value; math.Abs(v-1.403) > 0.004 {
		t.Errorf("it would be %v", v)
	}
	a = ask(t, levelled(swap(15, "1.400", "1.280")))
	if len(a.Mistakes) != 1 || a.Mistakes[0].Code == "depth-slope" {
		t.Errorf("too short: %s", a.told())
	}
}

// A surface that moved is named with the amount, up or down, and each of its later readings brought back.
func TestWaterMoved(t *testing.T) {
	for _, rise := range []float64{0.03, -0.03, 0.012} {
		a := ask(t, levelled(func(lines []string) {
			for k := 13; k < 15; k++ { // the last two freeboards
				var v float64
				head, tail, _ := strings.Cut(lines[k], "\"")
				fmt.Sscanf(tail, "%f", &v)
				lines[k] = fmt.Sprintf("%s\"%.3f\"", head, v-rise)
			}
		}))
		var w *mistake.Mistake
		for k := range a.Mistakes {
			if a.Mistakes[k].Code == "water-moved" {
				w = &a.Mistakes[k]
			}
		}
		if w == nil || math.Abs(w.Size-rise) > 0.003 {
			t.Fatalf("by %v: %s", rise, a.told())
		}
		if a.net.Free[w.Other].Name != "w1" || w.Obs[0] != 13 {
			t.Errorf("by %v: surface %d from %d", rise, w.Other, w.Obs[0])
		}
		for _, e := range w.Edits[:2] {
			i := a.first.ObsOf(e.Part)
			if got := e.Value - a.net.Obs[i].Values[0]; math.Abs(got-w.Size) > 1e-9 {
				t.Errorf("by %v: a freeboard brought back by %v", rise, got)
			}
		}
	}
}

// An instrument's point goes whole where its height is wrong.
func TestSeenHeightGoesWhole(t *testing.T) {
	text := "brimline: 1\nreadings:\n"
	for k := range 5 {
		x, y, z := float64(k%3)*2.5, float64(k/3)*3.1, 0.01*float64(k)
		for s := range 3 {
			up := z + 0.2*float64(s)
			if k == 3 && s == 1 {
				up += 0.4
			}
			text += fmt.Sprintf("- {seen: r%d, setup: T%d, at: [%.3f, %.3f, %.3f]}\n", k+1, s+1, x+1, y-float64(s), up)
		}
	}
	a := ask(t, text)
	if len(a.Mistakes) != 1 {
		t.Fatalf("%s", a.told())
	}
	i := a.Mistakes[0].Obs[0]
	r := a.book.Readings[a.net.Obs[i].Reading]
	if r.N != "11" {
		t.Errorf("reading %s is blamed", r.N)
	}
	for k := range a.net.Obs {
		whole := a.net.Obs[k].Reading == a.net.Obs[i].Reading
		for p := a.first.First[k]; p < a.first.First[k+1]; p++ {
			if a.Solution.Out[p] != whole {
				t.Errorf("part %d of observation %d is out: %v", p, k, a.Solution.Out[p])
			}
		}
	}
}
