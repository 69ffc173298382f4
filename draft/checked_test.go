package draft_test

import (
	"slices"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
)

// rowsOf are the rows of all pieces of a table, found by the title of its first and last column.
func rowsOf(sheets []sheet.Sheet, first, last string) [][]string {
	var out [][]string
	for _, s := range sheets {
		for _, it := range s.Items {
			t, ok := it.Shape.(sheet.Table)
			if !ok || strings.Join(t.Columns[0].Title, " ") != first || strings.Join(t.Columns[len(t.Columns)-1].Title, " ") != last {
				continue
			}
			for _, r := range t.Rows {
				var texts []string
				for _, c := range r {
					texts = append(texts, c.Text)
				}
				out = append(out, texts)
			}
		}
	}
	return out
}

// A check stands with what was measured, what the others say, the difference, what was expected of it,
// and the word; nothing else stands there.
func TestCheckTable(t *testing.T) {
	b, r := sketchPool()
	r.Readings[len(r.Readings)-2].W, r.Readings[len(r.Readings)-2].SD = ref(-0.4), 0.004
	r.Readings = append(r.Readings, survey.Reading{N: "93", Kind: "tie", Marks: []string{"r2", "r14"}, Value: 8.2, Text: "8.20", Adjusted: ref(8.262), Residual: ref(0.062),
		SD: 0.005, W: ref(12.4), State: "disagrees", Check: true})
	var got [][]string
	for _, row := range rowsOf(draft.Plan(b, r, options()), "no.", "state") {
		if len(row) == 10 {
			got = append(got, row)
		}
	}
	want := [][]string{
		{"91", "tie", "r1", "r12", "9.106", "9.104", "−2.0", "5.0", "−0.40", "agrees"},
		{"93", "tie", "r2", "r14", "8.20", "8.262", "62.0", "5.0", "12.40", "disagrees"},
	}
	if !slices.EqualFunc(got, want, slices.Equal[[]string]) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A reading along, round or to a line stands with its line in both tables, free deck with the word of
// what ends it.
func TestReadingsOfLines(t *testing.T) {
	b, r := sketchPool()
	of := func(n, kind, line, until string, marks ...string) survey.Reading {
		return survey.Reading{N: n, Kind: kind, Marks: marks, Line: line, Until: until, Value: 8.2, Text: "8.20", Adjusted: ref(8.2), Residual: ref(0.001), W: ref(0.2), SD: 0.005,
			State: "agrees", Check: true}
	}
	r.Readings = append(r.Readings, of("94", "along", "track", "", "r2", "r14"), of("95", "round", "track", ""), of("96", "round", "track", "", "r2", "r14"),
		of("97", "clear", "rim", "", "h1"), of("98", "clear", "", "hedge", "r7"))
	want := map[string]string{"94": "along|track, r2|r14", "95": "round|track|", "96": "round|track|from r2", "97": "clear|h1|rim", "98": "clear|r7|until hedge"}
	seen := map[string]int{}
	for _, row := range rowsOf(draft.Plan(b, r, options()), "no.", "state") {
		w, ours := want[row[0]]
		if !ours {
			continue
		}
		seen[row[0]]++
		if got := strings.Join(row[1:4], "|"); got != w {
			t.Errorf("reading %s is %q, want %q", row[0], got, w)
		}
	}
	for n := range want {
		if seen[n] != 2 {
			t.Errorf("reading %s stands in %d tables", n, seen[n])
		}
	}
}

// All findings stand in a list with their weight, mere notes too.
func TestFindingsList(t *testing.T) {
	f := fixtures()[0]
	all := flowing(draft.Plan(f.book, f.result, options()))
	_, list, found := strings.Cut(all, "Findings")
	for _, w := range []string{"Ask: The readings leave open on which side r4 lies. Tape r4 to r16.", "Note: Not on the plan."} {
		if !found || !strings.Contains(list, w) {
			t.Errorf("the findings lack %q", w)
		}
	}
}

// Marks stand in their table with pegs first and r2 before r10.
func TestMarksInOrder(t *testing.T) {
	f := made(4, "kidney", 28, unit.M)
	slices.Reverse(f.result.MarkOrder[3:])
	rows := rowsOf(draft.Plan(f.book, f.result, options()), "mark", "a mistake would show")
	var got []string
	for _, r := range rows {
		got = append(got, r[0])
	}
	want := []string{"A", "B", "C"}
	want = append(want, staked(4, "kidney", 28).names...)
	if !slices.Equal(got, want) {
		t.Errorf("%v", got)
	}
}
