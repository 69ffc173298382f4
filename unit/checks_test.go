package unit_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"brimline/unit"
)

// Item S-01 of the published checks: NIST and NOAA, Federal Register 85 FR 62698 (5 October
// 2020), 1 ft = 0.3048 m exactly.
func TestPublishedConversions(t *testing.T) {
	raw, err := os.ReadFile("../testdata/checks/checks-open.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Items []struct {
			ID       string
			Expected json.RawMessage
		}
	}
	if err := json.Unmarshal(raw, &file); err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{}
	for _, it := range file.Items {
		if it.ID == "S-01" {
			if err := json.Unmarshal(it.Expected, &want); err != nil {
				t.Fatal(err)
			}
		}
	}
	if len(want) == 0 {
		t.Fatal("no item S-01")
	}
	for _, c := range []struct {
		text string
		want float64
	}{{"1 ft", want["foot_m"]}, {"1 in", want["inch_m"]}, {"3 ft", want["yard_m"]}} {
		if got, err := unit.ParseLength(c.text, unit.M); err != nil || got != c.want {
			t.Errorf("%s = %v, %v; want exactly %v", c.text, got, err, c.want)
		}
	}
	if unit.FT.Metres() != want["foot_m"] || unit.IN.Metres() != want["inch_m"] {
		t.Errorf("Metres: %v, %v", unit.FT.Metres(), unit.IN.Metres())
	}
	// An acre is 43560 square feet, so its side in feet squared gives the area of the item.
	side, _ := unit.ParseLength("1 ft", unit.M)
	if got := 43560 * side * side; math.Abs(got-want["acre_intl_m2"]) > 1e-7 {
		t.Errorf("acre %v", got)
	}
	// The note of the item: 12 ft 3 5/8 in must be right to 0.1 mm; it is exact.
	if got, err := unit.ParseLength("12 ft 3 5/8 in", unit.M); err != nil || got != 3.749675 {
		t.Errorf("12 ft 3 5/8 in = %v, %v", got, err)
	}
}
