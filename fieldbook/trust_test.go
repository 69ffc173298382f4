package fieldbook_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"brimline/fieldbook"

	"github.com/google/go-cmp/cmp"
)

const deg = math.Pi / 180

// numbered is the readings of a book by what people call them.
func numbered(b fieldbook.Book) map[string]fieldbook.Taken {
	out := map[string]fieldbook.Taken{}
	for _, r := range b.Readings {
		out[r.N] = r
	}
	return out
}

func TestColumns(t *testing.T) {
	b := parseGood(t, "trust.yaml")
	var got []string
	for _, r := range b.Readings[:7] {
		got = append(got, r.N+" "+r.Kind+" "+strings.Join(r.Marks, "–")+" "+r.Values[0].Text)
	}
	want := []string{"1 tie A–B 9.150", "2.1 tie A–r1 5.214", `2.2 tie A–r2 17' 1 1/4"`, "2.3 tie A–r1 5.214", "3.1 tie B–r1 7.100", "3.2 tie B–r2 6.400", "4 tie r1–r9 6.402"}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("rows (-want +got):\n%s", d)
	}
	at := time.Date(2026, 5, 14, 8, 0, 0, 0, time.UTC)
	for i, r := range b.Readings[1:4] {
		if r.Tool != "tape" || r.By != "ada" || !r.Time.Equal(at) || r.Bent {
			t.Errorf("row %d has not the column's common keys: %+v", i+1, r)
		}
	}
	if r := b.Readings[4]; r.ID != "colB.1" || !r.Bent || r.Sigma[0] != 0.008 || !r.Struck || r.Why != "wrong row" {
		t.Errorf("row 3.1: %+v", r)
	}
	if !b.Readings[5].Struck {
		t.Error("row 3.2 was struck by its number")
	}
	// A row without the column's id has the id of the same tie by itself.
	one, err := fieldbook.Parse("x", []byte("brimline: 1\ntools: {tape: {}}\nreadings:\n- {tie: A r1, is: 5214 mm, tool: tape, by: ada, time: \"2026-05-14T08:00:00Z\"}\n"))
	if err != nil || one.Readings[0].ID != b.Readings[1].ID || b.Readings[1].ID == b.Readings[3].ID {
		t.Errorf("%v: ids %s, %s and %s", err, one.Readings[0].ID, b.Readings[1].ID, b.Readings[3].ID)
	}
}

// Law: a column says what its rows say one by one, but for what they are called.
func TestColumnIsItsRows(t *testing.T) {
	column := "brimline: 1\nreadings:\n- {tie: A B, is: 9}\n- {from: A, check: true, sigma: 4 mm, to: [[r1, 5.1], [r2, 5.2], [r2, 5.3]]}\n- {tie: B r1, is: 4}\n- {strike: 2.3}\n"
	rows := "brimline: 1\nreadings:\n- {tie: A B, is: 9}\n- {tie: A r1, is: 5.1, check: true, sigma: 4 mm}\n- {tie: A r2, is: 5.2, check: true, sigma: 4 mm}\n- {tie: A r2, is: 5.3, check: true, sigma: 4 mm}\n- {tie: B r1, is: 4}\n- {strike: 4}\n"
	a, err := fieldbook.Parse("a", []byte(column))
	if err != nil {
		t.Fatal(err)
	}
	b, err := fieldbook.Parse("b", []byte(rows))
	if err != nil {
		t.Fatal(err)
	}
	for i := range a.Readings {
		x, y := a.Readings[i], b.Readings[i]
		x.N, y.N, x.Why, y.Why = "", "", "", ""
		if d := cmp.Diff(x, y); d != "" {
			t.Errorf("row %d (-column +rows):\n%s", i, d)
		}
	}
	if n := a.Readings[4].N; n != "3" {
		t.Errorf("after a column of three rows comes number %s, want 3", n)
	}
}

// What is appended is called after the column, and the rows keep their names.
func TestAppendAfterColumn(t *testing.T) {
	src := []byte("brimline: 1\nreadings:\n- {from: A, to: [[r1, 5.1], [r2, 5.2]]}\n")
	b, err := fieldbook.Parse("x", src)
	if err != nil {
		t.Fatal(err)
	}
	add := []fieldbook.Entry{
		{ID: "n1", Body: fieldbook.Reading{Kind: "tie", Marks: []string{"A", "r3"}, Values: []fieldbook.Value{{Part: "is", Metres: 5, Text: "5"}}}},
		{ID: "n2", Body: fieldbook.Strike{Of: b.Readings[1].ID, Reason: "slack"}},
	}
	out, err := fieldbook.Append(src, add...)
	if err != nil {
		t.Fatal(err)
	}
	b, err = fieldbook.Parse("x", out)
	if err != nil {
		t.Fatal(err)
	}
	again, _ := b.Log.Book()
	for _, book := range []fieldbook.Book{b, again} {
		var got []string
		for _, r := range book.Readings {
			got = append(got, r.N)
		}
		if d := cmp.Diff([]string{"1.1", "1.2", "2"}, got); d != "" || !book.Readings[1].Struck {
			t.Errorf("%s\n%s", d, out)
		}
	}
}

// Readings after a peg was moved read another point: by time where both have one, else by place.
func TestMoved(t *testing.T) {
	b := parseGood(t, "trust.yaml")
	by := numbered(b)
	for n, want := range map[string]string{"1": "A B", "3.2": "B r2", "14": "B (2) r1", "15": "B r2", "16": "B (2) r3", "18": "r3 B (3)"} {
		if got := strings.Join(by[n].Marks, " "); got != want {
			t.Errorf("reading %s is of %s, want %s", n, got, want)
		}
	}
	if m := b.Mark("B (2)"); m.Kind != "peg" || m.Definition != 0.002 || m.Name != "B (2)" || fieldbook.Peg(m.Name) != "B" {
		t.Errorf("B (2): %+v", m)
	}
	log := b.Log
	for i, e := range log {
		if m, ok := e.Body.(fieldbook.Moved); ok && m.Why == "dog line" {
			log = append(log, fieldbook.Entry{ID: "back", Place: 99, Body: fieldbook.Strike{Of: log[i].ID}})
			break
		}
	}
	struck, _ := log.Book()
	if got := strings.Join(numbered(struck)["14"].Marks, " "); got != "B r1" {
		t.Errorf("after the move was struck reading 14 is of %s", got)
	}
	never, err := fieldbook.Parse("x", []byte("brimline: 1\nreadings:\n- {tie: A B, is: 9}\n- {moved: C}\n- {tie: A C, is: 5}\n"))
	if err != nil || cmp.Diff([]string{"moved-unread"}, findingCodes(never)) != "" {
		t.Errorf("%v %v", err, never.Findings)
	}
}

func TestTrustWords(t *testing.T) {
	b := parseGood(t, "trust.yaml")
	by := numbered(b)
	if got := by["20"]; !got.Computed || got.As != `17' 1 1/4"` || got.Replace != "19" {
		t.Errorf("a correction of a correction stands for what was read: %+v", got)
	}
	if got := by["4"]; !got.Check || got.As != "" {
		t.Errorf("check: %+v", got)
	}
	if d := cmp.Diff([]fieldbook.Cannot{{Marks: [2]string{"A", "r12"}, Why: "hedge"}}, b.Cannots); d != "" {
		t.Error(d)
	}
	reel, _ := b.Tool("reel")
	if want := (fieldbook.Tool{Name: "reel", Sigma: 0.005, SolveZero: true, SolveScale: true}); reel != want {
		t.Errorf("reel: %+v", reel)
	}
	if m := b.Mark("r7"); !m.NoEdge || !m.NoDefinition {
		t.Errorf("r7: %+v", m)
	}
	if m := b.Mark("B"); m.NoEdge || m.NoDefinition {
		t.Errorf("B: %+v", m)
	}
}

// Angles come in degrees and stay radians inside; an asserted shape has no value.
func TestTrustKinds(t *testing.T) {
	b := parseGood(t, "trust.yaml")
	type row struct {
		Kind, Marks, Toward string
		Values, Sigma       []float64
	}
	want := []row{
		{"bow", "r2 r4", "deck", []float64{0.3}, nil},
		{"turn", "A k1 r5", "", []float64{42.2519 * deg}, []float64{0.01 * deg}},
		{"turn", "r5 k1 A", "", []float64{(317 + 44/60.0 + 53/3600.0) * deg}, nil},
		{"straight", "r1 r2 r3", "", nil, []float64{0.005}},
		{"straight", "r1 r2 r7", "", nil, []float64{0.005, 0.006, 0.007}},
		{"arc", "r2 r3 r4 r5", "", nil, nil},
		{"square", "A r1 r2", "", nil, []float64{0.05 * deg}},
	}
	var got []row
	for _, r := range b.Readings[7:14] {
		g := row{Kind: r.Kind, Marks: strings.Join(r.Marks, " "), Toward: r.Toward, Sigma: r.Sigma}
		for _, v := range r.Values {
			g.Values = append(g.Values, v.Metres)
		}
		got = append(got, g)
	}
	near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-15*math.Max(1, math.Abs(a)) })
	if d := cmp.Diff(want, got, near); d != "" {
		t.Errorf("kinds (-want +got):\n%s", d)
	}
	if d := cmp.Diff(map[string]float64{"turn": deg / 60, "square": 0.2 * deg, "bow": 0.004}, b.Rules.Sigma, near); d != "" {
		t.Error(d)
	}
	for _, k := range fieldbook.Kinds {
		if fieldbook.Angular(k.Name()) != (k.Name() == "turn" || k.Name() == "square") {
			t.Errorf("%s is taken for angular or not", k.Name())
		}
	}
}

// Columns of two files that stand at the same place keep their rows together when the logs are merged.
func TestColumnsOfTwoFiles(t *testing.T) {
	read := func(text string) fieldbook.Log {
		b, err := fieldbook.Parse("x", []byte("brimline: 1\nreadings:\n"+text))
		if err != nil {
			t.Fatal(err)
		}
		return b.Log
	}
	a := read("- {from: A, to: [[r1, 5.1], [r2, 5.2]]}\n- {tie: A B, is: 3}\n")
	b := read("- {from: C, to: [[r1, 4.1], [r2, 4.2], [r3, 4.3]]}\n")
	both, _ := fieldbook.Merge(a, b)
	book, found := both.Book()
	rows := map[string]string{}
	for _, r := range book.Readings[:5] {
		rows[r.Marks[0]] += r.N + " "
	}
	one, two := rows["A"], rows["C"]
	if !(one == "1.1 1.2 " && two == "2.1 2.2 2.3 " || one == "2.1 2.2 " && two == "1.1 1.2 1.3 ") || len(found) > 0 || book.Readings[5].N != "3" {
		t.Errorf("rows %v, then %s; %v", rows, book.Readings[5].N, found)
	}
}
