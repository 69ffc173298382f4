package fieldbook_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"brimline/fieldbook"
	"brimline/unit"

	"github.com/google/go-cmp/cmp"
)

func goodBooks(t testing.TB) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob("testdata/good/*")
	if err != nil || len(files) == 0 {
		t.Fatalf("no good books: %v", err)
	}
	out := map[string][]byte{}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(f)] = src
	}
	return out
}

func parseGood(t testing.TB, name string) fieldbook.Book {
	t.Helper()
	b, err := fieldbook.Parse(name, goodBooks(t)[name])
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestParseGood(t *testing.T) {
	for name, src := range goodBooks(t) {
		if _, err := fieldbook.Parse(name, src); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestParseSpine(t *testing.T) {
	b := parseGood(t, "spine.yaml")
	if b.Name != "Larch Court" || b.Job.Measured != "2026-05-14" || !b.Job.Alone || b.Job.Weather != "dry, wind 4 m/s" {
		t.Errorf("job: %q %+v", b.Name, b.Job)
	}
	if b.Units.Length != unit.FT {
		t.Errorf("shown unit %s; the file's later entry says ft", b.Units.Length)
	}
	tape, ok := b.Tool("tape")
	if want := (fieldbook.Tool{Name: "tape", Sigma: 0.003, PPM: 100, Serial: "T-7", Checked: "2026-02-01"}); !ok || tape != want {
		t.Errorf("tape: %+v", tape)
	}
	type row struct {
		n, kind, marks string
		metres         []float64
		text, why, rep string
		struck         bool
	}
	want := []row{
		{"1", "tie", "A B", []float64{9.15}, "9.150", "wrong peg", "", false},
		{"2", "tie", "A r1", []float64{5.21335}, `17' 1 1/4"`, "replaced by 11: read again", "", true},
		{"3", "tie", "A r3", []float64{5.214}, "5.214", "", "", false},
		{"5", "offset", "r4 A B", []float64{3.2, 1.15}, "3.20", "", "", false},
		{"6", "offset", "r5 A B", []float64{-0.2, -1.15}, "-0.20", "", "", false},
		{"7", "seen", "r9", []float64{3.112, 8.904, 0.021}, "3.112", "", "", false},
		{"8", "tie", "B r7", []float64{4.4}, "4.4", "", "", false},
		{"11", "tie", "A r1", []float64{5.241}, "5.241", "", "2", false},
	}
	// Item 12 strikes item 10, which struck the base: the base holds and has no reason.
	want[0].why = ""
	var got []row
	for _, r := range b.Readings {
		g := row{n: r.N, kind: r.Kind, text: r.Values[0].Text, why: r.Why, rep: r.Replace, struck: r.Struck}
		for i, m := range r.Marks {
			if i > 0 {
				g.marks += " "
			}
			g.marks += m
		}
		for _, v := range r.Values {
			g.metres = append(g.metres, v.Metres)
		}
		got = append(got, g)
	}
	if d := cmp.Diff(want, got, cmp.AllowUnexported(row{})); d != "" {
		t.Errorf("readings (-want +got):\n%s", d)
	}
	drawn := b.Readings[6]
	if drawn.Class != "drawing" || drawn.Source != "plan.dxf:12" || drawn.By != "ada" || !drawn.Time.Equal(time.Date(2026, 5, 14, 8, 42, 0, 0, time.UTC)) {
		t.Errorf("reading 8: %+v", drawn)
	}
	if d := cmp.Diff([]float64{0.005, 0.008}, b.Readings[4].Sigma); d != "" || !b.Readings[5].Flip {
		t.Errorf("reading 6 sigma %s, 7 flip %v", d, b.Readings[5].Flip)
	}
	if d := cmp.Diff([]fieldbook.Side{{Mark: "d7", Line: [2]string{"A", "B"}}}, b.Sides); d != "" {
		t.Error(d)
	}
	lines := []fieldbook.Line{
		{Name: "rim", Closed: true, Edge: "nose", State: "found", Fuzz: 0.002, Spacing: 0.7, Runs: []fieldbook.Run{
			{Kind: "straight", Marks: []string{"r1", "r3"}}, {Kind: "arc", Marks: []string{"r3", "r4", "r5"}, Joint: "tangent"},
			{Kind: "curve", Marks: []string{"r5", "r7", "r9"}}, {Kind: "any", Marks: []string{"r9", "r1"}}}},
		{Name: "deckn", Edge: "deck", Runs: []fieldbook.Run{{Kind: "straight", Marks: []string{"hs1", "hs2"}}}},
	}
	if d := cmp.Diff(lines, b.Lines); d != "" {
		t.Errorf("lines (-want +got):\n%s", d)
	}
	codes := []string{}
	for _, f := range b.Findings {
		codes = append(codes, f.Code)
	}
	if d := cmp.Diff([]string{"line-unread", "place-order"}, codes); d != "" {
		t.Errorf("findings (-want +got):\n%s", d)
	}
}

// Names are what was typed; a feet job reads its own spellings; a block text keeps its lines.
func TestParseFeet(t *testing.T) {
	b := parseGood(t, "feet.yaml")
	if b.Name != "feet" || b.Units.Length != unit.FT {
		t.Errorf("name %q, unit %s", b.Name, b.Units.Length)
	}
	want := []struct {
		marks []string
		m     float64
	}{{[]string{"1", "07"}, 5.21335}, {[]string{"1.0", "N"}, 3.8227}, {[]string{"yes", "null"}, 5.1816}, {[]string{"~"}, 3.81}, {[]string{"true", "é"}, 3.8227}}
	for i, w := range want {
		if r := b.Readings[i]; cmp.Diff(w.marks, r.Marks) != "" || r.Values[0].Metres != w.m {
			t.Errorf("reading %s: %v %v; want %v", r.N, r.Marks, r.Values, w)
		}
	}
	if got := b.Readings[0].Note; got != "two lines\n# of which this is no comment" {
		t.Errorf("note %q", got)
	}
	if b.Readings[3].Setup != "no" || b.Readings[3].Values[1].Metres != -1.0668 {
		t.Errorf("seen: %+v", b.Readings[3])
	}
	if len(b.Marks) != 2 || b.Marks[0].Name != "null" || b.Marks[1].Name != "~" || b.Lines[0].Name != "off" {
		t.Errorf("marks %+v, lines %+v", b.Marks, b.Lines)
	}
}

func TestParseJSON(t *testing.T) {
	b := parseGood(t, "book.json")
	if b.Readings[1].Values[0].Metres != 5.2145 || b.Readings[1].Note != "said \"about\"\nthere é" || b.Readings[2].Values[0].Metres != -0.02 {
		t.Errorf("readings %+v", b.Readings)
	}
}

// Ids outlast layout: these two files say the same.
func TestIDsDoNotDependOnLayout(t *testing.T) {
	one := "brimline: 1\nreadings:\n- {tie: A B, is: 9.15}\n- {tie: A B, is: 9.15}\n- {strike: 1}\n"
	two := "# the same\nreadings: [\n  {is: \"9150 mm\", tie: \"A   B\"}, {tie: A B, is: 9.150 m}, {strike: '1'}]\nbrimline: 1\n"
	a, err := fieldbook.Parse("a", []byte(one))
	if err != nil {
		t.Fatal(err)
	}
	b, err := fieldbook.Parse("b", []byte(two))
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range a.Log {
		if e.ID != b.Log[i].ID {
			t.Errorf("entry %d: %s and %s", i, e.ID, b.Log[i].ID)
		}
	}
	if a.Readings[0].ID == a.Readings[1].ID || !a.Readings[0].Struck || a.Readings[1].Struck {
		t.Errorf("equal readings: %+v", a.Readings)
	}
	// The id is a promise to files written earlier: it may not change with the program.
	if got := a.Readings[0].ID; got != "403b97bdb4046bd4a6e4abac062a6055" {
		t.Errorf("the id of {tie: A B, is: 9.15} is %s now", got)
	}
}
