package draft_test

import (
	"fmt"
	"math"
	"testing"

	"brimline/basin"
	"brimline/draft"
	"brimline/plane"
	"brimline/unit"
)

// deep is a made-up pool with its floor: a shallow flat, a slope to a level bottom, a flight of two treads and a
// seat; 12 rim levels and a loop.
func deep(t testing.TB, u unit.Unit) fixture {
	t.Helper()
	pool := rounded(1, 2.5, 9, 5, 0.4, 24, plane.Point{}, plane.Point{X: 7})
	f := makeOf("deep in "+string(u), pool, u)
	f.book.Place.Shallow, f.book.Place.Deep = "r23", "r11"
	style := unit.StyleFor(u)
	f.heights = draft.Heights{Levels: rimLevels(f), Depths: draft.DepthsOf(floorOf(t, pool.path), basin.Surface{Name: "w1", Height: basin.Height{Z: -0.152, Index: 0}}, style)}
	f.heights.Depths.EdgeProfiles = []draft.EdgeProfile{
		{Mark: "r5", Points: []draft.EdgePoint{{Edge: "nose"}, {Edge: "track", Outward: 0.032, Down: 0.048}, {Edge: "tile", Outward: 0.012, Down: 0.11}}},
		{Mark: "r17", Points: []draft.EdgePoint{{Edge: "nose"}, {Edge: "track", Outward: -0.028, Down: 0.046}}},
	}
	return f
}

// floorOf is the basin under a rim of 9 by 5 whose corner is at (1, 2.5).
func floorOf(t testing.TB, rim plane.Path) *basin.Basin {
	t.Helper()
	at := func(x, y float64) plane.Point { return plane.Point{X: 1 + x, Y: 2.5 + y} }
	s := basin.Spec{Rim: rim, Cov: []float64{9e-6, 0, 0, 1e-4}, Outline: func(pushes []basin.Push) float64 {
		sum := 0.0
		for _, p := range pushes {
			sum += p.By.Len()
		}
		return 4e-6 * sum * sum
	}}
	add := func(x, y, depth float64) {
		s.Floor = append(s.Floor, basin.Sounding{Name: fmt.Sprintf("f%d", len(s.Floor)+1), At: at(x, y), Height: basin.Height{Z: -0.152 - depth, Index: 1}, Place: 0.02})
	}
	for _, p := range [][3]float64{
		{3.4, 0, 1.07}, {3.4, 5, 1.10}, {5.8, 1.2, 2.25}, {7.9, 1.2, 2.28}, {7.9, 3.8, 2.29}, {5.8, 3.8, 2.26}, {9, 0.4, 1.3}, {9, 4.6, 1.32},
		{0.6, 1.3, 0.98}, {0.6, 3.6, 1.0}, {2, 2.5, 1.03}, {3.4, 2.5, 1.08}, {6.8, 2.5, 2.31}, {4.6, 2.5, 1.66},
	} {
		add(p[0], p[1], p[2])
	}
	s.Breaks, s.Pad = [][]int{{0, 11, 1}}, []int{2, 3, 4, 5}
	for k := range 12 {
		s.Levels = append(s.Levels, basin.Level{S: rim.Length() * float64(k) / 12, Height: basin.Exact(0.004 * math.Sin(float64(k)))})
	}
	ring := func(x0, y0, x1, y1 float64) plane.Path {
		return plane.Polyline([]plane.Point{at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)}, true)
	}
	s.Steps = []basin.Step{{Name: "steps", Treads: []basin.Tread{
		{Ring: ring(0, 1.4, 0.32, 3.6), Height: basin.Exact(-0.152 - 0.33)}, {Ring: ring(0, 1.4, 0.64, 3.6), Height: basin.Exact(-0.152 - 0.66)}}}}
	s.Ledges = []basin.Ledge{{Name: "seat", Kind: "bench", Ring: ring(1.6, 4.55, 3, 5), Height: basin.Exact(-0.6)}}
	low, high := at(0, 2.5), at(9, 2.5)
	s.Shallow, s.Deep = &low, &high
	b, found, err := basin.New(s)
	if err != nil || b == nil {
		t.Fatalf("%v, %v", found, err)
	}
	return b
}

// rimLevels are heights of every second mark, to 12 mm out of level.
func rimLevels(f fixture) *draft.Levels {
	v := &draft.Levels{Datum: "k1", Rule: "3 mm", Source: "common practice, no source"}
	line := f.result.Lines["rim"]
	p := draft.Profile{Line: "rim", Edge: line.Edge, Closed: true, Length: *line.Length}
	path := plane.Path{Closed: true}
	for i := range line.Vertices {
		w := line.Vertices[(i+1)%len(line.Vertices)]
		path.Segs = append(path.Segs, plane.Segment{A: plane.Point{X: line.Vertices[i].X, Y: line.Vertices[i].Y}, B: plane.Point{X: w.X, Y: w.Y}, Bulge: line.Vertices[i].Bulge})
	}
	mean := 0.0
	for k := 1; k <= 24; k += 2 {
		m := f.result.Marks[fmt.Sprintf("r%d", k)]
		foot := path.Foot(plane.Point{X: *m.X, Y: *m.Y})
		z := 0.006*math.Sin(foot.Along/4) + 0.001*float64(k%3)
		p.Stations = append(p.Stations, draft.Station{Mark: fmt.Sprintf("r%d", k), Along: foot.Along, Z: z, SD: ref(0.0008), Freeboard: ref(z + 0.152)})
		mean += z / 12
	}
	for i := range p.Stations {
		p.Stations[i].Off = p.Stations[i].Z - mean
	}
	v.Profiles = []draft.Profile{p}
	yes, no := true, false
	v.Loops = []draft.Loop{
		{Marks: []string{"k1", "r1", "r7", "r13"}, Setups: 2, Length: ref(28), Misclosure: 0.0021, Limit: ref(0.003), Within: &yes},
		{Marks: []string{"r13", "r19", "r1"}, Setups: 2, Length: ref(17), Misclosure: -0.0042, Limit: ref(0.003), Within: &no},
	}
	v.Latest, v.Waters = "w1", []draft.Water{{Name: "w1", Z: -0.152, SD: ref(0.003)}}
	v.Sightings = []draft.Sighting{{Tool: "level 2", Value: 0.00015, SD: ref(0.00004)}}
	return v
}
