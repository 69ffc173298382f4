package examples_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"brimline/examples"
	"brimline/fieldbook"
)

var update = flag.Bool("update", false, "write the books and truths anew")

// makers make the examples, by folder.
var makers = map[string]func(*testing.T) (book, truth []byte){
	"plain-plum": plum,
	"bean-five":  bean,
	"oval-oath":  oath,
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

// page is a book as YAML reads it.
type page struct {
	Tools map[string]struct {
		Sigma string
		PPM   float64
	}
	Lines    map[string]struct{ Definition string }
	Readings []struct {
		Tie, Side, Hand string
		Is              any
	}
}

// tape is the true distance of two marks and the sd of a tape between them by the book's words.
func (b page) tape(t *testing.T, p, q [2]float64, names []string) (d, sd float64) {
	t.Helper()
	d = math.Hypot(p[0]-q[0], p[1]-q[1])
	v := math.Pow(mm(t, b.Tools["tape"].Sigma), 2) + math.Pow(b.Tools["tape"].PPM*1e-6*d, 2)
	for _, name := range names {
		if name[0] == 'r' {
			v += math.Pow(mm(t, b.Lines["rim"].Definition), 2)
		}
	}
	return d, math.Sqrt(v)
}

// Each reading agrees with the truth to 4 sd by the book's own words (one in 16,000 would not,
// and there are 174), their squares sum to what is expected, and r1 is the mark nearest to A.
func TestReadingsAgreeWithTruth(t *testing.T) {
	for _, e := range examples.All() {
		var book page
		if err := yaml.Unmarshal(e.Book, &book); err != nil {
			t.Fatalf("%s: %v", e.Name, err)
		}
		s := truthOf(t, e.Name)
		ties, sum := 0, 0.0
		for _, r := range book.Readings {
			if r.Side != "" && (s.Marks[r.Side][1] > 0) != (r.Hand == "left") {
				t.Errorf("%s: %s is said to lie %s", e.Name, r.Side, r.Hand)
			}
			m := strings.Fields(r.Tie)
			if len(m) < 2 {
				continue
			}
			d, sd := book.tape(t, s.Marks[m[0]], s.Marks[m[1]], m)
			z := (length(t, r.Is) - d) / sd
			if math.Abs(z) > 4 {
				t.Errorf("%s: tie %s reads %v, truth %.4f", e.Name, r.Tie, r.Is, d)
			}
			ties++
			sum += z * z
		}
		t.Logf("%s: %d ties, χ²/n %.2f", e.Name, ties, sum/float64(ties))
		if dev := math.Abs(sum - float64(ties)); ties < 40 || dev > 2*math.Sqrt(2*float64(ties)) {
			t.Errorf("%s: χ² of %d ties is %.1f", e.Name, ties, sum)
		}
		for name, p := range s.Marks {
			r1 := s.Marks["r1"]
			if name[0] == 'r' && math.Hypot(p[0], p[1]) < math.Hypot(r1[0], r1[1]) {
				t.Errorf("%s: %s is nearer to A than r1", e.Name, name)
			}
		}
	}
}

func mm(t *testing.T, s string) float64 {
	t.Helper()
	var f float64
	if err := json.Unmarshal([]byte(strings.TrimSuffix(s, " mm")), &f); err != nil {
		t.Fatal(err)
	}
	return f / 1000
}

var feetInches = regexp.MustCompile(`^(\d+)' (\d+)(?: (\d+)/(\d+))?$`)

// length reads metres, or feet and inches, apart from the program's own reader.
func length(t *testing.T, is any) float64 {
	t.Helper()
	if f, ok := is.(float64); ok {
		return f
	}
	text, _ := is.(string)
	m := feetInches.FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("cannot read %v", is)
	}
	n := make([]float64, 5)
	for i, part := range m[1:] {
		if part != "" {
			if err := json.Unmarshal([]byte(part), &n[i+1]); err != nil {
				t.Fatal(err)
			}
		}
	}
	inches := 12*n[1] + n[2]
	if n[4] > 0 {
		inches += n[3] / n[4]
	}
	return inches * 0.0254
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
