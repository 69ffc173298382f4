package outline_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"brimline/internal/simulate"
	"brimline/outline"
)

// Lines of about 60 and 120 marks whose kinds are to be found.
func BenchmarkAny(b *testing.B) {
	for _, c := range []struct {
		name  string
		f     simulate.Figure
		inner int
	}{
		{"kidney 60", simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 14},
		{"kidney 120", simulate.Kidney(2.4, 1.8, 5, 6.1, 1.5), 29},
		{"rounded rectangle 56", simulate.Rounded(simulate.Box4(8, 4, 0.01), []float64{0.8, 0.8, 0.8, 0.8}), 6},
		{"rounded rectangle 120", simulate.Rounded(simulate.Box4(8, 4, 0.01), []float64{0.8, 0.8, 0.8, 0.8}), 14},
	} {
		b.Run(c.name, func(b *testing.B) { benchmark(b, anyOf(c.f, c.inner).noisy(rand.New(rand.NewPCG(5, 5)))) })
	}
	free, _ := staked(simulate.Stake(996008, simulate.Shapes[6]), "any")
	b.Run(fmt.Sprint("freeform ", len(free.names)-2), func(b *testing.B) { benchmark(b, free.noisy(rand.New(rand.NewPCG(5, 5)))) })
}

func benchmark(b *testing.B, s *scene) {
	sol := s.solution(b)
	edge := make([]float64, len(sol.Net.Marks))
	for b.Loop() {
		if l, _ := outline.Fit(sol, s.spec(), edge); len(l.Runs) == 0 {
			b.Fatal("no runs")
		}
	}
}
