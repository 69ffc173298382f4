package rules

import (
	"slices"
	"strconv"
	"strings"
	"testing"
)

func TestPlantedSources(t *testing.T) {
	tr := loaded(t)
	for _, c := range plantedSources {
		t.Run(c.rule, func(t *testing.T) {
			p := tr.Plant(c.path, c.src)
			if c.rule != "types" && len(p.Faults) > 0 {
				t.Fatal(p.Faults)
			}
			i := slices.IndexFunc(Rules, func(r Rule) bool { return r.Name == c.rule })
			r := Rules[i]
			if !r.For(c.path) {
				t.Fatalf("the rule is not for %s", c.path)
			}
			compareLines(t, c.src, r.Check(p))
		})
	}
}

// compareLines wants a breach on each line that says so and on no other.
func compareLines(t *testing.T, src string, got []string) {
	t.Helper()
	for i, line := range strings.Split(src, "\n") {
		want := strings.HasSuffix(line, "// breach")
		if strings.HasSuffix(line, "// order-free:") {
			want = true
		}
		at := ":" + strconv.Itoa(i+1) + ":"
		found := slices.ContainsFunc(got, func(g string) bool { return strings.Contains(g, at) })
		// The name of a package and a type error have no line of the rule's own.
		if len(got) == 1 && !strings.Contains(got[0], ".go:") {
			found = want
		}
		if found != want {
			t.Errorf("line %d %q: breach %v, want %v (all: %q)", i+1, line, found, want, got)
		}
	}
}

// Every rule has a planted source, but for imports, which have a table of their own below.
func TestEveryRuleIsPlanted(t *testing.T) {
	for _, r := range Rules {
		if r.Name == "imports" {
			continue
		}
		if !slices.ContainsFunc(plantedSources, func(c struct{ rule, path, src string }) bool { return c.rule == r.Name }) {
			t.Errorf("rule %q has no planted source", r.Name)
		}
	}
}

func TestShellsAreNotPure(t *testing.T) {
	for path, want := range map[string]bool{
		"adjust": true, "plane": true, "write/pdf": true, "read/las": true, "examples": true, "website": true,
		"cmd/brimline": false, "bench/race": false, "web": false, "web/live": false, "store/sqlite": false, "internal/oracle": false,
	} {
		if pure(path) != want {
			t.Errorf("%s: pure %v", path, !want)
		}
	}
}
