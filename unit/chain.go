package unit

import (
	"math"
	"sort"
)

// Chain prints the members of a chain of dimensions, in metres, so that the rounded members add
// up to the rounded total: each is rounded down to the step of the style and the steps still
// missing go to the members that lost most (largest remainder, the first among equals). No
// member is a whole step or more from its true size. A member that is no number prints as a
// dash and makes the total one.
func Chain(parts []float64, s Style) (members []string, total string) {
	steps := make([]int64, len(parts))
	lost := make([]float64, len(parts))
	order := make([]int, len(parts))
	var sum float64
	var have int64
	for i, m := range parts {
		order[i] = i
		sum += m
		if _, ok := s.count(m); !ok {
			sum = math.NaN()
			continue
		}
		// A value within a millionth of a step is on it.
		x := m / s.Step()
		down := math.Floor(x + 1e-6)
		steps[i], lost[i] = int64(down), x-down
		have += steps[i]
	}
	if want, ok := s.count(sum); ok {
		sort.SliceStable(order, func(a, b int) bool { return lost[order[a]] > lost[order[b]] })
		for i := 0; have < want && i < len(order); i++ {
			steps[order[i]]++
			have++
		}
	}
	for i, m := range parts {
		if _, ok := s.count(m); !ok {
			members = append(members, nothing)
			continue
		}
		members = append(members, s.text(steps[i]))
	}
	if math.IsNaN(sum) {
		return members, nothing
	}
	return members, s.text(have)
}
