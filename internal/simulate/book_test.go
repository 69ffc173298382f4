package simulate_test

import (
	"math"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
)

// Every book is a field book without faults, and says of its readings what the case says.
func TestBooksParse(t *testing.T) {
	check := func(c simulate.Case) {
		b, err := fieldbook.Parse("case.yaml", c.Book)
		if err != nil {
			t.Fatalf("%s: %v", title(c), err)
		}
		var taken []fieldbook.Taken
		for _, r := range b.Readings {
			if r.Kind != "" {
				taken = append(taken, r)
			}
		}
		if len(taken) != len(c.Readings) || len(b.Tools) != len(c.Tools) {
			t.Fatalf("%s: %d readings and %d tools of %d and %d", title(c), len(taken), len(b.Tools), len(c.Readings), len(c.Tools))
		}
		for i, r := range taken {
			same(t, c, r, c.Readings[i])
		}
		if said := len(b.Sides) == 1; said != (c.Side != nil) || (said && (b.Sides[0].Left != c.Side.Left || b.Sides[0].Mark != c.Side.Mark)) {
			t.Fatalf("%s: sides %v, want %v", title(c), b.Sides, c.Side)
		}
		if len(b.Lines) != 1 || len(b.Lines[0].Runs) != len(c.Rim.Runs) || b.Lines[0].Definition != c.Rim.Definition {
			t.Fatalf("%s: lines %+v", title(c), b.Lines)
		}
		for _, f := range b.Findings {
			t.Fatalf("%s: finding %s: %s", title(c), f.Code, f.Text(nil))
		}
	}
	every(8, check)
	every(2, func(c simulate.Case) {
		w, _ := simulate.Wrong(c, c.Seed, 0.1)
		check(w)
		check(simulate.Pool(c.Seed, c.Shape, c.Method, simulate.Options{Exact: true}))
	})
}

func same(t *testing.T, c simulate.Case, r fieldbook.Taken, want simulate.Reading) {
	t.Helper()
	if r.N != want.N || r.Kind != want.Kind || r.Tool != want.Tool || r.Setup != want.Setup || r.Flip != want.Flip || len(r.Values) != len(want.Typed) {
		t.Fatalf("%s: reading %+v, want %+v", title(c), r, want)
	}
	for k, m := range want.Marks {
		if r.Marks[k] != m {
			t.Fatalf("%s: reading %s has marks %v, want %v", title(c), r.N, r.Marks, want.Marks)
		}
	}
	for k, v := range r.Values {
		if math.Abs(v.Metres-want.Typed[k]) > 1e-12 {
			t.Fatalf("%s: reading %s part %s is %v, want %v", title(c), r.N, v.Part, v.Metres, want.Typed[k])
		}
	}
}
