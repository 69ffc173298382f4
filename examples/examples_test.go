package examples_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"brimline/examples"
	"brimline/fieldbook"
)

var update = flag.Bool("update", false, "write the books and truths anew")

// makers make the examples, by folder.
var makers = map[string]func(*testing.T) (book, truth []byte){
	"plain-plum":  plum,
	"bean-five":   bean,
	"double-moon": moon,
	"oval-oath":   oath,
	"cold-claim":  claim,
	"long-drop":   drop,
	"corner-cat":  cornerCat,
}

// The files are those that the makers write; -update writes them.
func TestFilesAreThoseMade(t *testing.T) {
	for _, e := range examples.All() {
		book, truth := makers[e.Name](t)
		if *update {
			write(t, filepath.Join(e.Name, "book.yaml"), book)
			write(t, filepath.Join(e.Name, "truth.json"), truth)
			continue
		}
		if !bytes.Equal(e.Book, book) || !bytes.Equal(e.Truth, truth) {
			t.Errorf("%s: the files differ from what its maker writes; run with -update", e.Name)
		}
	}
	if len(examples.All()) != len(makers) {
		t.Errorf("%d examples, %d makers", len(examples.All()), len(makers))
	}
}

func write(t *testing.T, name string, b []byte) {
	t.Helper()
	if err := os.WriteFile(name, b, 0o644); err != nil {
		t.Fatal(err)
	}
}

type sheet struct {
	Marks           map[string][2]float64
	Area, Perimeter float64
	Runs            []truthRun
	Planted         []planted
	Expected        []expected
	Disagrees       []string           // check readings that are right where a line of the book is not
	Outline         [][3]float64       // the true rim, clockwise: where each piece begins, its bulge
	Lines           map[string]float64 // true lengths of other lines
	Free            map[string]float64 // free deck at a mark

	Heights, Surfaces map[string]float64 // above the first mark
	Volume            float64            // below the first surface
}

// Closed formulas of each shape, computed outside this program.
func TestTruthHasTheKnownFigures(t *testing.T) {
	lean := 0.2 * math.Pi / 180
	for _, x := range []struct {
		name            string
		marks, pegs     int
		area, perimeter float64
		radii           []float64
	}{
		{"plain-plum", 16, 2, 9.144 * 4.572 * math.Cos(lean), 2 * (9.144 + 4.572), nil},
		{"bean-five", 28, 3, 36.73126037, 24.17693144, []float64{1.5, 1.8, 2.4, 6.1}},
		{"double-moon", 26, 3, 8.5*5 + 2*3.11949068, 2*8.5 + 4*0.8 + 2*4.51677785, []float64{1.781}},
		{"cold-claim", 14, 5, 8.0 * 4.0, 2 * (8.0 + 4.0), nil},
		{"long-drop", 25, 3 + 29, 10.97*5.49 - 2*1.22*1.19, 2*(10.97-2*1.22) + 2*(5.49-2*1.19) + 4*math.Hypot(1.22, 1.19), nil},
		{"corner-cat", 34, 11 + 10 + 24, 12*4 + 5*3.5 - (4-math.Pi)/4*(5*0.6*0.6-0.3*0.3), 2*(12+7.5) - (4-math.Pi)/2*(5*0.6+0.3), []float64{0.6, 0.3}},
		{"oval-oath", 24, 2, 40.79616353, 24.34819685, []float64{2.2, 12.032143}},
	} {
		s := truthOf(t, x.name)
		if math.Abs(s.Area-x.area) > 1e-6 || math.Abs(s.Perimeter-x.perimeter) > 1e-6 {
			t.Errorf("%s: area %v, perimeter %v; want %v, %v", x.name, s.Area, s.Perimeter, x.area, x.perimeter)
		}
		if len(s.Marks) != x.marks+x.pegs {
			t.Errorf("%s: %d places", x.name, len(s.Marks))
		}
		for _, r := range s.Runs {
			found := r.Kind == "straight"
			for _, want := range x.radii {
				found = found || math.Abs(r.Radius-want) < 1e-6
			}
			if !found {
				t.Errorf("%s: a run %+v", x.name, r)
			}
		}
	}
	if b := truthOf(t, "plain-plum").Marks["B"]; math.Abs(b[0]-6.096) > 1e-9 || b[1] != 0 {
		t.Errorf("plain-plum: base %v", b)
	}
}

func truthOf(t *testing.T, name string) sheet {
	t.Helper()
	for _, e := range examples.All() {
		if e.Name == name {
			var s sheet
			if err := json.Unmarshal(e.Truth, &s); err != nil {
				t.Fatal(err)
			}
			return s
		}
	}
	t.Fatalf("no example %s", name)
	return sheet{}
}

func TestPages(t *testing.T) {
	banned := regexp.MustCompile(`(?i)\b(safe|safety|compliant|certified)\b`)
	for _, e := range examples.All() {
		if e.Title == "" || len(e.Page) < 600 {
			t.Errorf("%s: title %q, a page of %d bytes", e.Name, e.Title, len(e.Page))
		}
		for _, b := range [][]byte{e.Page, e.Book, e.Truth} {
			if w := banned.Find(b); w != nil {
				t.Errorf("%s says %q", e.Name, w)
			}
		}
	}
}

// Each book parses without a fault or a finding.
func TestBooksParse(t *testing.T) {
	for _, e := range examples.All() {
		b, err := fieldbook.Parse(e.Name+".yaml", e.Book)
		if err != nil {
			t.Errorf("%v", err)
		}
		for _, f := range b.Findings {
			t.Errorf("%s: %s: %s", e.Name, f.Code, f.Text(nil))
		}
	}
}
