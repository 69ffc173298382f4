package simulate_test

import (
	"math"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
)

// Every mistake typed can be read by the book's own parser, at the value said, in every unit.
func TestSpoiledBooksParse(t *testing.T) {
	visits(3, func(c simulate.Case, _ simulate.Plan) {
		w, planted := simulate.Plant(c, c.Seed, simulate.Planting{Share: 0.2, Kinds: everyKind, Unlisted: 0.1})
		b, err := fieldbook.Parse("spoiled.yaml", w.Book)
		if err != nil {
			t.Fatalf("%s: %v", title(c), err)
		}
		for _, m := range planted {
			h := m.Hits[0]
			for _, r := range b.Readings {
				if r.N == h.N && (math.Abs(r.Values[0].Metres-h.Now) > 1e-12 || !strings.Contains(r.Values[0].Text, h.After)) {
					t.Fatalf("%s: reading %s is %+v in the book, said %+v", title(c), h.N, r.Values[0], h)
				}
			}
		}
	})
}
