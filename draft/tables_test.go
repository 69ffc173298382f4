package draft_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/sheet"
)

func TestChainAddsUp(t *testing.T) {
	f := fixtures()[0]
	text := allWords(draft.Plan(f.book, f.result, options()))
	total := regexp.MustCompile(`length (\d+\.\d{3}) m`).FindStringSubmatch(text)
	want, err := strconv.ParseFloat(total[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		if (l == "straight" || l == "arc") && lines[i-1] == "rim" {
			x, err := strconv.ParseFloat(lines[i+3], 64)
			if err != nil {
				t.Fatal(err)
			}
			sum += x
		}
	}
	if math.Abs(sum-want) > 1e-9 {
		t.Errorf("runs add up to %.3f, the outline is %.3f", sum, want)
	}
}

func TestTablesAreWhole(t *testing.T) {
	for _, f := range fixtures() {
		for _, paper := range []string{"A3", "A4", "ANSI B"} {
			o := options()
			o.Paper = paper
			rows := map[string]int{}
			for _, s := range draft.Plan(f.book, f.result, o)[1:] {
				for _, it := range s.Items {
					if table, ok := it.Shape.(sheet.Table); ok {
						kind := table.Columns[0].Title[0]
						rows[kind] += len(table.Rows)
						if len(table.Rows) == 0 {
							t.Errorf("%s on %s: a table without rows", f.name, paper)
						}
					}
				}
			}
			placed := 0
			for _, m := range f.result.Marks {
				if m.X != nil {
					placed++
				}
			}
			if rows["no."] != len(f.result.Readings) || rows["mark"] != placed || rows["line"] != len(f.result.Lines["rim"].Runs) {
				t.Errorf("%s on %s: %v rows", f.name, paper, rows)
			}
		}
	}
}
