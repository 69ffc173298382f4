package mistake

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// The best so many runs are those of a stable sort, the first of equals first.
func TestRankedIsAStableSort(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 7))
	for range 200 {
		var all, best []run
		most := 1 + r.IntN(6)
		for k := range r.IntN(30) {
			one := run{k, k, float64(r.IntN(8))}
			all, best = append(all, one), ranked(best, one, most)
		}
		slices.SortStableFunc(all, func(a, b run) int { return higher(a.score, b.score) })
		if want := all[:min(len(all), most)]; !slices.Equal(best, want) {
			t.Fatalf("%v, want %v", best, want)
		}
	}
}
