package fieldbook_test

import (
	"math"
	"strings"
	"testing"

	"brimline/fieldbook"
)

const profiledBook = `brimline: 1
readings:
READINGS
lines:
  rim: {edge: nose, runs: [{straight: [r1, r2]}]}
  track: {from: rim, outward: profile, edge: trackSIGMA}
  foot: {from: track, inward: 4 mm, sigma: 3 mm, edge: wall-foot}
`

func profiled(t *testing.T, readings, sigma string) fieldbook.Book {
	t.Helper()
	src := strings.ReplaceAll(strings.ReplaceAll(profiledBook, "READINGS", readings), "SIGMA", sigma)
	b, err := fieldbook.Parse("x", []byte(src))
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	return b
}

// The distance is the mean over the stations; what no station says is as uncertain as they scatter.
func TestProfiledLine(t *testing.T) {
	const three = "- {profile: r1, from: nose, to: track, outward: 30 mm}\n- {profile: r2, from: track, to: nose, inward: 36 mm}\n- {profile: r3, from: nose, to: track, outward: 33 mm, down: 5 mm}\n" +
		"- {profile: r3, from: nose, to: track, outward: 90 mm, check: true}\n- {profile: r3, from: nose, to: tile, outward: 90 mm}\n- {profile: r3, from: nose, to: track, down: 4 mm}\n"
	for _, c := range []struct {
		name, readings, sigma string
		outward, spread       float64
	}{
		{"three stations", three, "", 0.033, 0.003 * math.Sqrt(4.0/3)},
		{"its own sigma", three, ", sigma: 1 mm", 0.033, 0.001},
		{"one station", "- {profile: r1, from: nose, to: track, inward: 12 mm, sigma: 3 mm}\n", "", -0.012, math.Hypot(0.003, fieldbook.DerivedSigma)},
		{"stations that agree", "- {profile: r1, from: nose, to: track, outward: 30 mm, sigma: [4 mm]}\n- {profile: r2, from: nose, to: track, outward: 30 mm, sigma: 4 mm}\n", "", 0.030, 0.004 * math.Sqrt(1.5)},
	} {
		b := profiled(t, c.readings, c.sigma)
		d, ok := b.Parent("track")
		if !ok || math.Abs(d.Outward-c.outward) > 1e-12 || math.Abs(d.Spread-c.spread) > 1e-12 {
			t.Errorf("%s: %v, %+v; want %v ± %v", c.name, ok, d, c.outward, c.spread)
		}
		foot, ok := b.Parent("foot")
		if want := math.Hypot(c.spread, 0.003); !ok || math.Abs(foot.Outward-c.outward+0.004) > 1e-12 || math.Abs(foot.Spread-want) > 1e-12 {
			t.Errorf("%s: foot %+v; want a spread of %v", c.name, foot, want)
		}
	}
}

// Without a station the line waits; it is not put at zero.
func TestProfiledLineWaits(t *testing.T) {
	for _, readings := range []string{"- {note: none yet}\n", "- {profile: r1, from: nose, to: track, outward: 30 mm, class: owner}\n", "- {profile: r1, from: nose, to: track, outward: 30 mm}\n- {strike: 1}\n"} {
		b := profiled(t, readings, ", sigma: 1 mm")
		if d, ok := b.Parent("foot"); ok {
			t.Errorf("%q: at %+v", readings, d)
		}
		var codes []string
		for _, f := range b.Findings {
			codes = append(codes, f.Code)
		}
		if !strings.Contains(strings.Join(codes, " "), "profile-unread") {
			t.Errorf("%q: findings %v", readings, codes)
		}
	}
}
