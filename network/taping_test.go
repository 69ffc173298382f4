package network_test

import (
	"fmt"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/checks"
)

// A line taped in three lengths (L-03): what warmth and sag take off them. The dip that is seen is that
// of a tape of this weight under this pull, w·L²/(8P).
func TestPublishedTaping(t *testing.T) {
	item := checks.Get(t, "L-03")
	read, temps := item.Inputs.List("observed_m"), item.Inputs.List("temps_C")
	heavy := item.Inputs.Number("weight_kg_per_m") / (8 * item.Inputs.Number("pull_kg"))
	var b strings.Builder
	fmt.Fprintf(&b, "tools: {steel: {sigma: 2 mm, expansion: %g, temperature: %g}}\nreadings:\n", item.Inputs.Number("alpha"), item.Inputs.Number("standard_C"))
	for k, l := range read {
		fmt.Fprintf(&b, "- {tie: m%d m%d, is: %.3f, tool: steel, at_temperature: %g, dip: %.9f}\n", k, k+1, l, temps[k], heavy*l*l)
	}
	n, _ := built(t, b.String())
	warmth, sag := 0.0, 0.0
	for i := range n.Obs {
		o := &n.Obs[i]
		warmth += read[i]/o.Scale - read[i]
		sag -= o.Sag
	}
	item.Compare("temperature", warmth)
	item.Compare("sag", sag)
}

// Loops by order and length (L-01).
func TestPublishedLoopLimits(t *testing.T) {
	item := checks.Get(t, "L-01")
	names := map[string]string{"1-I": "first order 1 4 mm", "1-II": "first order 2 5 mm", "2-I": "second order 1 6 mm", "2-II": "second order 2 8 mm", "3": "third order 12 mm"}
	coeff := item.Inputs.Object("section_coeff_mm")
	loops := item.Inputs.Object("loop_coeff_mm")
	var got []float64
	for _, c := range item.Inputs.Any("cases") {
		row := c.([]any)
		order, kind, _ := strings.Cut(row[0].(string), " ")
		limit := -1.0
		for _, r := range fieldbook.LevelRules {
			if r.Name == names[order] {
				limit = 1000 * r.Limit(1000*row[1].(float64))
			}
		}
		if kind == "section" { // the table holds the loops
			limit *= coeff[order] / loops[order]
		}
		if limit < 0 {
			t.Fatalf("no rule for %v", row)
		}
		got = append(got, limit)
	}
	item.Compare("limits_mm", got...)
}
