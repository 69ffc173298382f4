package main

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/survey"
)

// five readings, three of them mistaken: a foot, a tenth below what shows, and one of no kind.
func spoiledCase() (simulate.Case, []simulate.Mistake) {
	c := simulate.Case{Pegs: []string{"A", "B"}}
	marks := []string{"r1", "r2", "r2", "r3", "r4"}
	for i := range 5 {
		c.Readings = append(c.Readings, simulate.Reading{N: fmt.Sprint(i + 1), Marks: []string{"A", marks[i]}})
	}
	hit := func(i int, was, now, shows float64) []simulate.Hit {
		return []simulate.Hit{{Index: i - 1, N: fmt.Sprint(i), Was: was, Now: now, Detectable: shows}}
	}
	return c, []simulate.Mistake{
		{Kind: "foot", Hits: hit(1, 5, 5.3048, 0.03)},
		{Kind: "tenth", Hits: hit(2, 5, 5.1, 0.09)},
		{Kind: simulate.Unlisted, Hits: hit(3, 5, 5.4, 0.03)},
	}
}

func answer(states ...string) *survey.Result {
	r := &survey.Result{}
	for i, s := range states {
		r.Readings = append(r.Readings, survey.Reading{N: fmt.Sprint(i + 1), State: s})
	}
	return r
}

func likely(code string, value float64) []survey.Likely {
	if math.IsNaN(value) {
		return []survey.Likely{{Code: code}}
	}
	return []survey.Likely{{Code: code, Value: &value}}
}

func TestJudge(t *testing.T) {
	c, planted := spoiledCase()
	good := answer("suspect", "suspect", "doubtful", "suspect", "doubtful")
	good.Readings[0].Likely = likely("foot", 5.0019)
	good.Readings[2].Likely = likely("unknown", math.NaN())
	far := answer("suspect", "good", "suspect", "good", "good")
	far.Readings[0].Likely = likely("foot", 5.0021)
	far.Readings[2].Likely = likely("unknown", 5)
	for _, x := range []struct {
		name string
		r    *survey.Result
		want rates
	}{
		{"all shown", good, rates{tried: 1, solved: 1, planted: 3, counts: 2, shown: 2, suspect: 1, alone: 1, sole: 1, named: 1, rightCode: 1,
			other: 1, leftOpen: 1, wrongSuspect: 2, wronglyNamed: 1, good: 2, goodSuspect: 1, goodDoubtful: 1}},
		{"value too far, value forced", far, rates{tried: 1, solved: 1, planted: 3, counts: 2, shown: 2, suspect: 2, alone: 1, sole: 1, named: 1,
			other: 1, wrongSuspect: 2, good: 2}},
		{"nothing shown", answer("good", "good", "lone", "good", "good"), rates{tried: 1, solved: 1, planted: 3, counts: 2, alone: 1, good: 2}},
		{"unsolved", nil, rates{tried: 1, planted: 3, counts: 2, alone: 1, wronglyNamed: 3, good: 2, goodSuspect: 2, goodDoubtful: 2}},
	} {
		got := judge(c, planted, x.r)
		got.missed = nil
		if fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", x.want) {
			t.Errorf("%s:\n got %+v\nwant %+v", x.name, got, x.want)
		}
		sum := got
		sum.add(got)
		if sum.tried != 2*got.tried || sum.good != 2*got.good || sum.rightCode != 2*got.rightCode || sum.goodDoubtful != 2*got.goodDoubtful {
			t.Errorf("%s: twice %+v is %+v", x.name, got, sum)
		}
	}
}

func TestOverlap(t *testing.T) {
	m := simulate.Mistake{Hits: []simulate.Hit{{N: "3"}, {N: "4"}, {N: "5"}, {N: "6"}}}
	for _, x := range []struct {
		said []string
		want float64
	}{
		{[]string{"3", "4", "5", "6"}, 1}, {[]string{"4", "5", "6"}, 0.75}, {[]string{"2", "3", "4", "5", "6"}, 0.8}, {[]string{"9"}, 0}, {nil, 0},
	} {
		if got := overlap(survey.Mistake{Readings: x.said}, m); math.Abs(got-x.want) > 1e-12 {
			t.Errorf("%v: %v, want %v", x.said, got, x.want)
		}
	}
}

func TestAtMarks(t *testing.T) {
	test := func(name, state string) survey.Test { return survey.Test{Name: name, State: state} }
	for _, x := range []struct {
		whole string
		tests []survey.Test
		want  string
	}{
		{"unfit", nil, "unfit"},
		{"ready", []survey.Test{test(between, "ready")}, "unfit"},
		{"unfit", []survey.Test{test("marks", "ready"), test(between, "unfit")}, "ready"},
		{"unproven", []survey.Test{test("marks", "ready"), test(between, "ready")}, "unproven"}, // many small odds together
		{"unproven", []survey.Test{test("marks", "ready"), test("mistakes", "unproven")}, "unproven"},
		{"unfit", []survey.Test{test("mistakes", "unproven"), test("marks", "unfit")}, "unfit"},
	} {
		r := &survey.Result{Shape: survey.Shape{State: x.whole, Tests: x.tests}}
		if got, _ := atMarks(r); got != x.want {
			t.Errorf("%s, %v: %s, want %s", x.whole, x.tests, got, x.want)
		}
	}
}

// A report says MISSED for a figure outside its band, for a banded share of nothing, and holds
// otherwise.
func TestReport(t *testing.T) {
	for _, x := range []struct {
		name string
		add  func(r *report)
		ok   bool
	}{
		{"above", func(r *report) { r.atLeast("a", "b", 98, 100, 98) }, true},
		{"below", func(r *report) { r.atLeast("a", "b", 97, 100, 98) }, false},
		{"most", func(r *report) { r.atMost("a", "b", 1, 100, 0.5) }, false},
		{"nothing", func(r *report) { r.atLeast("a", "b", 0, 0, 98) }, false},
		{"no band", func(r *report) { r.plain("a", "b", 0, 0) }, true},
		{"between", func(r *report) { r.share("a", "b", 95, 100, 94, 96) }, true},
		{"infinite", func(r *report) { r.figure("a", "b", math.NaN(), "", math.NaN(), 0.5) }, false},
	} {
		r := &report{}
		x.add(r)
		var out strings.Builder
		if ok := r.print(&out); ok != x.ok || strings.Contains(out.String(), "MISSED") == x.ok {
			t.Errorf("%s: %v\n%s", x.name, ok, out.String())
		}
	}
}

// Pools are answered in order, each once.
func TestPoolsKeepOrder(t *testing.T) {
	for k, v := range pools(100, func(k int) int { return k * k }) {
		if v != k*k {
			t.Fatalf("answer %d is %d", k, v)
		}
	}
}

// The ranges of seeds of the sections do not meet each other, nor those for tuning.
func TestSeedsAreApart(t *testing.T) {
	for i, s := range sections {
		if s.seed < tuneSeeds+100_000 {
			t.Errorf("%s begins at %d", s.name, s.seed)
		}
		if i > 0 && s.seed < sections[i-1].seed+10_000_000 {
			t.Errorf("%s begins at %d, %s at %d", s.name, s.seed, sections[i-1].name, sections[i-1].seed)
		}
	}
}

// Ways of taping: the longest first; at random each pair once, pegs too or not.
func TestWays(t *testing.T) {
	c := simulate.Visit(1, simulate.Shapes[0], afterTwoPegs)
	rim, all := pairsOf(c, c.Order), pairsOf(c, everyMark(c))
	first, last := longest(c)(c, nil, 0), longest(c)(c, nil, len(rim)-1)
	if far, near := c.Truth[first[0]].Dist(c.Truth[first[1]]), c.Truth[last[0]].Dist(c.Truth[last[1]]); far <= near || near < 0.3 {
		t.Errorf("first %v of %.2f m, last %v of %.2f m", first, far, last, near)
	}
	if longest(c)(c, nil, len(rim)) != nil {
		t.Error("more pairs than there are")
	}
	if more := len(all) - len(rim); more != 2*len(c.Order)+1 {
		t.Errorf("%d pairs with a peg, of %d marks", more, len(c.Order))
	}
	for _, x := range []struct {
		marks func(simulate.Case) []string
		pairs int
	}{{everyMark, len(all)}, {func(c simulate.Case) []string { return c.Order }, len(rim)}} {
		seen := map[string]bool{}
		way := random(x.marks)(c)
		for k := range x.pairs {
			p := way(c, nil, k)
			seen[p[0]+" "+p[1]] = true
		}
		if len(seen) != x.pairs || way(c, nil, x.pairs) != nil {
			t.Errorf("%d pairs of %d", len(seen), x.pairs)
		}
	}
}
