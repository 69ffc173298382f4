package sheet_test

import (
	"math"
	"testing"

	"brimline/plane"
	"brimline/sheet"
)

// The foot and the corners of a text agree with its anchor and turn.
func TestTextPlaces(t *testing.T) {
	at := plane.Point{X: 50, Y: 40}
	w := sheet.Width("r17", 3.5, false)
	text := sheet.Text{S: "r17", At: at, Height: 3.5, Anchor: sheet.MidCentre}
	if f := text.Foot(); f.Dist(plane.Point{X: 50 - w/2, Y: 40 - 1.75}) > 1e-9 {
		t.Errorf("foot %v", f)
	}
	text.Turn = math.Pi / 2
	if f := text.Foot(); f.Dist(plane.Point{X: 50 + 1.75, Y: 40 - w/2}) > 1e-9 {
		t.Errorf("turned foot %v", f)
	}
	c := text.Corners()
	box := plane.BoundsOf(c[:]...)
	if math.Abs(box.Max.Y-box.Min.Y-w) > 1e-9 || math.Abs(box.Max.X-box.Min.X-1.25*3.5) > 1e-9 {
		t.Errorf("turned box %v", box)
	}
	if plane.Polyline(c[:], true).Area() <= 0 {
		t.Error("corners run clockwise")
	}
}

func TestUpright(t *testing.T) {
	for in, want := range map[float64]float64{0: 0, 90: 90, -90: 90, 180: 0, 91: 91, 100: -80, -80: -80, -86: 94, 270: 90, 45: 45, 225: 45} {
		if got := sheet.Upright(in*math.Pi/180) * 180 / math.Pi; math.Abs(got-want) > 1e-9 {
			t.Errorf("Upright(%g°) = %g°, want %g°", in, got, want)
		}
	}
}

func TestFlat(t *testing.T) {
	s := sheet.Sheet{Items: []sheet.Item{
		{Layer: sheet.LayerTitle, Shape: sheet.Text{S: "over", Height: 2.5}},
		{Layer: "nowhere", Shape: sheet.Text{S: "last", Height: 2.5}},
		{Layer: sheet.LayerEdge, Pen: sheet.PenEdge, Shape: sheet.Circle{R: 1}},
		{Layer: sheet.LayerTitle, Shape: sheet.Text{S: "struck\x01", Height: 2.5, Struck: true}},
		{Layer: sheet.LayerTitle, Shape: sheet.Text{S: "\x01", Height: 2.5}},
		{Layer: sheet.LayerTitle, Shape: sheet.Text{S: "no height"}},
	}}
	flat := s.Flat()
	if len(flat) != 5 {
		t.Fatalf("%d shapes, want circle, over, last, struck and its strike", len(flat))
	}
	if _, ok := flat[0].Shape.(sheet.Circle); !ok {
		t.Errorf("the edge is not drawn first: %T", flat[0].Shape)
	}
	for i, want := range []string{"over", "last", "struck"} {
		if got := flat[i+1].Shape.(sheet.Text).S; got != want {
			t.Errorf("text %d is %q, want %q", i, got, want)
		}
	}
	strike := flat[4].Shape.(sheet.Path).Segs[0]
	if w := sheet.Width("struck", 2.5, false); math.Abs(strike.Length()-w) > 1e-9 {
		t.Errorf("strike %g long, text %g", strike.Length(), w)
	}
}
