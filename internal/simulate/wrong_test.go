package simulate_test

import (
	"bytes"
	"math"
	"testing"

	"brimline/internal/simulate"
)

func TestWrongPlantsWhatItSays(t *testing.T) {
	kinds := map[string]int{}
	every(2, func(c simulate.Case) {
		before := append([]byte(nil), c.Book...)
		w, planted := simulate.Wrong(c, 7, 0.08)
		if want := int(math.Ceil(0.08 * float64(len(c.Readings)))); len(planted) != want {
			t.Fatalf("%s: %d errors planted, want %d", title(c), len(planted), want)
		}
		if again, _ := simulate.Wrong(c, 7, 0.08); !bytes.Equal(again.Book, w.Book) || !bytes.Equal(before, c.Book) {
			t.Fatalf("%s: not the same twice, or the case given was changed", title(c))
		}
		was, now := readBack(t, c), readBack(t, w)
		changed := 0
		for i := range now {
			if now[i].value == was[i].value {
				continue
			}
			g := planted[changed]
			kinds[g.Kind]++
			if g.Index != now[i].reading || g.Part != now[i].part || math.Abs(g.Now-now[i].value) > 1e-9 || math.Abs(g.Was-was[i].value) > 1e-9 {
				t.Fatalf("%s: value %d went from %v to %v; said %+v", title(c), i, was[i], now[i], g)
			}
			changed++
			size := map[string]float64{"metre": 1, "tenth": 0.1, "foot": 0.3048}[g.Kind]
			if d := math.Abs(g.Now - g.Was); d < 0.05 || (size > 0 && math.Abs(d-size) > 0.0006) {
				t.Fatalf("%s: %+v", title(c), g)
			}
		}
		if changed != len(planted) {
			t.Fatalf("%s: %d values changed, %d said", title(c), changed, len(planted))
		}
	})
	for _, k := range []string{"metre", "tenth", "foot", "digits"} {
		if kinds[k] == 0 {
			t.Errorf("no error of kind %s in %v", k, kinds)
		}
	}
	c := simulate.Pool(1, simulate.Shapes[0], simulate.Methods[0], simulate.Options{})
	if same, none := simulate.Wrong(c, 1, 0); len(none) != 0 || !bytes.Equal(same.Book, c.Book) {
		t.Error("a share of 0 planted something")
	}
}
