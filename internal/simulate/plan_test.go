package simulate_test

import (
	"math"
	"reflect"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/plane"
)

// plans are visits of several ways, units and crews.
var plans = []simulate.Plan{
	{Called: "four pegs", Pegs: 4, PegTies: true},
	{Called: "three pegs, mark by mark", Pegs: 3, Base: 3, Rows: true, Neighbours: true, Crew: []string{"P", "Q"}},
	{Called: "three pegs, peg by peg", Pegs: 3, Base: 2, Crew: []string{"P", "Q"}, SecondTape: true, Unit: "mm"},
	{Called: "a third tie at every fourth", Pegs: 3, Third: 4, Checks: 6, FirstAgain: true, Base: 3, Sigma: 0.0032, Definition: 0.0024, Sizes: [2]float64{8, 12}},
	{Called: "feet", Pegs: 3, PegTies: true, Unit: "ft", Rows: true},
	{Called: "two pegs", Pegs: 2, Checks: 8, Said: true},
}

// visits calls f for each plan and each shape, so many seeds of each.
func visits(seeds int, f func(c simulate.Case, p simulate.Plan)) {
	for seed := range seeds {
		for _, p := range plans {
			for _, s := range simulate.Shapes {
				f(simulate.Visit(uint64(seed+1), s, p), p)
			}
		}
	}
}

func TestVisitsParseAndRepeat(t *testing.T) {
	visits(2, func(c simulate.Case, p simulate.Plan) {
		b, err := fieldbook.Parse("visit.yaml", c.Book)
		if err != nil {
			t.Fatalf("%s: %v", title(c), err)
		}
		if want := p.Said || c.Truth["r1"].Y < 0; (c.Side != nil) != want || len(b.Sides) > 0 != want {
			t.Fatalf("%s: side %v, the book says %v", title(c), c.Side, b.Sides)
		}
		n := 0
		for _, r := range b.Readings {
			if r.Kind == "" {
				continue
			}
			x := c.Readings[n]
			if r.N != x.N || r.By != x.By || math.Abs(r.Values[0].Metres-x.Typed[0]) > 1e-12 || r.Time.IsZero() != (x.Time == "") {
				t.Fatalf("%s: the book says %+v, the case %+v", title(c), r, x)
			}
			n++
		}
		if n != len(c.Readings) {
			t.Fatalf("%s: %d readings of %d", title(c), n, len(c.Readings))
		}
		if again := simulate.Visit(c.Seed, c.Shape, p); !reflect.DeepEqual(c, again) {
			t.Fatalf("%s: differs the second time", title(c))
		}
	})
}

// Each plan reads what it says: base, pegs, neighbours, tapes between marks, the first mark again.
func TestVisitsReadWhatIsPlanned(t *testing.T) {
	visits(2, func(c simulate.Case, p simulate.Plan) {
		count := map[string]int{}
		third := map[string]bool{}
		for _, x := range c.Readings {
			switch a, b := x.Marks[0], x.Marks[1]; {
			case a == "A" && b == "B":
				count["base"]++
			case b[0] != 'r':
				count["pegs"]++
			case a[0] != 'r':
				count["ties"]++
				third[b] = third[b] || a == "C"
			default:
				count["between"]++
			}
		}
		n := len(c.Order)
		thirds := 0
		for _, m := range c.Order {
			if third[m] {
				thirds++
			}
		}
		every := max(1, p.Third)
		further := (n + every - 1) / every
		want := map[string]int{"base": max(1, p.Base), "ties": 2*n + (p.Pegs-2)*further, "between": p.Checks}
		if p.PegTies {
			want["pegs"] = p.Pegs*(p.Pegs-1)/2 - 1
		}
		if p.Neighbours {
			want["between"] += n
		}
		if p.FirstAgain {
			want["ties"] += 2
		}
		for _, k := range []string{"base", "pegs", "ties", "between"} {
			if count[k] != want[k] {
				t.Fatalf("%s: %d %s, want %d", title(c), count[k], k, want[k])
			}
		}
		if p.Pegs > 2 && thirds != further {
			t.Fatalf("%s: %d marks of %d have a third tie", title(c), thirds, n)
		}
	})
}

// A and B stand as advised: behind a long side by 1.5 to 2.5 m, 0.6 to 0.8 of its length apart, no mark
// under less than 22°; sizes are kept.
func TestPegsAreAdvised(t *testing.T) {
	weak, all := 0, 0
	visits(6, func(c simulate.Case, p simulate.Plan) {
		a, b := c.Truth["A"], c.Truth["B"]
		left := c.Truth["r1"].Y > 0
		near, lo, hi := math.Inf(1), math.Inf(1), math.Inf(-1)
		for _, q := range fine(c.Outline, 0.02) {
			near = math.Min(near, math.Abs(q.Y))
			lo, hi = math.Min(lo, q.X), math.Max(hi, q.X)
			if (q.Y > 0) != left {
				t.Fatalf("%s: the base crosses the pool", title(c))
			}
		}
		// The side's own direction and the base's differ by up to 3° and by the two set-backs.
		if near < 1.2 || near > 2.6 {
			t.Errorf("%s: the base lies %.2f m from the rim", title(c), near)
		}
		if share := b.Dist(a) / (hi - lo); share < 0.59 || share > 0.82 {
			t.Errorf("%s: the base is %.2f of the length", title(c), share)
		}
		if least, most := lengths(c.Outline); p.Sizes[1] > 0 && (most < p.Sizes[0] || least > p.Sizes[1]) {
			t.Errorf("%s: %.2f to %.2f m long", title(c), least, most)
		}
		for _, m := range c.Order {
			q := c.Truth[m]
			angle := math.Abs(plane.Between(a.Sub(q), b.Sub(q))) * 180 / math.Pi
			if angle < 22 || angle > 158 {
				t.Errorf("%s: tapes meet under %.0f° at %s", title(c), angle, m)
			}
			all++
			if angle < 30 || angle > 150 {
				weak++
			}
		}
	})
	t.Logf("%d of %d marks lie outside of 30° to 150°", weak, all)
	if weak > all/20 {
		t.Errorf("%d of %d marks lie outside of 30° to 150°", weak, all)
	}
}

// lengths are the least and the greatest extent of an outline along directions within 15° of the base,
// among which its own long side is.
func lengths(p plane.Path) (least, most float64) {
	least = math.Inf(1)
	pts := fine(p, 0.02)
	for d := -15; d <= 15; d++ {
		u := plane.Point{X: 1}.Turn(float64(d) * math.Pi / 180)
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, q := range pts {
			lo, hi = math.Min(lo, q.Dot(u)), math.Max(hi, q.Dot(u))
		}
		least, most = math.Min(least, hi-lo), math.Max(most, hi-lo)
	}
	return least, most
}

func TestVisitNoiseIsAsStated(t *testing.T) {
	n, sum := 0, 0.0
	visits(12, func(c simulate.Case, p simulate.Plan) {
		typed := rounding
		if c.Unit == "ft" {
			typed = 0.0254 * 0.0254 / 256 / 12
		}
		for _, e := range readBack(t, c) {
			if x := c.Readings[e.reading]; math.Abs(x.SD[0]-e.sd) > 1e-9 || math.Abs(x.Typed[0]-e.value) > 1e-9 {
				t.Fatalf("%s: the book says %+v, the case %+v", title(c), e, x)
			}
			z := (e.value - e.true) / math.Sqrt(e.sd*e.sd+typed)
			n++
			sum += z * z
		}
	})
	t.Logf("%d values, χ²/n %.4f", n, sum/float64(n))
	if d := math.Abs(sum - float64(n)); n < 20000 || d > 3.5*math.Sqrt(2*float64(n)) {
		t.Errorf("χ² of %d true residuals is %.0f", n, sum)
	}
}
