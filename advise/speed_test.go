package advise_test

import (
	"testing"

	"brimline/adjust"
	"brimline/advise"
	"brimline/mistake"
)

// busy is a job of n marks with about four readings a mark.
func busy(n int) *scene {
	s := threePegs(3, n, 1, 0.004)
	for i := range n - 10 {
		if i%11 != 0 {
			s.tie(s.rim[i], s.rim[(i+n/3)%n])
		}
	}
	return s
}

func BenchmarkLook(b *testing.B) {
	for _, n := range []int{60, 300} {
		for _, two := range []bool{false, true} {
			s := busy(n)
			name := "checked"
			if two {
				s, name = twoPegs(3, n, 1, 0.004), "two pegs"
			}
			sol := s.solve(b)
			list := listed(sol)
			b.Run(name+" "+string(rune('0'+n/100))+"00", func(b *testing.B) {
				b.ReportMetric(float64(len(s.net.Obs)), "readings")
				for b.Loop() {
					look(s, again(sol), list)
				}
			})
		}
	}
}

// again forgets what the solution keeps.
func again(sol *adjust.Solution) *adjust.Solution { c := *sol; return &c }

func look(s *scene, sol *adjust.Solution, list []mistake.Hypothesis) {
	orders := []advise.Order{s.shape(sol)}
	advise.Look(sol, list, advise.Odd{}, orders, s.options())
}
