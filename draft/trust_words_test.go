package draft_test

import (
	"strings"
	"testing"

	"brimline/draft"
	"brimline/sheet"
)

// The first sheet says where most could hide, which mistakes show and what to read next.
func TestTrustIsSaid(t *testing.T) {
	f := trusted()[0]
	for _, paper := range usual {
		o := options()
		o.Paper = paper
		sheets := draft.Plan(f.book, f.result, o)
		first := strings.ReplaceAll(words(sheets[0]), "\n", " ")
		for _, w := range []string{"An error of up to 62 mm could hide in tie B–r6", "Reading 9 is one metre long (93 %).", "Reading 94, offset r4 of A–B, is suspect: of no known kind (97 %).",
			"One of the readings 14 or 21 is wrong; which one cannot be told.", "Check reading 87, tie r1–r18, disagrees by 62 mm.", "Next: tape A to r10, about 7.61: would control r10.", "or r7"} {
			if !strings.Contains(first, w) {
				t.Errorf("%s: the first sheet lacks %q", paper, w)
			}
		}
		all := flowing(sheets)
		for _, w := range []string{"An error of up to 48 mm could hide in tie B–r1", "Left out as suspect: readings 9 and 94.", "Doubtful: readings 14 and 21.", "Checks that agree: readings 86 and 88.",
			"Reading 85 as read 5.10, used 5.83, not re-read.", "Reading 9 suspect: one metre long, ", "larger than the plan"} {
			if !strings.Contains(all, w) {
				t.Errorf("%s: nowhere is said %q", paper, w)
			}
		}
	}
}

// Rows of the other kinds: angles in degrees, what is asserted in words, a correction in brackets.
func TestRowsOfOtherKinds(t *testing.T) {
	f := trusted()[0]
	rows := map[string]string{}
	for _, s := range draft.Plan(f.book, f.result, options()) {
		for _, it := range s.Items {
			if table, ok := it.Shape.(sheet.Table); ok {
				for _, row := range table.Rows {
					var cells []string
					for _, c := range row {
						cells = append(cells, c.Text)
					}
					rows[cells[0]+" "+cells[1]] = strings.Join(cells, "|")
				}
			}
		}
	}
	for _, want := range []string{
		"89|turn|r5: A|r1|42.2519|42.2541°|0.002°|0.010°|0.30|0.40|0.065°|good",
		"90|square|r1: A|r2|square|90.0210°|0.021°|0.050°|0.50|0.40|0.320°|good",
		"91|straight|r1|r3 (3)|in line|0.002|2.0|5.0|0.50|0.40|31.0|good",
		"92|arc|r4|r7 (4)|circle|0.001|1.0|5.0|0.20|0.40|31.0|good",
		"93|bow|r2|r4|0.300|0.303|3.0|3.0|1.10|0.40|19.0|good",
	} {
		c := strings.Split(want, "|")
		if got := rows[c[0]+" "+c[1]]; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if got := rows["85 tie"]; !strings.Contains(got, "|(5.83)|") {
		t.Errorf("a correction stands as %q", got)
	}
	if got := rows["14 tie"]; !strings.HasSuffix(got, "|doubtful (1)") {
		t.Errorf("a doubtful reading stands as %q", got)
	}
}
