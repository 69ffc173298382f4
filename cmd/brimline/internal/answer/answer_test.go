package answer_test

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"brimline/cmd/brimline/internal/answer"
	"brimline/survey"
	"brimline/unit"
)

func at(v float64) *float64 { return &v }

// triangle is a made-up result: two pegs, an edge mark that a third reading controls, one that
// nothing controls and one without a place.
func triangle() *survey.Result {
	return &survey.Result{
		Book: survey.BookRef{Name: "Larch"},
		Statistics: survey.Statistics{Readings: 6, Unknowns: 5, Redundancy: 1, ReferenceSD: at(1),
			ChiSquare: survey.ChiSquare{Value: 1.2, Low: at(0.001), High: at(5.02), Pass: true}},
		Marks: map[string]*survey.Mark{
			"A":  {X: at(0), Y: at(0), Controlled: true, Hidden: at(0)},
			"r1": {X: at(1.2), Y: at(3.4), Ellipse95: &survey.Ellipse{Major: 0.0081, Minor: 0.005}, Controlled: true, Hidden: at(0.0402)},
			"r2": {X: at(-2.5), Y: at(3), Ellipse95: &survey.Ellipse{Major: 0.012}, Alternatives: []survey.Place{{X: -2.5, Y: -3}}},
			"r3": {},
		},
		MarkOrder: []string{"A", "r1", "r2", "r3"},
		Readings: []survey.Reading{
			{N: "1", Kind: "tie", Marks: []string{"A", "r1"}, Value: 3.606, Text: "3.606", Residual: at(-0.0012), W: at(-0.42), Detectable: at(0.0618), State: "good"},
			{N: "2", Kind: "tie", Marks: []string{"A", "r2"}, Value: 3.905, Text: "3.905", Residual: at(0), W: at(0), State: "lone"},
			{N: "3", Kind: "offset", Marks: []string{"r1", "A", "B"}, State: "good", Parts: []survey.Part{
				{Part: "at", Value: 1.2, Text: "1.20", Residual: at(0.003), W: at(0.2), Detectable: at(0.05)},
				{Part: "left", Value: 3.4, Text: "3.40", Residual: at(0.001), W: at(0.1), Detectable: at(0.03)}}},
			{N: "4", Kind: "tie", Marks: []string{"A", "r1"}, Value: 4.606, Text: "4.606", State: "struck", Why: "metre"},
		},
		Lines: map[string]*survey.Line{"rim": {Edge: "nose", Closed: true, Length: at(24.177), LengthSD: at(0.0101), Area: at(36.731), AreaSD: at(0.0301),
			Runs: []survey.LineRun{{Kind: "arc", From: "r1", To: "r2", Length: 2.356, LengthSD: 0.004, Radius: at(1.5), RadiusSD: at(0.01), Sweep: at(-90)}}}},
		LineOrder: []string{"rim"},
		Shape:     survey.Shape{State: "unproven", Tolerance: 0.025, Worst: at(0.0183), At: "r2", Why: []string{"nothing controls r2"}},
		Findings:  []survey.Finding{{Severity: "ask", Text: "the readings do not fix r3", Cure: "tape A to r3"}},
	}
}

func TestTheWordComesFirst(t *testing.T) {
	for _, state := range []string{"ready", "unproven", "unfit"} {
		r := triangle()
		r.Shape.State = state
		if got := answer.Text(r, unit.M, "larch.yaml"); !strings.HasPrefix(got, "Larch: "+state+"\n") {
			t.Errorf("%s: begins %q", state, got[:40])
		}
	}
}

func TestWhatAMeasurerReads(t *testing.T) {
	got := answer.Text(triangle(), unit.M, "larch.yaml")
	for _, want := range []string{
		"Least known across an outline: ± 19 mm (95 %), at r2.",
		"- Nothing controls r2.\n",
		"- ask: the readings do not fix r3.\n  > Tape A to r3.\n",
		"6 read values for 5 unknowns: 1 to spare.",
		"An error of up to 62 mm could hide in the tie A r1 (reading 1)",
		"A hidden error could move r1 by up to 41 mm",
		"Nothing would show a mistake in 1 reading: 2.",
		"1 mark not controlled by a second reading: r2.",
		"rim (nose): length 24.177 m ± 20 mm, area 36.73 m² ± 0.06 m² (95 %).",
		"arc   r1    r2   2.356  8   1.500  20  −90.0°",
		"r1     1.200  3.400   9      41",
		"r2    −2.500  3.000  12       –  not controlled; or −2.500, −3.000",
		"not fixed yet",
		"1  tie A r1",
		"any  ◧ lone",
		"struck: metre",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// A ± is a promise: printed in any unit it is never less than the result's own.
func TestPlusIsRoundedUp(t *testing.T) {
	r := triangle()
	r.Marks["r1"].Ellipse95.Major = 0.0080001
	for u, want := range map[unit.Unit]string{unit.M: "  9  ", unit.CM: "  9  ", unit.FT: "3/8″"} {
		if got := answer.Text(r, u, "larch.yaml"); !strings.Contains(row(got, "  r1 "), want) {
			t.Errorf("%s: %q does not hold %q", u, row(got, "  r1 "), want)
		}
	}
}

func TestFeetJobsReadInFeet(t *testing.T) {
	got := answer.Text(triangle(), unit.FT, "larch.yaml")
	for _, want := range []string{"3′ 11 1/4″", "395.4 ft²", "79′ 3 7/8″"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// An empty book has an answer too, and an ordinary one keeps to 80 columns.
func TestFitsAndNeverFails(t *testing.T) {
	empty := &survey.Result{Shape: survey.Shape{State: "unproven", Tolerance: 0.025}}
	for _, r := range []*survey.Result{empty, triangle()} {
		for _, l := range strings.Split(answer.Text(r, unit.M, "larch.yaml"), "\n") {
			if utf8.RuneCountInString(l) > 80 || strings.TrimRight(l, " ") != l {
				t.Errorf("line of %d: %q", utf8.RuneCountInString(l), l)
			}
		}
	}
}

// What a book says cannot drive the reader's terminal, nor break a row in two.
func TestNoControlCharacters(t *testing.T) {
	r := triangle()
	r.Book.Name = "Lar\x1b[2Jch\u202e"
	r.Readings[3].Why = "me\ntre\r\x9b31m"
	r.Findings[0].Text = "odd\x07 word"
	r.Marks["\x1b]0;"], r.MarkOrder = r.Marks["r3"], append(r.MarkOrder, "\x1b]0;")
	got := answer.Text(r, unit.M, "larch.yaml")
	for _, c := range got {
		if unicode.IsControl(c) && c != '\n' || c == '\u202e' {
			t.Errorf("holds %q", c)
		}
	}
	if strings.Count(got, "\n") != strings.Count(answer.Text(triangle(), unit.M, "larch.yaml"), "\n")+1 { // one mark more
		t.Errorf("rows broken in\n%s", got)
	}
}

// row is the first line that begins so.
func row(text, begin string) string {
	for _, l := range strings.Split(text, "\n") {
		if strings.HasPrefix(l, begin) {
			return l
		}
	}
	return ""
}

// Nobody read a figure of what is asserted: each of its rows has a dash there, as its head.
func TestAssertedRowsHaveNoFigureRead(t *testing.T) {
	r := triangle()
	for _, kind := range []string{"straight", "arc"} {
		r.Readings = append(r.Readings, survey.Reading{N: kind, Kind: kind, Marks: []string{"r1", "r2", "r3"}, State: "good", Parts: []survey.Part{
			{Part: "r1", Residual: at(0.004)}, {Part: "r2", Residual: at(0.004)}}})
	}
	got := answer.Text(r, unit.M, "larch.yaml")
	for _, want := range []string{"straight r1 r2 r3, r1        –    4", "arc r1 r2 r3, r1        –    4"} {
		if !strings.Contains(strings.Join(strings.Fields(got), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	for _, l := range strings.Split(got, "\n") {
		if f := strings.Fields(l); len(f) > 1 && (f[0] == "straight" || f[0] == "arc" || f[0] == "r2" && f[1] == "0.000") && strings.Contains(l, "0.000") && !strings.Contains(l, "90.0") {
			t.Errorf("a figure stands as read: %q", l)
		}
	}
}

// With few readings to spare the lower limit of chi-square says nothing, and is not quoted.
func TestFewSpareReadingsAreNotPraised(t *testing.T) {
	r := triangle()
	for n, want := range map[int]string{1: "as well as their stated precision says (chi-square 0.0, expected below 5.0)", 5: "better than their stated precision says (chi-square 0.0, expected between 0.8 and 12.8)"} {
		r.Statistics.Redundancy = n
		r.Statistics.ChiSquare = survey.ChiSquare{Value: 0, Low: at(map[int]float64{1: 0.001, 5: 0.831}[n]), High: at(map[int]float64{1: 5.02, 5: 12.83}[n])}
		if got := strings.Join(strings.Fields(answer.Text(r, unit.M, "larch.yaml")), " "); !strings.Contains(got, want) {
			t.Errorf("%d to spare: no %q in\n%s", n, want, got)
		}
	}
}

// Odds that are next to nothing, and figures that must not be used, are never "0 %".
func TestLeavingIsNeverWithoutRisk(t *testing.T) {
	way := survey.Way{Code: "foot", Odds: 1e-20}
	for want, l := range map[string]survey.Leaving{
		"the shape: under 0.1 % that it is spoilt.": {Order: "shape", Odds: 1e-20, Ways: []survey.Way{way}},
		"the shape: its figures must not be used.":  {Order: "shape", Odds: 1},
		"the shape: there is nothing to judge yet.": {Order: "shape"},
		"winter cover: 40 % that it is spoilt.":     {Order: "winter cover", Odds: 0.4, Ways: []survey.Way{way}},
	} {
		if got := answer.Leave(triangle(), []survey.Leaving{l}, unit.M); !strings.Contains(got, want) || strings.Contains(got, " 0 %") {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}
