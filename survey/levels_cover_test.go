package survey_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
)

// Heights lie within their standard deviations as often as these say: tuning seeds, one in four of a
// report's days.
func TestHeightsCoverage(t *testing.T) {
	in, all, sum := 0, 0, 0.0
	plan := simulate.LevelPlan{Called: "two set-ups and the water", Setups: 2, Boards: 8, Second: 4}
	for seed := range uint64(75) {
		d := simulate.Levels(seed, plan, 0, 0)
		r := run(t, string(d.Book))
		for _, m := range d.Marks[1:] {
			u := (z(t, r, m) - d.Truth[m]) / *r.Marks[m].SZ
			all, sum = all+1, sum+u*u
			if math.Abs(u) <= 1.96 {
				in++
			}
		}
	}
	share := float64(in) / float64(all)
	t.Logf("%d of %d heights within 1.96 sd, mean of squares %.3f", in, all, sum/float64(all))
	if share < 0.93 || share > 0.97 || sum/float64(all) < 0.85 || sum/float64(all) > 1.15 {
		t.Errorf("%.3f within 1.96 sd, mean of squares %.3f", share, sum/float64(all))
	}
}
