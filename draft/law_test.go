package draft_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// patch is the room of a text on a sheet.
type patch struct {
	text    string
	corners []plane.Point
	box     plane.Box
}

// patches are the texts of a sheet.
func patches(s sheet.Sheet) []patch {
	var out []patch
	for _, it := range s.Flat() {
		if t, ok := it.Shape.(sheet.Text); ok {
			c := t.Corners()
			out = append(out, patch{t.S, c[:], plane.BoundsOf(c[:]...)})
		}
	}
	return out
}

// apart says that two convex rings share no inside: by the area that one keeps when the other
// clips it (Sutherland and Hodgman, Reentrant polygon clipping, Communications of the ACM 17, 1974).
func apart(a, b []plane.Point) bool {
	left := a
	for i := range b {
		p, q := b[i], b[(i+1)%len(b)]
		var next []plane.Point
		for k := range left {
			u, v := left[k], left[(k+1)%len(left)]
			su, sv := q.Sub(p).Cross(u.Sub(p)), q.Sub(p).Cross(v.Sub(p))
			if su >= 0 {
				next = append(next, u)
			}
			if su*sv < 0 {
				next = append(next, plane.Lerp(u, v, su/(su-sv)))
			}
		}
		if left = next; len(left) == 0 {
			return true
		}
	}
	return plane.Polyline(left, true).Area() < 1e-6
}

// strips are the straights of a path as thin rings, for apart.
func strips(p plane.Path) [][]plane.Point {
	pts := p.Flatten(0.02)
	if p.Closed {
		pts = append(pts, pts[0])
	}
	var out [][]plane.Point
	for i := 1; i < len(pts); i++ {
		side := pts[i].Sub(pts[i-1]).Unit().Left().Mul(0.05)
		out = append(out, []plane.Point{pts[i-1].Sub(side), pts[i].Sub(side), pts[i].Add(side), pts[i-1].Add(side)})
	}
	return out
}

// clear tests one sheet: no two texts overlap; none leaves the frame; none lies on the edge, on a
// dimension or a leader, on an axis, or on a mark.
func clear(t *testing.T, s sheet.Sheet) {
	t.Helper()
	texts := patches(s)
	for i, a := range texts {
		for _, b := range texts[:i] {
			if a.box.Meets(b.box, 0) && !apart(a.corners, b.corners) {
				t.Errorf("%q lies on %q at %v", a.text, b.text, a.corners[0])
			}
		}
		space := s.Size.Space()
		for _, c := range a.corners {
			if c.X < space.Min.X || c.X > space.Max.X || c.Y < space.Min.Y || c.Y > space.Max.Y {
				t.Errorf("%q leaves the frame at %v", a.text, c)
				break
			}
		}
	}
	for _, it := range s.Items {
		if table, ok := it.Shape.(sheet.Table); ok && (table.At.X+table.Width() > s.Size.Space().Max.X-2 || table.At.X < s.Size.Space().Min.X+2) {
			t.Errorf("a table is %.1f mm wide and reaches %.1f", table.Width(), table.At.X+table.Width())
		}
	}
	for _, it := range s.Flat() {
		for _, ring := range solid(it) {
			box := plane.BoundsOf(ring...)
			for _, a := range texts {
				if box.Meets(a.box, 0) && !apart(ring, a.corners) {
					t.Errorf("%q lies on the %s at %v", a.text, it.Layer, ring[0])
				}
			}
		}
	}
}

// solid are the parts of a shape that no text may touch.
func solid(it sheet.Item) [][]plane.Point {
	switch it.Layer {
	case sheet.LayerNext, sheet.LayerEdge, sheet.LayerInferred, sheet.LayerDimensions, sheet.LayerNumbers, sheet.LayerAxes, sheet.LayerAlternatives, sheet.LayerAround,
		sheet.LayerMarks, sheet.LayerPegs:
	default:
		return nil
	}
	switch shape := it.Shape.(type) {
	case sheet.Path:
		return strips(shape.Path)
	case sheet.Circle:
		var ring []plane.Point
		for k := 0; k < 12; k++ {
			ring = append(ring, shape.Centre.Add(plane.Point{X: shape.R}.Turn(float64(k)*0.5236)))
		}
		return [][]plane.Point{ring}
	}
	return nil
}

// The law of the drawing, on every fixture, paper and way of drawing.
func TestNothingOverlaps(t *testing.T) {
	for _, f := range slices.Concat(fixtures(), trusted(), solved(t)) {
		for _, size := range sheet.Sizes {
			for _, ties := range []bool{false, true} {
				t.Run(fmt.Sprintf("%s on %s ties %v", f.name, size.Name, ties), func(t *testing.T) {
					for _, s := range draft.Plan(f.book, f.result, draft.Options{Paper: size.Name, ShowTies: ties, Version: "0.1.0"}) {
						clear(t, s)
					}
				})
			}
		}
	}
}

// solved are the example books with their real results.
func solved(t *testing.T) []fixture {
	t.Helper()
	books, err := filepath.Glob("../examples/*/book.yaml")
	if err != nil || len(books) == 0 {
		t.Fatalf("the example books: %v, %d", err, len(books))
	}
	var out []fixture
	for _, name := range books {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		b, err := fieldbook.Parse(name, src)
		if err != nil {
			t.Fatal(err)
		}
		r, err := survey.Run(t.Context(), survey.Input{Book: &b}, nil)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, fixture{name: filepath.Base(filepath.Dir(name)), book: &b, result: r})
	}
	return out
}

// The test itself sees an overlap: a text on a text, on the edge, out of the frame.
func TestOverlapIsSeen(t *testing.T) {
	a := []plane.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 3}, {X: 0, Y: 3}}
	shift := func(dx, dy float64) []plane.Point {
		var out []plane.Point
		for _, p := range a {
			out = append(out, p.Add(plane.Point{X: dx, Y: dy}))
		}
		return out
	}
	if apart(a, shift(9.9, 2.9)) || apart(a, a) || apart(strips(plane.Polyline([]plane.Point{{X: 5, Y: -5}, {X: 5, Y: 9}}, false))[0], a) {
		t.Error("an overlap went unseen")
	}
	if !apart(a, shift(10.01, 0)) || !apart(a, shift(0, -3.01)) {
		t.Error("neighbours count as overlapping")
	}
}
