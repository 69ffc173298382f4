package simulate

import (
	"math"

	"brimline/plane"
)

// Assumption is something that a book states or takes for granted and that is not so.
type Assumption struct {
	Name  string
	spoil func(c *Case, seed uint64)
}

// Assumptions is the list of those that can be broken.
var Assumptions = []Assumption{
	{"every reading half as unsure again as stated", scatter},
	{"one reading in twenty three times as unsure", heavyTail},
	{"one mark moved by 10 mm between its readings", moveMark},
}

// Break gives the case with its new book. The truth and the case given stay as they are; where a
// mark moved, the truth is its first place.
func (a Assumption) Break(c Case, seed uint64) Case {
	out := c.copied()
	a.spoil(&out, seed)
	out.Book = book(out)
	return out
}

func scatter(c *Case, _ uint64) {
	for i := range c.Readings {
		c.noisier(i, 1.5)
	}
}

func heavyTail(c *Case, seed uint64) {
	r := stream(seed, streamBroken, c.Shape.Name(), c.Method.Name())
	for i := range c.Readings {
		if chance(r, 0.05) {
			c.noisier(i, 3)
		}
	}
}

// noisier types a reading again with its noise made larger.
func (c *Case) noisier(i int, by float64) {
	x := &c.Readings[i]
	for k := range x.Read {
		x.Read[k] = x.True[k] + by*(x.Read[k]-x.True[k])
		text, typed := typedAs(x.Read[k], c.Unit, false)
		if x.handed(k) {
			text, _ = typedAs(math.Abs(x.Read[k]), c.Unit, false)
		}
		x.Text[k], x.Typed[k] = text, typed
	}
}

// moveMark lets a mark that two ties and more touch stand elsewhere for the later half of them.
func moveMark(c *Case, seed uint64) {
	r := stream(seed, streamBroken, c.Shape.Name(), c.Method.Name())
	for _, n := range r.Perm(len(c.Order)) {
		name := c.Order[n]
		var ties []int
		for i, x := range c.Readings {
			if x.Kind == "tie" && (x.Marks[0] == name || x.Marks[1] == name) {
				ties = append(ties, i)
			}
		}
		if len(ties) < 2 {
			continue
		}
		by := plane.Point{X: 0.010}.Turn(between(r, -math.Pi, math.Pi))
		for _, i := range ties[len(ties)/2:] {
			c.reread(i, name, by)
		}
		return
	}
}
