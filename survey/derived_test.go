package survey_test

import (
	"math"
	"strings"
	"testing"

	"brimline/survey"
)

// The parallel of a stadium is one, at every distance: length and area by Steiner, arcs stay arcs.
func TestDerivedStadium(t *testing.T) {
	lines := "  track: {from: rim, outward: 32 mm, sigma: 3 mm, edge: track}\n  wall: {from: track, inward: 0.532 m, sigma: 4 mm, edge: wall-foot}\n"
	r := run(t, stadiumBook(statedRuns, "", lines))
	if got := strings.Join(r.LineOrder, " "); got != "rim track wall" {
		t.Fatalf("lines %s", got)
	}
	for _, c := range []struct {
		name, from string
		d          float64
	}{{"track", "rim", 0.032}, {"wall", "track", -0.5}} {
		l := r.Lines[c.name]
		near(t, c.name+" length", *l.Length, 12+2*math.Pi*(2+c.d), 1e-5)
		near(t, c.name+" area", *l.Area, 6*2*(2+c.d)+math.Pi*(2+c.d)*(2+c.d), 1e-4)
		if l.From != c.from || !l.Closed || len(l.Runs) != 4 || len(l.Vertices) != 4 || l.Runs[1].Kind != "arc" || l.Runs[1].From != "r2" || l.Runs[1].To != "r6" {
			t.Fatalf("%+v", l)
		}
		near(t, c.name+" radius", *l.Runs[1].Radius, 2+c.d, 1e-5)
	}
	if r.Lines["track"].Outward == nil || *r.Lines["track"].Outward != 0.032 || r.Lines["track"].Inward != nil {
		t.Errorf("%+v", r.Lines["track"])
	}
	if r.Lines["wall"].Inward == nil || *r.Lines["wall"].Inward != 0.532 || r.Lines["wall"].Outward != nil {
		t.Errorf("%+v", r.Lines["wall"])
	}
}

// The sd of a derived line holds its parent's and its distance's own. The second: what a distance
// larger by its sigma does, found by deriving again.
func TestDerivedTrust(t *testing.T) {
	errors := []float64{0.001, -0.002, 0.001, 0.002, -0.001}
	at := func(distance, sigma string) *survey.Line {
		return run(t, stadiumBook(statedRuns, "", "  tile: {from: rim, outward: "+distance+", sigma: "+sigma+"}\n", errors...)).Lines["tile"]
	}
	parent := run(t, stadiumBook(statedRuns, "", "", errors...)).Lines["rim"]
	l, more := at("300 mm", "20 mm"), at("320 mm", "20 mm")
	near(t, "length sd", *l.LengthSD, math.Hypot(*parent.LengthSD, *more.Length-*l.Length), 1e-4)
	own := *more.Area - *l.Area
	least, most := math.Hypot(*parent.AreaSD, own), math.Hypot(*parent.AreaSD+0.3**parent.LengthSD, own)
	if *l.AreaSD < least-0.01 || *l.AreaSD > most+0.01 {
		t.Errorf("area sd %.4f, between %.4f and %.4f wanted", *l.AreaSD, least, most)
	}
	near(t, "sd of a radius", *l.Runs[1].RadiusSD, math.Hypot(*parent.Runs[1].RadiusSD, 0.020), 1e-9)
	if unsaid := run(t, stadiumBook(statedRuns, "", "  tile: {from: rim, outward: 300 mm}\n", errors...)).Lines["tile"]; *unsaid.LengthSD <= *parent.LengthSD {
		t.Error("a distance without sigma is taken as exact")
	}
	planned := run(t, stadiumBook(statedRuns, "", "  tile: {from: rim, outward: 300 mm, state: planned}\n", errors...)).Lines["tile"]
	near(t, "planned", *planned.LengthSD, *parent.LengthSD, 1e-12)
}

// Round a rectangle of 4 × 3 outward corners are arcs, or stay sharp; inward both are sharp.
func TestDerivedCorners(t *testing.T) {
	const d = 0.2
	exact := ""
	for _, r := range []string{"r1", "r2", "r3", "r4"} {
		exact += tie("A", r, 0) + tie("B", r, 0)
	}
	r := run(t, small("", tie("A", "B", 0)+exact, rim+"  round: {from: rim, outward: 200 mm}\n  sharp: {from: rim, outward: 200 mm, corners: mitre}\n  in: {from: rim, inward: 200 mm}\n"))
	near(t, "round", *r.Lines["round"].Length, 14+2*math.Pi*d, 1e-4)
	near(t, "round area", *r.Lines["round"].Area, 12+14*d+math.Pi*d*d, 1e-4)
	near(t, "sharp", *r.Lines["sharp"].Length, 14+8*d, 1e-4)
	near(t, "in", *r.Lines["in"].Area, (4-2*d)*(3-2*d), 1e-4)
	if n := len(r.Lines["round"].Runs); n != 8 {
		t.Errorf("%d runs round, want 4 sides and 4 corners", n)
	}
	for _, x := range r.Lines["round"].Runs {
		if x.Kind == "arc" && (x.From != x.To || x.From == "") {
			t.Errorf("a corner from %q to %q", x.From, x.To)
		}
	}
	if n := len(r.Lines["sharp"].Runs); n != 4 {
		t.Errorf("%d runs sharp", n)
	}
}

// What has no room beside it is named; a line of which nothing is left too.
func TestDerivedVanishes(t *testing.T) {
	notched := strings.Replace(statedRuns, "{straight: [r6, r7], joint: tangent}", "{straight: [r6, n1]}, {arc: [n1, n2, n3]}, {straight: [n3, r7]}", 1)
	readings := aside3("n1", 5.2, 6) + aside3("n2", 5, 5.8) + aside3("n3", 4.8, 6)
	r := run(t, stadiumBook(notched, readings, "  coping: {from: rim, outward: 305 mm, edge: back}\n"))
	if f := mustFind(t, r, "piece-gone"); len(f.Marks) != 1 || f.Marks[0] != "n1–n3" {
		t.Errorf("%+v", f)
	}
	r = run(t, stadiumBook(statedRuns, "", "  none: {from: rim, inward: 2.1 m}\n"))
	mustFind(t, r, "no-parallel")
	if l := r.Lines["none"]; l.Length != nil || l.Area != nil || len(l.Runs) > 0 {
		t.Errorf("%+v", l)
	}
}

// Tile, waterline and track stand under the nose: not inside it.
func TestInsideNose(t *testing.T) {
	for _, c := range []struct {
		line  string
		found bool
	}{
		{"{from: rim, outward: 30 mm, sigma: 3 mm, edge: tile}", false},
		{"{from: rim, inward: 30 mm, sigma: 3 mm, edge: tile}", true},
		{"{from: rim, inward: 30 mm, sigma: 3 mm, edge: deck}", false},
		{"{from: rim, inward: 30 mm, sigma: 15 mm, edge: track}", false}, // within what the distance leaves open
		{"{from: rim, inward: 30 mm, edge: track, state: planned}", false},
		{"{edge: waterline, runs: [{straight: [h3, r4]}]}", true},
	} {
		r := run(t, stadiumBook(statedRuns, "", "  under: "+c.line+"\n"))
		if c.found {
			mustFind(t, r, "inside-nose")
		} else {
			mustNotFind(t, r, "inside-nose")
		}
	}
}

// A derived line waits with its parent, and is no outline to judge.
func TestDerivedWaits(t *testing.T) {
	r := run(t, stadiumBook(strings.Replace(statedRuns, "r3, r4", "r3, x1, r4", 1), "", "  track: {from: rim, outward: 32 mm}\n"))
	if l := r.Lines["track"]; l.Length != nil || len(l.Waits) != 1 || l.Waits[0] != "x1" {
		t.Errorf("%+v", l)
	}
	with, without := run(t, stadiumBook(statedRuns, "", "  track: {from: rim, outward: 32 mm}\n")), run(t, stadiumBook(statedRuns, "", ""))
	if len(with.Shape.Tests) != len(without.Shape.Tests) || with.Shape.State != without.Shape.State {
		t.Errorf("%s with %d tests, without the track %s with %d", with.Shape.State, len(with.Shape.Tests), without.Shape.State, len(without.Shape.Tests))
	}
}

// An unreached corner stands in the result: where the sides of the rectangle meet.
func TestUnreachedCorner(t *testing.T) {
	lines := "lines:\n  rim: {closed: true, edge: nose, runs: [{straight: [r1, p1, c1]}, {straight: [c1, p2, r3]}, {straight: [r3, r4]}, {straight: [r4, r1]}]}\n" +
		"unreached: {c1: {meet: [[r1, p1], [p2, r3]], sigma: 5 mm}}\n"
	src := small("", tie("A", "B", 0)+tie("A", "r1", 0)+tie("B", "r1", 0)+tie("A", "r3", 0)+tie("B", "r3", 0)+tie("A", "r4", 0)+tie("B", "r4", 0)+aside("p1", 1, 4)+aside("p2", 2.5, 5), lines)
	r := run(t, src)
	l := r.Lines["rim"]
	if len(l.Corners) != 1 || l.Corners[0].Name != "c1" {
		t.Fatalf("%+v: %+v", l, r.Findings)
	}
	near(t, "x", l.Corners[0].X, 1, 1e-4)
	near(t, "y", l.Corners[0].Y, 5, 1e-4)
	if l.Corners[0].SD < 0.005 || l.Corners[0].SD > 0.1 {
		t.Errorf("sd %g", l.Corners[0].SD)
	}
	near(t, "area", *l.Area, 12, 2e-3)
}
