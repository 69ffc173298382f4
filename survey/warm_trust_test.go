package survey_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/survey"
)

// troubled are the logs of books with mistakes, checks and corrections.
func troubled(t *testing.T) []fieldbook.Log {
	t.Helper()
	checked := crossed(taped("A", "B", "C"))
	for k := len(checked) - 4; k < len(checked); k++ {
		checked[k].extra = ", check: true"
	}
	checked[at(t, checked, "C", "r7")].is -= 1
	checked[len(checked)-1].is += 0.3048
	alone, _ := threeAlone(t)
	kicked := kick(t)
	metre := crossed(taped("A", "B", "C"))
	metre[at(t, metre, "B", "r5")].is += 1
	src := written(metre, courtRim)
	books := []string{written(checked, courtRim), written(alone, courtRim), written(swap(t).all, courtRim), written(kicked.all, courtRim), accept(t, src, run(t, src))}
	var out []fieldbook.Log
	for _, text := range books {
		out = append(out, parse(t, text).Log)
	}
	for seed := range uint64(2) {
		c := simulate.Pool(seed+1, simulate.Shapes[seed%uint64(len(simulate.Shapes))], simulate.Methods[1], simulate.Options{})
		c, _ = simulate.Wrong(c, seed+1, 0.03)
		out = append(out, parse(t, string(c.Book)).Log)
	}
	return out
}

// told is everything that is said of mistakes.
func told(r *survey.Result) string {
	var b strings.Builder
	for _, m := range r.Mistakes {
		fmt.Fprintf(&b, "%s %v %.4f; ", m.Code, m.Readings, m.Probability)
	}
	for _, x := range r.Readings {
		if x.State == "suspect" || x.State == "doubtful" || x.State == "disagrees" {
			fmt.Fprintf(&b, "%s %s", x.N, x.State)
			for _, l := range x.Likely {
				fmt.Fprintf(&b, " %s %.4f", l.Code, l.Probability)
			}
		}
	}
	return b.String()
}

// A session that has grown entry by entry says the same of mistakes as a run from nothing: the
// last eight entries come one by one, in an order of their own.
func TestWarmEqualsColdWithMistakes(t *testing.T) {
	const last = 8
	for k, log := range troubled(t) {
		t.Run(fmt.Sprint(k+1), func(t *testing.T) {
			t.Parallel()
			r := rand.New(rand.NewPCG(uint64(k), 79))
			log = slices.Clone(log)
			r.Shuffle(len(log), func(i, j int) { log[i], log[j] = log[j], log[i] })
			var s survey.Session
			first := len(log) - last
			if _, err := s.Add(context.Background(), log[:first]...); err != nil {
				t.Fatal(err)
			}
			for n := first; n < len(log); n++ {
				warm, err := s.Add(context.Background(), log[n])
				if err != nil {
					t.Fatal(err)
				}
				b, _ := log[:n+1].Book()
				cold := solve(t, &b)
				what := fmt.Sprintf("book %d, prefix %d", k+1, n+1)
				apart(t, what, cold, warm)
				if told(cold) != told(warm) {
					t.Errorf("%s: cold %s\nwarm %s", what, told(cold), told(warm))
				}
			}
		})
	}
}
