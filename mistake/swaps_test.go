package mistake_test

import (
	"context"
	"math"
	"testing"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/locate"
	"brimline/mistake"
	"brimline/network"
)

// The odds that two columns are swapped are those of a row: with three pegs, the three pairs of
// columns share them.
func TestPairsShareTheOddsOfARow(t *testing.T) {
	for _, pegs := range []int{2, 3, 4} {
		c := simulate.Visit(7, simulate.Shapes[0], simulate.Plan{Called: "swaps", Pegs: pegs, PegTies: true, Sigma: 0.003, Definition: 0.002})
		b, err := fieldbook.Parse("swaps.yaml", c.Book)
		if err != nil {
			t.Fatal(err)
		}
		n, _ := network.Build(&b, nil)
		s, _ := adjust.Solve(context.Background(), n, locate.Find(n).X, adjust.Options{})
		sum := 0.0
		for _, h := range mistake.Listed(s, &b) {
			if h.Code == "columns" {
				sum += math.Exp(h.LnPrior)
			}
		}
		mean := sum / float64(len(c.Order))
		if mean > 0.003+1e-12 || mean < 0.0027 { // a pair of nearly equal lengths is no swap
			t.Errorf("%d pegs: %.5f a row", pegs, mean)
		}
	}
}
