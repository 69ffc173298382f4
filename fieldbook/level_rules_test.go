package fieldbook_test

import (
	"math"
	"strings"
	"testing"

	"brimline/fieldbook"
)

// Limits of loops: Elementary Surveying, 14th edition, problem 5.37, with the coefficients of the
// Federal Geodetic Control Committee (1984): 53.7, 21.9 and 14.7 mm. The garden loop of 60 m: 12·√0.06.
func TestLevelRuleLimits(t *testing.T) {
	for _, c := range []struct {
		rule           string
		km, mm, within float64
	}{
		{"third order 12 mm", 20, 53.7, 0.06}, {"first order 1 4 mm", 30, 21.9, 0.06}, {"third order 12 mm", 1.5, 14.7, 0.06},
		{"third order 12 mm", 0.06, 2.9, 0.06}, {"practical 3 mm", 0.06, 3, 1e-9}, {"practical 3 mm", 4, 3, 1e-9}, {"builders 15 mm", 0.25, 7.5, 1e-9},
	} {
		b, err := fieldbook.Parse("x", []byte("brimline: 1\nrules: {level_loop: "+c.rule+"}\n"))
		if err != nil {
			t.Fatal(err)
		}
		if got := 1000 * b.LevelRule().Limit(1000*c.km); math.Abs(got-c.mm) > c.within {
			t.Errorf("%s over %v km: %v mm; want %v", c.rule, c.km, got, c.mm)
		}
	}
}

func TestOwnLevelRule(t *testing.T) {
	b, err := fieldbook.Parse("x", []byte("brimline: 1\nrules: {level_loop: {name: ours, per_root_km: 20 mm}}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if r := b.LevelRule(); r.Name != "ours" || math.Abs(r.Limit(250)-0.010) > 1e-12 || r.Source != "this book, no source" {
		t.Errorf("%+v", r)
	}
	var none fieldbook.Book
	if r := none.LevelRule(); r.Name != fieldbook.LevelRules[0].Name {
		t.Errorf("where none is said: %+v", r)
	}
}

// Every rule says where it comes from; names are told apart; each has one figure.
func TestRuleTables(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range fieldbook.LevelRules {
		if seen[r.Name] || r.Source == "" || (r.Flat > 0) == (r.PerRootKM > 0) {
			t.Errorf("%+v", r)
		}
		seen[r.Name] = true
	}
	for _, r := range fieldbook.DepthRules {
		if seen[r.Name] || r.Edition == "" || len(r.Limits) == 0 {
			t.Errorf("%+v", r)
		}
		seen[r.Name] = true
		for _, l := range r.Limits {
			if l.Clause == "" || l.Source == "" || !(l.Figure > 0) || strings.HasSuffix(l.What, "slope") == l.Least {
				t.Errorf("%s: %+v", r.Name, l)
			}
		}
	}
	// Slopes in percent as quoted of the code: 14.2857, 33.3333, 10, 8.3333 (ISPSC 2012).
	percent := func(name string, i int) float64 {
		b := fieldbook.Book{Rules: fieldbook.Rules{Depths: name}}
		r, _ := b.DepthRule()
		return 100 * r.Limits[i].Figure
	}
	for _, c := range []struct{ got, want float64 }{
		{percent("ispsc 2012 residential", 0), 14.2857}, {percent("ispsc 2012 residential", 1), 33.3333},
		{percent("ispsc 2012 public class C", 0), 10}, {percent("ispsc 2012 public class B", 0), 8.3333}} {
		if math.Abs(c.got-c.want) > 6e-5 {
			t.Errorf("slope of %v %%; want %v", c.got, c.want)
		}
	}
}
