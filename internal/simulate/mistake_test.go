package simulate_test

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"brimline/internal/simulate"
)

var everyKind = []string{"foot", "metre", "tenth", "inch", "digits", "lookalike", "feet-tenths", "feet-metres", "wrong-peg"}

// Plant changes what it says and nothing else, in the text of the book too; the case given stays.
func TestPlantedIsWhatIsSaid(t *testing.T) {
	kinds, total, other := map[string]int{}, 0, 0
	visits(10, func(c simulate.Case, p simulate.Plan) {
		before := append([]byte(nil), c.Book...)
		w, planted := simulate.Plant(c, 7, simulate.Planting{Share: 0.05, Kinds: everyKind, Unlisted: 0.1})
		if again, _ := simulate.Plant(c, 7, simulate.Planting{Share: 0.05, Kinds: everyKind, Unlisted: 0.1}); !bytes.Equal(again.Book, w.Book) || !bytes.Equal(before, c.Book) {
			t.Fatalf("%s: not the same twice, or the case given was changed", title(c))
		}
		if !reflect.DeepEqual(c.Truth, w.Truth) || len(planted) != int(math.Round(0.05*float64(len(c.Readings)))) {
			t.Fatalf("%s: %d mistakes planted in %d readings", title(c), len(planted), len(c.Readings))
		}
		was, now := readBack(t, c), readBack(t, w)
		size := c.Detectable()
		next := 0
		for i := range now {
			if next == len(planted) || planted[next].Hits[0].Index != now[i].reading {
				if now[i].value != was[i].value {
					t.Fatalf("%s: reading %d changed unsaid", title(c), i+1)
				}
				continue
			}
			m := planted[next]
			h := m.Hits[0]
			x, y := c.Readings[h.Index], w.Readings[h.Index]
			if math.Abs(h.Now-now[i].value) > 1e-9 || h.Before != x.Text[0] || h.After != y.Text[0] || h.N != x.N || h.Now != y.Typed[0] || h.Detectable != size[h.Index][0] {
				t.Fatalf("%s: reading %+v turned into %+v; said %+v", title(c), x, y, h)
			}
			if err := plausible(m.Kind, h, x, c); err != "" {
				t.Fatalf("%s: %s: %s: %+v", title(c), m.Kind, err, h)
			}
			kinds[m.Kind]++
			next++
		}
		for _, m := range planted {
			total++
			if m.Kind == simulate.Unlisted {
				other++
			}
		}
	})
	fewest := map[bool]int{false: 20, true: 5} // few lengths lie near a tenth of a foot
	for _, k := range append([]string{simulate.Unlisted}, everyKind...) {
		if kinds[k] < fewest[k == "feet-tenths"] {
			t.Errorf("%d mistakes of kind %s in %v", kinds[k], k, kinds)
		}
	}
	// Listed kinds that a reading cannot have are passed over, the unlisted hardly ever: its share
	// comes out somewhat above a tenth.
	if share := float64(other) / float64(total); share < 0.09 || share > 0.16 {
		t.Errorf("%d of %d mistakes are of no listed kind", other, total)
	}
}

// plausible says what is wrong with a mistake of the kind, by words of its own.
func plausible(kind string, h simulate.Hit, x simulate.Reading, c simulate.Case) string {
	rounded := 0.0006
	if c.Unit == "ft" {
		rounded = 0.0009
	}
	by := math.Abs(h.Now - h.Was)
	sizes := map[string]float64{"foot": 0.3048, "metre": 1, "tenth": 0.1, "inch": 0.0254}
	switch size, sized := sizes[kind]; {
	case sized && math.Abs(by-size) > rounded:
		return "another size"
	case kind == "digits":
		if c.Unit == "ft" {
			return feetDigits(h)
		}
		a, b := []byte(h.Before), []byte(h.After)
		at := differing(a, b)
		slices.Sort(a)
		slices.Sort(b)
		if !bytes.Equal(a, b) || len(at) != 2 || strings.Trim(h.Before[at[0]+1:at[1]], ".") != "" {
			return "not two neighbours exchanged"
		}
	case kind == "lookalike":
		at := differing([]byte(h.Before), []byte(h.After))
		if len(at) != 1 || !strings.Contains("69 96 17 71", h.Before[at[0]:at[0]+1]+h.After[at[0]:at[0]+1]) {
			return "not one digit that looks like another"
		}
	case kind == "feet-metres" && math.Abs(h.Now-h.Was/0.3048) > rounded:
		return "not the figure in feet"
	case kind == "feet-tenths":
		// 5.8 ft as 5 ft 8 in, 5.10 ft as 5 ft 10 in: the digits behind the point are taken for inches
		var feet, n int
		fmt.Sscanf(h.After, "%d' %d", &feet, &n)
		f, _ := strconv.ParseFloat(fmt.Sprintf("%d.%d", feet, n), 64)
		if h.After != fmt.Sprintf("%d' %d", feet, n) || math.Abs(f*0.3048-h.Was) > 1e-9 || math.Abs(h.Was-x.Typed[0]) > 0.004 {
			return "not tenths for inches"
		}
	case kind == "wrong-peg":
		for _, p := range c.Pegs {
			if p != x.Marks[0] && math.Abs(distance(c.Truth[p], c.Truth[x.Marks[1]])-h.Now) < 5*x.SD[0]+rounded {
				return ""
			}
		}
		return "no other peg is that far"
	case kind == simulate.Unlisted:
		for _, s := range []float64{0.3048, 1, 0.1, 0.0254} {
			if math.Abs(by-s) < 0.0149 {
				return "a listed size"
			}
		}
		if by < 0.0494 || by > 2.5006 || math.Abs(h.Now-h.Was/0.3048) < 0.0149 {
			return "out of range, or feet for metres"
		}
	}
	return ""
}

// feetDigits: 17 ft as 71 ft, or 10 in as 01 in.
func feetDigits(h simulate.Hit) string {
	var f, g, in, jn int
	fmt.Sscanf(h.Before, "%d' %d", &f, &in)
	fmt.Sscanf(h.After, "%d' %d", &g, &jn)
	swapped := g == f%10*10+f/10 && in == jn
	if !swapped && !(f == g && in == 10 && jn == 1) {
		return "not two neighbours exchanged"
	}
	return ""
}

func differing(a, b []byte) []int {
	var out []int
	for i := range a {
		if i < len(b) && a[i] != b[i] {
			out = append(out, i)
		}
	}
	return out
}

func TestNothingPlantedWithoutShare(t *testing.T) {
	c := simulate.Visit(1, simulate.Shapes[0], plans[0])
	if same, none := simulate.Plant(c, 1, simulate.Planting{}); len(none) != 0 || !bytes.Equal(same.Book, c.Book) {
		t.Error("a share of 0 planted something")
	}
}

// Mistakes of no listed kind spread evenly over their range: a χ² of ten bins, 9 degrees of freedom,
// stays below 33.7 with odds of 10,000 to 1; the bins with listed sizes lose 30 or 60 mm each.
func TestUnlistedSpread(t *testing.T) {
	var bins [10]float64
	n := 0.0
	for seed := range uint64(300) {
		c := simulate.Visit(seed, simulate.Shapes[seed%7], plans[0])
		_, planted := simulate.Plant(c, seed, simulate.Planting{Share: 0.1, Unlisted: 1})
		for _, m := range planted {
			h := m.Hits[0]
			if h.Was < 2.6 { // a short length cannot lose much
				continue
			}
			k := int((math.Abs(h.Now-h.Was) - 0.05) / 0.245)
			bins[min(max(k, 0), 9)]++
			n++
		}
	}
	width := []float64{0.245 - 0.030, 0.245 - 0.030, 0.245, 0.245 - 0.030, 0.245, 0.245, 0.245, 0.245, 0.245, 0.245}
	total := 0.0
	for _, w := range width {
		total += w
	}
	chi := 0.0
	for k, b := range bins {
		want := n * width[k] / total
		chi += (b - want) * (b - want) / want
	}
	t.Logf("%.0f mistakes, χ² %.1f, %v", n, chi, bins)
	if n < 1000 || chi > 33.7 {
		t.Errorf("sizes of %.0f mistakes: χ² %.1f of bins %v", n, chi, bins)
	}
}
