package draft_test

import (
	"fmt"
	"math"

	"brimline/plane"
	"brimline/survey"
	"brimline/unit"
)

// trusted are the pools on which mistakes, checks and the next tape are drawn.
func trusted() []fixture {
	a, b, c := plane.Point{}, plane.Point{X: 7}, plane.Point{X: 5, Y: 9}
	return []fixture{
		trust("28 marks with mistakes", rounded(1, 2.5, 9, 5, 1.2, 28, a, b, c), unit.M),
		trust("60 marks with mistakes", rounded(1, 2.5, 9, 5, 1.2, 60, a, b), unit.M),
		trust("24 marks with mistakes in feet", rounded(1, 2.5, 9.144, 4.572, 1.2, 24, a, b, c), unit.FT),
	}
}

// trust is a pool with a reading named, a group of two that cannot be told apart, checks that agree
// and one that does not, a correction, readings of the other kinds, and a proposal.
func trust(name string, p pool, u unit.Unit) fixture {
	f := makeOf(name, p, u)
	r := f.result
	odd(r, 8, "suspect", survey.Likely{Code: "metre", Cause: "one metre long", Value: ref(r.Readings[8].Value - 1), Probability: 0.93})
	group := 1
	for _, i := range []int{13, 20} {
		odd(r, i, "doubtful", survey.Likely{Code: "foot", Cause: "one foot short", Value: ref(r.Readings[i].Value + 0.3048), Probability: 0.46})
		r.Readings[i].Group = &group
	}
	far := r.Readings[20].Marks[1]
	r.Marks[far].Alternatives = []survey.Place{{X: *r.Marks[far].X + 0.35, Y: *r.Marks[far].Y + 0.5}}
	r.Marks[far].Controlled = false
	was := r.Readings[30]
	r.Readings[30].State, r.Readings[30].Why = "struck", fmt.Sprintf("replaced by %d", len(r.Readings)+1)
	add := func(x survey.Reading) {
		x.N = fmt.Sprint(len(r.Readings) + 1)
		r.Readings = append(r.Readings, x)
	}
	was.Text, was.As, was.Computed, was.State = "5.83", "5.10", true, "good"
	add(was)
	last := p.names[len(p.names)-1]
	for i, k := range [][2]string{{"r4", p.names[len(p.names)/2]}, {"r1", p.names[len(p.names)*5/8]}, {"r7", last}} {
		state, off := "agrees", 0.004
		if i == 1 {
			state, off = "disagrees", -0.062
		}
		d := between(r, k[0], k[1])
		add(survey.Reading{Kind: "tie", Marks: k[:], Tool: "tape", Value: d - off, Text: fmt.Sprintf("%.3f", d-off), Adjusted: ref(d), Residual: ref(off),
			SD: 0.005, W: ref(off / 0.006), Redundancy: ref(1), Detectable: ref(0.024), State: state, Check: true})
	}
	kinds(add)
	r.Mistakes = []survey.Mistake{{Code: "metre", Text: "reading 9 is one metre long", Readings: []string{"9"}, Edit: []survey.Edit{{N: "9", Value: ref(r.Readings[8].Value - 1)}}, Probability: 0.93}}
	r.Shape.Weakest = []survey.Weak{
		{Reading: "12", Mark: "r6", Error: ref(0.062), Move: ref(0.04), Text: "An error of up to 62 mm could hide in tie B–r6 and would move the edge there by 40 mm; tape r6–r17 to expose it."},
		{Reading: "2", Mark: "r1", Error: ref(0.048), Move: ref(0.031), Text: "An error of up to 48 mm could hide in tie B–r1 and would move the edge there by 31 mm; tape r1–r12 to expose it."},
	}
	to := p.names[len(p.names)/3]
	r.Next = []survey.Next{{Kind: "tie", Marks: []string{"A", to}, Text: "tape A to " + to + ", about 7.61", About: ref(between(r, "A", to)), Order: "shape", Gain: 0.011, Unit: "m",
		Minutes: 1.5, Alone: true, Why: "would control " + to}}
	return f
}

func odd(r *survey.Result, i int, state string, why ...survey.Likely) {
	r.Readings[i].State, r.Readings[i].Likely = state, why
	r.Readings[i].Residual, r.Readings[i].W = ref(-1.002), ref(-88.1)
}

func between(r *survey.Result, a, b string) float64 {
	return math.Hypot(*r.Marks[a].X-*r.Marks[b].X, *r.Marks[a].Y-*r.Marks[b].Y)
}

// kinds adds a reading of each of the other kinds: angles are in degrees.
func kinds(add func(survey.Reading)) {
	add(survey.Reading{Kind: "turn", Marks: []string{"A", "r5", "r1"}, Value: 42.2519, Text: "42.2519", Adjusted: ref(42.2541), Residual: ref(0.0022), SD: 0.01,
		W: ref(0.3), Redundancy: ref(0.4), Detectable: ref(0.065), State: "good"})
	add(survey.Reading{Kind: "square", Marks: []string{"A", "r1", "r2"}, Value: 90, Adjusted: ref(90.021), Residual: ref(0.021), SD: 0.05, W: ref(0.5), Redundancy: ref(0.4),
		Detectable: ref(0.32), State: "good"})
	add(survey.Reading{Kind: "straight", Marks: []string{"r1", "r2", "r3"}, Adjusted: ref(0.002), Residual: ref(0.002), SD: 0.005, W: ref(0.5), Redundancy: ref(0.4), Detectable: ref(0.031), State: "good"})
	add(survey.Reading{Kind: "arc", Marks: []string{"r4", "r5", "r6", "r7"}, Adjusted: ref(0.001), Residual: ref(0.001), SD: 0.005, W: ref(0.2), Redundancy: ref(0.4), Detectable: ref(0.031), State: "good"})
	add(survey.Reading{Kind: "bow", Marks: []string{"r2", "r4"}, Value: 0.3, Text: "0.300", Adjusted: ref(0.303), Residual: ref(0.003), SD: 0.003, W: ref(1.1), Redundancy: ref(0.4), Detectable: ref(0.019), State: "good"})
	add(survey.Reading{Kind: "offset", Marks: []string{"r4", "A", "B"}, State: "suspect", Likely: []survey.Likely{{Code: "unknown", Cause: "of no known kind", Probability: 0.97}}, Parts: []survey.Part{
		{Part: "at", Value: 3.2, Text: "3.20", Adjusted: ref(3.4), Residual: ref(0.2), SD: 0.01, W: ref(20), Redundancy: ref(0.9), Detectable: ref(0.05)},
		{Part: "left", Value: 1.15, Text: "1.15", Adjusted: ref(1.151), Residual: ref(0.001), SD: 0.01, W: ref(0.2), Redundancy: ref(0.9), Detectable: ref(0.05)}}})
}
