package fieldbook_test

import (
	"math/rand/v2"

	"brimline/fieldbook"
)

// randomHeight makes bodies that tell of heights, floor and water. None names a tool or a line: what
// is appended by itself must find them in the book.
func randomHeight(r *rand.Rand, a, b string, v func(string) fieldbook.Value) fieldbook.Body {
	less := func(x fieldbook.Value) fieldbook.Value { x.Metres = -x.Metres; return x }
	runs := []fieldbook.Run{{Kind: "straight", Marks: []string{a, b}}}
	switch r.IntN(15) {
	case 0:
		return fieldbook.Reading{Kind: "level", Marks: []string{a, b}, Values: []fieldbook.Value{{Part: "rise", Metres: -0.012, Text: "-12 mm"}}}
	case 1:
		return fieldbook.Reading{Kind: "staff", Marks: []string{a}, Setup: "S1", Values: []fieldbook.Value{v("is")}, Sight: float64(r.IntN(3)) * 7.5}
	case 2:
		return fieldbook.Reading{Kind: "water", Marks: []string{a}, Water: []string{"w1", "w2"}[r.IntN(2)], Values: []fieldbook.Value{v("is")}}
	case 3:
		return fieldbook.Reading{Kind: "depth", Marks: []string{"f1"}, Below: []string{"w1", b}[r.IntN(2)], Values: []fieldbook.Value{v("is")}}
	case 4:
		return fieldbook.Reading{Kind: "depth", Marks: []string{"f2", a, b}, Below: "w1", Values: []fieldbook.Value{v("is"), v("at"), less(v("left"))}, Sigma: []float64{0.01, 0.02, 0.03}}
	case 5:
		return fieldbook.Reading{Kind: "depth", Marks: []string{"f3"}, Below: a, Values: []fieldbook.Value{v("is")}, Slope: true}
	case 6:
		return fieldbook.Reading{Kind: "wall", Marks: []string{a}, From: "track", To: "cove", Values: []fieldbook.Value{v("is")}}
	case 7:
		return fieldbook.Reading{Kind: "plumb", Marks: []string{a}, Values: []fieldbook.Value{v("down"), less(v("outward"))}}
	case 8:
		return fieldbook.Reading{Kind: "profile", Marks: []string{a}, From: "nose", To: "track", Values: []fieldbook.Value{v("outward"), less(v("down"))}[r.IntN(2):]}
	case 9:
		return fieldbook.Floor{Breaks: [][]string{{a, b}, {"f1", "f2"}}, Pad: []string{"p1", "p2", "p3"}, Toe: []string{b, a}}
	case 10:
		return fieldbook.Step{Name: "north steps", Where: "inside", Treads: []fieldbook.Tread{{Runs: runs, Down: fieldbook.Down{Below: "k1", Depth: float64(r.IntN(2)) * 0.3}}}}
	case 11:
		return fieldbook.Ledge{Name: "seat: wide", Kind: "bench", Runs: runs}
	case 12:
		return fieldbook.Setup{Name: "S1", Collimation: float64(r.IntN(2000)-1000) / 7e5, Sight: 12}
	case 13:
		return fieldbook.Tool{Name: "steel", Expansion: 11.5e-6, Standard: float64(r.IntN(3)) * 10}
	}
	return fieldbook.Rules{LevelLoop: fieldbook.LevelRule{Name: "ours", Flat: 0.004, Source: "this book, no source"}, Depths: "fina 2009 games"}
}
