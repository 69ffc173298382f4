package simulate

import (
	"math"
	"math/rand/v2"

	"brimline/plane"
)

// Group is a kind of mistake that spoils several readings alike. Plant draws where it begins and
// how large it is, so that five rows and more are touched and three and more are not; ok is
// false where the case gives no room for it.
type Group struct {
	Code  string
	plant func(r *rand.Rand, c *Case) (Mistake, bool)
}

// Groups is the list of kinds. The codes are those of the format.
var Groups = []Group{
	{"columns", drawColumns},
	{"slip", drawSlip},
	{"peg-moved", drawPegMoved},
	{"tape-zero", drawTapeZero},
	{"wrong-edge", drawWrongEdge},
}

// The fewest rows that a group touches and leaves alone.
const (
	rowsTouched = 5
	rowsLeft    = 3
)

// Plant plants the mistake in a case of ties from pegs and gives the case with its new book. The
// truth and the case given stay as they are.
func (g Group) Plant(c Case, seed uint64) (Case, Mistake, bool) {
	out := c.copied()
	m, ok := g.plant(stream(seed, streamMistakes, c.Shape.Name(), c.Method.Name(), g.Code), &out)
	if !ok {
		return c, Mistake{}, false
	}
	m.Kind = g.Code
	out.Book = book(out)
	return out, m, true
}

// fromRow draws the row from which on rows enough are touched and left alone.
func fromRow(r *rand.Rand, rows int) (int, bool) {
	room := rows - rowsTouched - rowsLeft
	if room < 0 {
		return 0, false
	}
	return rowsLeft + r.IntN(room+1), true
}

// drawColumns exchanges A and B from a row on: at the change of the crew, where there is one, to
// the end, else from a drawn row to another or to the end.
func drawColumns(r *rand.Rand, c *Case) (Mistake, bool) {
	from, ok := fromRow(r, len(c.Order))
	to := len(c.Order)
	if change := c.changeRow(); change > 0 && to-change >= rowsTouched {
		from = change
	} else if chance(r, 0.5) && ok {
		to = from + rowsTouched + r.IntN(to-from-rowsTouched+1)
	}
	return c.SwapColumns("A", "B", from, to), ok
}

// drawSlip lets the numbering of one peg's column slip from a row on.
func drawSlip(r *rand.Rand, c *Case) (Mistake, bool) {
	peg := pick(r, c.Pegs)
	row, ok := fromRow(r, len(c.Order))
	for _, k := range c.column(peg) {
		ok = ok && k >= 0
	}
	if !ok {
		return Mistake{}, false
	}
	return c.Slip(peg, row, chance(r, 0.5)), true
}

// drawPegMoved moves a peg by 100 to 300 mm half-way through the ties from it.
func drawPegMoved(r *rand.Rand, c *Case) (Mistake, bool) {
	peg := pick(r, c.Pegs)
	var ties []int
	for _, k := range c.column(peg) {
		if k >= 0 {
			ties = append(ties, k)
		}
	}
	n := len(ties)
	if n < 2*rowsTouched {
		return Mistake{}, false
	}
	first := max(rowsTouched, n*2/5)
	from := ties[first+r.IntN(max(1, n-2*first+1))]
	by := plane.Point{X: between(r, 0.1, 0.3)}.Turn(between(r, -math.Pi, math.Pi))
	return c.MovePeg(peg, from, by), true
}

// drawTapeZero lets the second of a crew, or their tape, read 100 mm too long throughout.
func drawTapeZero(_ *rand.Rand, c *Case) (Mistake, bool) {
	who := c.Readings[len(c.Readings)-1].By
	if who == "" || who == c.Readings[0].By {
		return Mistake{}, false
	}
	m := c.TapeZero(who, 0.1)
	rows := 0
	for _, k := range c.column("A") {
		if k >= 0 && c.Readings[k].By == who {
			rows++
		}
	}
	return m, rows >= rowsTouched || len(m.Hits) >= rowsTouched*len(c.Pegs)
}

// drawWrongEdge reads one peg's ties to another edge along part of the rim, 30 to 60 mm off.
func drawWrongEdge(r *rand.Rand, c *Case) (Mistake, bool) {
	peg := pick(r, c.Pegs)
	from, ok := fromRow(r, len(c.Order))
	if !ok {
		return Mistake{}, false
	}
	off := between(r, 0.03, 0.06)
	if chance(r, 0.5) {
		off = -off
	}
	return c.WrongEdge(peg, from, len(c.Order), off), true
}
