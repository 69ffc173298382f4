package examples_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"brimline/examples"
)

// Each reading without a planted mistake agrees with the truth to 4 sd by the book's own words
// (one in 16,000 would not, and there are some 350), their squares sum to what is expected, and r1 is
// the mark nearest to A. Each planted one disagrees, and agrees with what the sheet says was read.
func TestReadingsAgreeWithTruth(t *testing.T) {
	for _, e := range examples.All() {
		var book page
		if err := yaml.Unmarshal(e.Book, &book); err != nil {
			t.Fatalf("%s: %v", e.Name, err)
		}
		s := truthOf(t, e.Name)
		wrong := map[string]planted{}
		for _, p := range s.Planted {
			wrong[p.Reading] = p
		}
		values, near, sum := 0, 0, 0.0
		for i, r := range book.Readings {
			if r.Side != "" && (s.Marks[r.Side][1] > 0) != (r.Hand == "left") {
				t.Errorf("%s: %s is said to lie %s", e.Name, r.Side, r.Hand)
			}
			p, mistaken := wrong[strconv.Itoa(i+1)]
			for k, z := range book.misfits(t, r, s) {
				if !mistaken || k > 0 {
					if math.Abs(z) > 4 {
						t.Errorf("%s: reading %d, %+v, is %.1f sd off", e.Name, i+1, r, z)
					}
					values++
					sum += z * z
					continue
				}
				if math.Abs(z) < 4 {
					near++
				}
				if off := book.misfits(t, r.with(p.Read), s)[0]; math.Abs(off) > 4 || !r.typed(p.Typed) {
					t.Errorf("%s: reading %d, %+v, was %.1f sd off; planted %+v", e.Name, i+1, r, off, p)
				}
			}
		}
		t.Logf("%s: %d values, χ²/n %.2f", e.Name, values, sum/float64(values))
		if dev := math.Abs(sum - float64(values)); values < 40 || dev > 2*math.Sqrt(2*float64(values)) {
			t.Errorf("%s: χ² of %d values is %.1f", e.Name, values, sum)
		}
		if near > len(s.Planted)/8 { // where a column turns, neighbours are nearly equal
			t.Errorf("%s: %d of %d mistaken readings agree with the truth", e.Name, near, len(s.Planted))
		}
		for name, p := range s.Marks {
			r1 := s.Marks["r1"]
			if name[0] == 'r' && math.Hypot(p[0], p[1]) < math.Hypot(r1[0], r1[1]) {
				t.Errorf("%s: %s is nearer to A than r1", e.Name, name)
			}
		}
	}
}

// misfits are the values of a reading less the truth, in sd; of an offset the place along first.
func (b page) misfits(t *testing.T, r item, s sheet) []float64 {
	t.Helper()
	if m := strings.Fields(r.Tie); len(m) == 2 {
		d, sd := b.tape(t, s.Marks[m[0]], s.Marks[m[1]], m)
		return []float64{(length(t, r.Is) - d) / sd}
	}
	if r.Along+r.Round+r.Clear+r.Width != "" {
		l, sd := b.ofLine(t, r, s)
		return []float64{(length(t, r.Is) - l) / sd}
	}
	if r.Depth+r.Water != "" {
		return b.upright(t, r, s)
	}
	if r.Offset == "" {
		return nil
	}
	p := s.Marks[r.Offset] // of the string A to B, which is the x axis
	def, own := mm(t, b.Lines["rim"].Definition), sigmas(r.Sigma)
	return []float64{
		(r.At - p[0]) / math.Hypot(mm(t, own[0]), def),
		(r.Left - p[1]) / math.Hypot(mm(t, own[1]), def),
	}
}

// with is the item with what was read in place of what is typed.
func (r item) with(read string) item {
	if r.Offset != "" {
		r.At, _ = strconv.ParseFloat(read, 64)
		return r
	}
	r.Is = any(read)
	if f, err := strconv.ParseFloat(read, 64); err == nil {
		r.Is = f
	}
	return r
}

// typed says that the item holds this text.
func (r item) typed(text string) bool {
	f, err := strconv.ParseFloat(text, 64)
	switch {
	case r.Offset != "":
		return err == nil && r.At == f
	case err == nil:
		return r.Is == any(f)
	}
	return r.Is == any(text)
}
