package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/survey"
)

const larch = `brimline: 1
readings: # in the order taken
- {tie: A B, is: 6.000, id: base}
- {tie: A r1, is: 5.10, tool: tape, sigma: 4 mm, note: under the rail}
- {tie: B r1, is: 6.20}
- {offset: r2, line: A B, at: 3.20, left: 1.15}
- {turn: A r1, at: B, is: 42.2519}
tools: {tape: {sigma: 3 mm}}
`

func number(v float64) *float64 { return &v }

// found are the mistakes that an answer about the book could name.
func found() []survey.Mistake {
	return []survey.Mistake{
		{Text: "reading 2 has its digits swapped.", Readings: []string{"2"}, Edit: []survey.Edit{{N: "2", Value: number(5.8299999999)}}},
		{Text: "A and B are swapped at r1", Readings: []string{"2", "3"}, Edit: []survey.Edit{{N: "2", Marks: []string{"B", "r1"}}, {N: "3", Marks: []string{"A", "r1"}}}},
		{Text: "B was moved", Readings: []string{"3"}},
		{Text: "the offset is one metre short", Readings: []string{"4"}, Edit: []survey.Edit{{N: "4", Part: "at", Value: number(4.2)}, {N: "4", Part: "left", Value: number(2.15)}}},
		{Text: "the angle is wrong", Readings: []string{"5"}, Edit: []survey.Edit{{N: "5", Value: number(45.25190000001)}}},
	}
}

func taken(t *testing.T, src string, numbers ...int) (*acceptance, error) {
	t.Helper()
	b, err := fieldbook.Parse("larch.yaml", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	return take("larch.yaml", []byte(src), &b, found(), numbers)
}

// What is accepted stands at the end of the readings, the rest stays to the byte, and the book says
// that nobody read it.
func TestAcceptWritesCorrections(t *testing.T) {
	a, err := taken(t, larch, 1, 5)
	if err != nil {
		t.Fatal(err)
	}
	text := string(a.now)
	if end := strings.Index(larch, "tools:"); text[:end] != larch[:end] || !strings.HasSuffix(text, larch[end:]) {
		t.Errorf("more was changed than was added:\n%s", text)
	}
	r := a.book.Readings
	if len(r) != 7 || !r[1].Struck || r[5].Struck || r[5].Replace != "2" || !r[5].Computed || r[5].As != "5.10" || r[5].Values[0].Text != "5.830" || r[5].Values[0].Metres != 5.83 {
		t.Errorf("reading 2 became %+v", r[5])
	}
	if r[5].Tool != "tape" || len(r[5].Sigma) != 1 || r[5].Note != "under the rail" {
		t.Errorf("the words about reading 2 are lost: %+v", r[5])
	}
	if !strings.Contains(text, "why: reading 2 has its digits swapped") || !strings.Contains(text, "computed: true") {
		t.Errorf("the reason is not in\n%s", text)
	}
	if r[6].Values[0].Text != "45.2519" || r[6].Replace != "5" {
		t.Errorf("the angle became %+v", r[6])
	}
	if p := a.pairs(); len(p) != 2 || p[0].Was != "2" || p[0].Now != "6" {
		t.Errorf("pairs %+v", p)
	}
}

// Marks are exchanged with the figure as typed; several parts of one reading are one entry.
func TestAcceptMarksAndParts(t *testing.T) {
	a, err := taken(t, larch, 2, 4)
	if err != nil {
		t.Fatal(err)
	}
	r := a.book.Readings
	if len(r) != 8 || r[5].Marks[0] != "B" || r[5].Values[0].Text != "5.10" || r[6].Marks[0] != "A" || r[6].Values[0].Text != "6.20" {
		t.Errorf("the columns became %+v", r[5:])
	}
	if v := r[7].Values; len(v) != 2 || v[0].Metres != 4.2 || v[1].Metres != 2.15 {
		t.Errorf("the offset became %+v", r[7])
	}
}

func TestAcceptRefuses(t *testing.T) {
	for _, c := range []struct {
		numbers []int
		want    string
	}{
		{[]int{0}, "mistakes 1 to 5"}, {[]int{6}, "mistakes 1 to 5"}, {[]int{3}, "only reading it again can tell"}, {[]int{1, 1}, "said twice"}, {[]int{1, 2}, "both mistakes would correct reading 2"},
	} {
		if _, err := taken(t, larch, c.numbers...); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v: %v", c.numbers, err)
		}
	}
	if _, err := accept(t.Context(), "-", []int{1}, streams{}); err == nil || !strings.Contains(err.Error(), "standard input is no file") {
		t.Errorf("standard input: %v", err)
	}
}

// In feet a whole sixteenth is written as it is typed, anything else in metres to a tenth of a millimetre.
func TestSpelledInTheBooksUnit(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"brimline: 1\nunits: {length: ft}\nreadings:\n- {tie: A B, is: 20'}\n- {tie: A r1, is: 16' 8 3/4\"}\n", ""},
		{"brimline: 1\nunits: {length: mm}\nreadings:\n- {tie: A B, is: 6000}\n- {tie: A r1, is: 5100}\n", "5830"},
		{"brimline: 1\nunits: {length: cm}\nreadings:\n- {tie: A B, is: 600.0}\n- {tie: A r1, is: 510}\n", "583.0"},
	} {
		a, err := taken(t, c.src, 1)
		if err != nil {
			t.Fatal(err)
		}
		v := a.book.Readings[2].Values[0]
		if d := v.Metres - 5.83; d > 5e-5 || d < -5e-5 || c.want != "" && v.Text != c.want {
			t.Errorf("%q: %+v", c.src, v)
		}
	}
}

// A book that was changed in the meantime is left alone; else the whole text is put in its place.
func TestAcceptWritesWhole(t *testing.T) {
	a, err := taken(t, larch, 1)
	if err != nil {
		t.Fatal(err)
	}
	a.path = filepath.Join(t.TempDir(), "larch.yaml")
	for _, there := range []string{larch + "# more\n", larch} {
		if err := os.WriteFile(a.path, []byte(there), 0o640); err != nil {
			t.Fatal(err)
		}
		err := a.write(streams{})
		got, _ := os.ReadFile(a.path)
		switch {
		case there != larch && (err == nil || string(got) != there):
			t.Errorf("a changed book was written: %v", err)
		case there == larch && (err != nil || string(got) != string(a.now)):
			t.Errorf("not written: %v", err)
		}
	}
	if info, err := os.Stat(a.path); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("the book's rights became %v", info.Mode())
	}
}
