package survey_test

import (
	"context"
	"testing"

	"brimline/fieldbook"
	"brimline/survey"
)

// An office's sigma holds where the book has none of its own, and the book's own goes first.
func TestOfficeRules(t *testing.T) {
	office := fieldbook.Rules{Sigma: map[string]float64{"tie": 0.009}}
	for _, c := range []struct {
		name, text string
		rules      fieldbook.Rules
		want       float64
	}{
		{"no office", "", fieldbook.Rules{}, 0.005},
		{"office", "", office, 0.009},
		{"the book's own", "rules: {sigma: {tie: 4 mm}}\n", office, 0.004},
	} {
		b := parse(t, "brimline: 1\n"+c.text+"readings:\n- {tie: A B, is: 5}\n- {tie: A r, is: 4}\n- {tie: B r, is: 3}\n")
		r, err := survey.Run(context.Background(), survey.Input{Book: b, Rules: c.rules}, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Readings[0].SD; got != c.want {
			t.Errorf("%s: sd %g, want %g", c.name, got, c.want)
		}
	}
}
