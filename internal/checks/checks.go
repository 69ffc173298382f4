// Package checks reads the outside checks in testdata/checks for tests of other packages:
// published examples with inputs, answers and absolute tolerances, each naming its source.
package checks

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
)

// Item is one outside check. Expected answers are in the units of their source.
type Item struct {
	ID, Topic, Title, Source string
	Status                   string // found, inputs-found, memory or definition: testdata/checks/SOURCE.md
	Inputs, Expected         Values
	tolerance                map[string]float64
	t                        testing.TB
}

type item struct {
	ID        string             `json:"id"`
	Topic     string             `json:"topic"`
	Title     string             `json:"title"`
	Source    string             `json:"source"`
	Status    string             `json:"source_status"`
	Inputs    map[string]any     `json:"inputs"`
	Expected  map[string]any     `json:"expected"`
	Tolerance map[string]float64 `json:"tolerance"`
}

// Load gives the items by id; a file that is missing or faulty fails the test.
func Load(t testing.TB) map[string]Item {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(root(t), "testdata", "checks", "checks-open.json"))
	if err != nil {
		t.Fatalf("outside checks: %v", err)
	}
	var file struct {
		Items []item `json:"items"`
	}
	if err := json.Unmarshal(src, &file); err != nil {
		t.Fatalf("outside checks: %v", err)
	}
	items := map[string]Item{}
	for _, i := range file.Items {
		if _, twice := items[i.ID]; twice || i.Source == "" {
			t.Fatalf("outside check %q: twice, or without a source", i.ID)
		}
		items[i.ID] = Item{
			i.ID, i.Topic, i.Title, i.Source, i.Status,
			Values{i.ID + " inputs", i.Inputs, t}, Values{i.ID + " expected", i.Expected, t}, i.Tolerance, t,
		}
	}
	return items
}

// Get is Load of one item, which must be there.
func Get(t testing.TB, id string) Item {
	t.Helper()
	i, ok := Load(t)[id]
	if !ok {
		t.Fatalf("outside check %q is not in the file", id)
	}
	return i
}

// root is the folder of go.mod at or above the folder the test runs in.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod at or above the folder of the test")
		}
		dir = up
	}
}

// Tolerance is the absolute one of a key, else the item's default "*", else 0: exact.
func (i Item) Tolerance(key string) float64 {
	if tol, ok := i.tolerance[key]; ok {
		return tol
	}
	return i.tolerance["*"]
}

// Compare reports every number under an expected key that got misses by more than the key's
// tolerance. Lists and lists of lists are compared in their order, flattened.
func (i Item) Compare(key string, got ...float64) {
	i.t.Helper()
	for _, fault := range i.misses(key, got) {
		i.t.Errorf("%s (%s) %s: %s", i.ID, i.Title, key, fault)
	}
}

func (i Item) misses(key string, got []float64) []string {
	want := i.Expected.Flat(key)
	if len(got) != len(want) {
		return []string{fmt.Sprintf("%d numbers, want %d", len(got), len(want))}
	}
	var out []string
	tol := i.Tolerance(key)
	for k := range want {
		if d := math.Abs(got[k] - want[k]); !(d <= tol) {
			out = append(out, fmt.Sprintf("[%d] %.12g, want %.12g: off by %.3g, allowed %.3g", k, got[k], want[k], d, tol))
		}
	}
	return out
}
