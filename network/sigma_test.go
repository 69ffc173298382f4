package network_test

import (
	"math"
	"testing"
)

const deg = math.Pi / 180

// Who says how sharp a reading is: its own figures, its set-up, its tool, the book's rule, the
// default of the kind; the pointing at each mark is added in squares.
func TestSigma(t *testing.T) {
	const tape = "tools:\n  tape: {sigma: 3 mm, ppm: 200}\n"
	const rule = "rules: {sigma: {tie: 9 mm, seen: 9 mm}}\n"
	h := math.Hypot
	for _, c := range []struct {
		name, text string
		want       []float64
	}{
		{"default of a tie", "readings:\n- {tie: A B, is: 8}\n", []float64{0.005}},
		{"default of an offset", "readings:\n- {tie: A B, is: 8}\n- {offset: r, line: A B, at: 3, right: 1.2}\n", []float64{h(0.005, 0.012), 0.005}},
		{"default of a sight", "readings:\n- {seen: r, setup: T, at: [1, 2]}\n", []float64{0.004, 0.004}},
		{"rule before default", rule + "readings:\n- {tie: A B, is: 8}\n", []float64{0.009}},
		{"tool before rule", rule + tape + "readings:\n- {tie: A B, is: 20, tool: tape}\n", []float64{h(0.003, 0.004)}},
		{"tool with ppm alone", "tools:\n  tape: {ppm: 200}\nreadings:\n- {tie: A B, is: 20, tool: tape}\n", []float64{math.Hypot(0.005, 0.004)}},
		{"tool without figures leaves the rule", rule + "tools:\n  tape: {serial: T-7}\nreadings:\n- {tie: A B, is: 20, tool: tape}\n", []float64{0.009}},
		{"set-up before rule", rule + "setups: {T: {sigma: 7 mm}}\nreadings:\n- {seen: r, setup: T, at: [1, 2]}\n", []float64{0.007, 0.007}},
		{"set-up before tool", tape + "setups: {T: {sigma: 7 mm}}\nreadings:\n- {seen: r, setup: T, at: [1, 2], tool: tape}\n", []float64{0.007, 0.007}},
		{"own before everything", rule + tape + "readings:\n- {tie: A B, is: 20, tool: tape, sigma: 2 mm}\n", []float64{0.002}},
		{"own before the set-up, for all parts", "setups: {T: {sigma: 7 mm}}\nreadings:\n- {seen: r, setup: T, at: [1, 2], sigma: 2 mm}\n", []float64{0.002, 0.002}},
		{"own as a list", "setups: {T: {sigma: 7 mm}}\nreadings:\n- {seen: r, setup: T, at: [1, 2], sigma: [2 mm, 6 mm]}\n", []float64{0.002, 0.006}},
		{"a drawing's tie", "readings:\n- {tie: A B, is: 8, class: drawing}\n", []float64{0.150}},
		{"a drawing's sight", "readings:\n- {seen: r, setup: T, at: [1, 2], class: drawing}\n", []float64{0.300, 0.300}},
		{"own of a drawing", "readings:\n- {tie: A B, is: 8, class: drawing, sigma: 40 mm}\n", []float64{0.040}},
		{"definition of both marks", "marks:\n  A: {definition: 12 mm}\n  r: {definition: 3 mm}\nreadings:\n- {tie: A r, is: 8, sigma: 4 mm}\n", []float64{0.013}},
		{"definition of a line", "readings:\n- {tie: A r, is: 8, sigma: 4 mm}\nlines:\n  rim: {definition: 3 mm, runs: [{straight: [r, s]}]}\n", []float64{0.005}},
		{"a mark's own before its line's", "marks:\n  r: {definition: 3 mm}\nreadings:\n- {tie: A r, is: 8, sigma: 4 mm}\nlines:\n  rim: {definition: 9 mm, runs: [{straight: [r, s]}]}\n", []float64{0.005}},
		{"definition with a tool", tape + "marks:\n  r: {definition: 12 mm}\nreadings:\n- {tie: A r, is: 20, tool: tape}\n", []float64{0.013}},
		{"definition of an offset's mark", "marks:\n  r: {definition: 12 mm}\nreadings:\n- {tie: A B, is: 8}\n- {offset: r, line: A B, at: 3, left: 0, sigma: 5 mm}\n", []float64{0.013, 0.013}},
		{"definition of a sight's mark, not of the set-up", "marks:\n  r: {definition: 3 mm}\nreadings:\n- {seen: r, setup: T, at: [1, 2], sigma: 4 mm}\n", []float64{0.005, 0.005}},
		{"a mark's own nought before its line's", "marks:\n  r: {definition: 0}\nreadings:\n- {tie: A r, is: 8, sigma: 4 mm}\nlines:\n  rim: {definition: 3 mm, runs: [{straight: [r, s]}]}\n", []float64{0.004}},
		{"definition of a peg that was moved", "marks:\n  A: {definition: 3 mm}\nreadings:\n- {tie: A r, is: 8}\n- {moved: A}\n- {tie: A r, is: 8, sigma: 4 mm}\n", []float64{0.005}},
		{"default of a turn", "readings:\n- {turn: A B, at: C, is: 4}\n", []float64{0.02 * deg}},
		{"no tool and no definition in a turn", tape + "marks:\n  A: {definition: 3 mm}\nreadings:\n- {turn: A B, at: C, is: 4, tool: tape}\n", []float64{0.02 * deg}},
		{"rule of a turn", "rules: {sigma: {turn: 0.5}}\nreadings:\n- {turn: A B, at: C, is: 4}\n", []float64{0.5 * deg}},
		{"default of a straight", tape + "readings:\n- {straight: A B C, tool: tape}\n", []float64{0.005, 0.005, 0.005}},
		{"own of an arc", "readings:\n- {arc: A B C D, sigma: [1 mm, 2 mm, 3 mm, 4 mm]}\n", []float64{0.001, 0.002, 0.003, 0.004}},
		{"an arc of a drawing", "readings:\n- {arc: A B C D, class: drawing}\n", []float64{0.15, 0.15, 0.15, 0.15}},
		{"own of a square", "readings:\n- {square: A B C, sigma: 0.05}\n", []float64{0.05 * deg}},
		{"default of a square", "readings:\n- {square: A B C}\n", []float64{0.1 * deg}},
		{"default of a bow, with pointing", "marks:\n  A: {definition: 12 mm}\nreadings:\n- {bow: A B, is: 0.3}\n", []float64{0.013}},
		{"a bow by tape", tape + "readings:\n- {bow: A B, is: 0.3, tool: tape}\n", []float64{h(0.003, 0.00006)}},
	} {
		n, _ := built(t, c.text)
		got := n.Obs[len(n.Obs)-1].SD
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for k := range got {
			if math.Abs(got[k]-c.want[k]) > 1e-12 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
				break
			}
		}
	}
}
