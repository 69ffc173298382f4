package sheet_test

import (
	"testing"

	"brimline/plane"
	"brimline/sheet"
)

// Every text of a table lies in its own column and row.
func TestTableHoldsItsTexts(t *testing.T) {
	rows := [][]sheet.Cell{
		{{Text: "1"}, {Text: "17′ 11¹⁵⁄₁₆″"}, {Text: "good", Symbol: sheet.FilledSquare, Ink: sheet.Good}},
		{{Text: "123456"}, {Text: "5.2", Struck: true}, {Text: "doubtful", Symbol: sheet.HalfSquare, Ink: sheet.Open}},
	}
	columns := sheet.Fitted([]sheet.Column{
		{Title: []string{"no."}, Align: sheet.End}, {Title: []string{"as", "read"}, Unit: "m", Align: sheet.End}, {Title: []string{"state"}}}, rows, 2.5)
	table := sheet.Table{Columns: columns, Rows: rows, At: plane.Point{X: 20, Y: 200}, Height: 2.5, Row: 5}
	s := sheet.Sheet{Items: []sheet.Item{{Layer: sheet.LayerTables, Shape: table}}}
	var texts []sheet.Text
	for _, it := range s.Flat() {
		if x, ok := it.Shape.(sheet.Text); ok {
			texts = append(texts, x)
		}
	}
	if len(texts) != 5+6 {
		t.Fatalf("%d texts", len(texts))
	}
	for i, x := range texts[5:] {
		k, r := i%3, i/3
		left := 20.0
		for _, c := range columns[:k] {
			left += c.Width
		}
		c := x.Corners()
		box := plane.BoundsOf(c[:]...)
		top := 200 - table.Head() - float64(r)*5
		if box.Min.X < left || box.Max.X > left+columns[k].Width || box.Max.Y > top || box.Min.Y < top-5 {
			t.Errorf("%q at %v leaves its cell", x.S, box)
		}
	}
	if table.Depth() != table.Head()+10 {
		t.Errorf("depth %g", table.Depth())
	}
}

// The shapes of states differ without their colours.
func TestSymbolsDiffer(t *testing.T) {
	shapes := map[string]sheet.Symbol{}
	for _, y := range []sheet.Symbol{sheet.FilledSquare, sheet.HalfSquare, sheet.BarredSquare} {
		s := sheet.Sheet{Items: y.Draw(sheet.LayerTables, sheet.Black, plane.Point{}, 2)}
		d := s.Dump()
		if other, twice := shapes[d]; twice {
			t.Errorf("symbols %d and %d look alike", y, other)
		}
		shapes[d] = y
	}
	if sheet.NoSymbol.Draw(sheet.LayerTables, sheet.Black, plane.Point{}, 2) != nil {
		t.Error("no symbol draws something")
	}
}

func TestView(t *testing.T) {
	v := sheet.View{Model: plane.Point{X: 2, Y: 1}, Paper: plane.Point{X: 100, Y: 80}, Scale: 50}
	p := plane.Point{X: 3.5, Y: -0.25}
	q := v.Point(p)
	if q.Dist(plane.Point{X: 130, Y: 55}) > 1e-9 {
		t.Errorf("%v on paper", q)
	}
	if v.Back(q).Dist(p) > 1e-12 {
		t.Errorf("%v comes back as %v", p, v.Back(q))
	}
	arc := plane.Path{Segs: []plane.Segment{{A: p, B: plane.Point{X: 5, Y: 5}, Bulge: 0.3}}}
	if got, want := v.Path(arc).Length(), arc.Length()*20; got < want-1e-9 || got > want+1e-9 {
		t.Errorf("path %g mm, want %g", got, want)
	}
}
