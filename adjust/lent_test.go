package adjust_test

import (
	"context"
	"testing"

	"brimline/adjust"
)

// Variations tried one after another lend each other their space and nothing else: each is to the last
// bit as if it were the first.
func TestTriesDoNotTouchEachOther(t *testing.T) {
	ctx := context.Background()
	for seed := range uint64(4) {
		m := pool(120+seed, 9, 1, true)
		s := m.solve(t)
		last := s.First[len(s.In)] - 1
		changes := []adjust.Change{
			{Parts: []int{1, 4, 5}, Values: []float64{3.1, 4.2, 5.3}},
			{Out: []int{3}},
			{Parts: []int{4, 1, last}, Values: []float64{4.9, 3.3, 0.5}, Held: true},
			{},
			{Parts: []int{2}, Values: []float64{6}, Joint: true},
		}
		for round := range 3 {
			for k := range changes {
				c := changes[(k*(round+1)+round)%len(changes)]
				cost, x, _ := s.Try(ctx, c)
				alone, y, _ := m.solve(t).Try(ctx, c)
				if cost != alone {
					t.Errorf("seed %d, change %v: %v after others, %v alone", seed, c, cost, alone)
				}
				for i := range x {
					if x[i] != y[i] && x[i] == x[i] {
						t.Fatalf("seed %d, change %v: scalar %d is %v after others, %v alone", seed, c, i, x[i], y[i])
					}
				}
			}
		}
	}
}
