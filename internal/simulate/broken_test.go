package simulate_test

import (
	"math"
	"testing"

	"brimline/internal/simulate"
)

// Each broken assumption leaves the traces that it should in the true residuals: their χ², and
// the number of marks whose ties are off.
func TestBrokenAsSaid(t *testing.T) {
	// 1.5² ; 0.95 + 0.05·3² ; 1 and somewhat more, 10 mm being two to three sd along the tape
	want := []struct{ lo, hi float64 }{{2.18, 2.32}, {1.32, 1.48}, {1.00, 1.25}}
	for k, a := range simulate.Assumptions {
		n, sum, all, same := 0, 0.0, 0, 0
		visits(8, func(c simulate.Case, p simulate.Plan) {
			if p.Unit == "ft" {
				return
			}
			before := string(c.Book)
			b := a.Break(c, c.Seed)
			if before != string(c.Book) {
				t.Fatalf("%s: %s: the case given was changed", title(c), a.Name)
			}
			all++
			if before == string(b.Book) { // no reading was drawn, or the mark moved across its ties
				same++
			}
			changed := 0
			touched := map[string]int{}
			for i, e := range readBack(t, b) {
				z := (e.value - e.true) / math.Sqrt(e.sd*e.sd+rounding)
				n++
				sum += z * z
				if x, y := b.Readings[i], c.Readings[i]; math.Abs(x.Typed[0]-y.Typed[0]) > 1e-9 {
					changed++
					touched[x.Marks[0]]++
					touched[x.Marks[1]]++
				}
			}
			if k == 2 && touched[most(touched, c.Order)] != changed {
				t.Fatalf("%s: %d readings changed, not all of one mark: %v", title(c), changed, touched)
			}
		})
		t.Logf("%s: %d values, χ²/n %.3f", a.Name, n, sum/float64(n))
		if same > all/8 || (k == 0 && same > 0) {
			t.Errorf("%s: %d of %d books stayed the same", a.Name, same, all)
		}
		if share := sum / float64(n); share < want[k].lo || share > want[k].hi {
			t.Errorf("%s: χ² of %d values is %.3f of their number", a.Name, n, share)
		}
	}
}

// most is the mark at which most readings changed.
func most(touched map[string]int, order []string) string {
	best := order[0]
	for _, m := range order {
		if touched[m] > touched[best] {
			best = m
		}
	}
	return best
}
