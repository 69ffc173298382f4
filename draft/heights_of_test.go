package draft_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
	"brimline/write/glb"
)

// sounded is the text of a book of a rectangle 8 by 4 with everything that heights are made of: two level set-ups
// closed on their first mark, freeboards, soundings from a string, a flight of steps and the shape of the edge.
func sounded() string {
	rim := map[string]plane.Point{"r1": {X: 1, Y: 2}, "r2": {X: 5, Y: 2}, "r3": {X: 9, Y: 2}, "r4": {X: 9, Y: 6}, "r5": {X: 5, Y: 6}, "r6": {X: 1, Y: 6}}
	up := map[string]float64{"r1": 0, "r2": 0.004, "r3": 0.007, "r4": 0.002, "r5": -0.003, "r6": -0.005}
	order := []string{"r1", "r2", "r3", "r4", "r5", "r6"}
	pegs := map[string]plane.Point{"A": {}, "B": {X: 10}, "C": {X: 5, Y: 8}}
	var b strings.Builder
	b.WriteString("brimline: 1\njob: {name: Rowan Bend, measured: 2026-06-02}\nrules: {depths: ispsc 2012 residential}\nplace: {shallow: r1, deep: r3}\nreadings:\n- {tie: A B, is: 10.000}\n- {tie: A C, is: 9.434}\n- {tie: B C, is: 9.434}\n- {side: C, of: A B, hand: left}\n")
	for _, p := range []string{"A", "B", "C"} {
		for _, m := range order {
			fmt.Fprintf(&b, "- {tie: %s %s, is: %.3f}\n", p, m, pegs[p].Dist(rim[m]))
		}
	}
	for _, m := range order[:4] {
		fmt.Fprintf(&b, "- {staff: %s, setup: S1, is: %.3f}\n", m, 1.4-up[m])
	}
	for _, m := range []string{"r4", "r5", "r6", "r1"} {
		fmt.Fprintf(&b, "- {staff: %s, setup: S2, is: %.3f}\n", m, 1.3-up[m])
	}
	for _, m := range []string{"r1", "r4"} {
		fmt.Fprintf(&b, "- {water: w1, under: %s, is: %.3f}\n", m, 0.15+up[m])
	}
	for i, at := range []float64{0.5, 2.5, 5, 7.5} {
		for k, left := range []float64{0.5, 2, 3.5} {
			fmt.Fprintf(&b, "- {depth: f%d%d, below: w1, is: %.2f, line: r1 r3, at: %.2f, left: %.2f}\n", i, k, []float64{1, 1.1, 1.8, 2}[i], at, left)
		}
	}
	b.WriteString("- {profile: r2, from: nose, to: track, outward: 32 mm, down: 48 mm}\n- {profile: r2, from: track, to: tile, inward: 20 mm, down: 60 mm}\n- {profile: r5, from: nose, to: waterline, down: 150 mm}\n")
	b.WriteString("lines:\n  rim: {edge: nose, closed: true, runs: [{straight: [r1, r2, r3]}, {straight: [r3, r4]}, {straight: [r4, r5, r6]}, {straight: [r6, r1]}]}\n")
	b.WriteString("floor: {breaks: [[f10, f11, f12]]}\n")
	return b.String()
}

func heightsRun(t *testing.T) fixture {
	t.Helper()
	b, err := fieldbook.Parse("rowan.yaml", []byte(sounded()))
	if err != nil {
		t.Fatal(err)
	}
	r, err := survey.Run(t.Context(), survey.Input{Book: &b}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return fixture{name: "rowan", book: &b, result: r}
}

// What the sheets are drawn from is what the result says.
func TestHeightsOfAResult(t *testing.T) {
	f := heightsRun(t)
	h := draft.HeightsOf(f.book, f.result)
	if h.Levels == nil || h.Depths == nil {
		t.Fatalf("levels %v, depths %v; findings %v", h.Levels, h.Depths, f.result.Findings)
	}
	if v := h.Levels; v.Datum != "r1" || v.Latest != "w1" || len(v.Profiles) != 1 || len(v.Profiles[0].Stations) != 6 || len(v.Loops) != 1 {
		t.Errorf("levels %+v", v)
	}
	last := -1.0
	for _, s := range h.Levels.Profiles[0].Stations {
		if s.Along <= last || s.Z != *f.result.Marks[s.Mark].Z || s.Freeboard == nil || math.Abs(*s.Freeboard-0.15-s.Z) > 0.002 {
			t.Errorf("station %+v after %g", s, last)
		}
		last = s.Along
	}
	d, w := h.Depths, f.result.Water
	if d.Held.Volume != w.Volume || d.Held.VolumeSD != *w.VolumeSD || d.Deepest.Depth != w.Deepest || d.Water != w.Surface {
		t.Errorf("held %+v", d.Held)
	}
	sum := 0.0
	for _, p := range d.Held.Causes {
		sum += p.Value
	}
	if math.Abs(sum-*w.VolumeSD**w.VolumeSD) > 1e-9 {
		t.Errorf("the causes come to %g, the variance is %g", sum, *w.VolumeSD**w.VolumeSD)
	}
	e := d.EdgeProfiles
	if len(e) != 2 || len(e[0].Points) != 3 || math.Abs(e[0].Points[2].Outward-0.012) > 1e-12 || math.Abs(e[0].Points[2].Down-0.108) > 1e-12 || !math.IsNaN(e[1].Points[1].Outward) {
		t.Errorf("profiles %+v", e)
	}
}

// The sheets come without being asked for, say what they must, and nothing on them overlaps.
func TestSheetsOfHeights(t *testing.T) {
	f := heightsRun(t)
	for _, size := range sheet.Sizes {
		sheets := draft.Plan(f.book, f.result, draft.Options{Paper: size.Name})
		for _, s := range sheets {
			clear(t, s)
		}
		all := flowing(sheets)
		for _, w := range []string{"exaggerated 50 times", "No statement about diving", "Section A–A", "usual shortcut", "Stage table", "Edge at r2", "out not read", "International Swimming Pool and Spa Code"} {
			if !strings.Contains(all, w) {
				t.Errorf("%s: %q is not said", size.Name, w)
			}
		}
	}
}

// The bodies in space hold the volume: floor, walls and what stands in it, closed by the water.
func TestBodiesHoldTheVolume(t *testing.T) {
	f := heightsRun(t)
	bodies := draft.InSpace(f.book, f.result, draft.Options{})
	level := f.result.Water.Level
	volume := 0.0
	s := glb.Scene{Title: "Rowan Bend"}
	for _, b := range bodies {
		s.Bodies = append(s.Bodies, glb.Body(b))
		if !slices.Contains([]string{"floor", "coves", "steps", "ledges"}, b.Name) {
			continue
		}
		for _, tri := range b.Triangles {
			p, q, r := b.Points[tri[0]], b.Points[tri[1]], b.Points[tri[2]]
			area := q.Plan().Sub(p.Plan()).Cross(r.Plan().Sub(p.Plan())) / 2
			volume += area * (level - (p.Z+q.Z+r.Z)/3)
		}
	}
	if math.Abs(volume-f.result.Water.Volume) > 1e-6 {
		t.Errorf("prisms over the floor hold %g, the water %g", volume, f.result.Water.Volume)
	}
	var out bytes.Buffer
	if err := glb.Write(&out, s); err != nil {
		t.Error(err)
	}
}
