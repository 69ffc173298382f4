package fieldbook

import "math"

// DerivedForm is a line derived from another, the parallel of it at a distance: {from: rim, outward:
// 30 mm, sigma: 3 mm, edge: tile}. With outward: profile the distance is what the profiles say that
// were read from the other's edge to its own.
type DerivedForm struct {
	From    Name   `book:"from" jsonschema:"required"`
	Inward  Length `book:"inward"`
	Outward Length `book:"outward"`
	Sigma   Length `book:"sigma"`
	Edge    Choice `book:"edge" jsonschema:"enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=wall-foot,enum=deck,enum=other"`
	State   Choice `book:"state" jsonschema:"enum=found,enum=planned"`
	Corners Choice `book:"corners" jsonschema:"enum=mitre"`
}

func (f *DerivedForm) build(b *builder, name string) Body {
	l := Line{Name: name, From: f.From.text, Edge: f.Edge.text, State: f.State.text, Mitre: f.Corners.text == "mitre"}
	l.Sigma = b.length(f.Sigma, positive)
	if l.From == name {
		b.fault(f.From.at, "self", "line "+quoted(name)+" from itself", "another line")
	}
	switch {
	case f.Inward.given() == f.Outward.given():
		b.fault(f.From.at, "one-of", "line "+quoted(name)+" lies either inward or outward of "+quoted(l.From), "inward or outward, with the distance")
	case f.Outward.text == "profile":
		l.Profile = true
		if l.Edge == "" {
			b.fault(f.Outward.at, "missing-key", "line "+quoted(name)+" lies where the profiles say, and nothing says which edge it is", "edge")
		}
	case f.Outward.given():
		l.Outward = b.length(f.Outward, positive)
	default:
		l.Outward = -b.length(f.Inward, positive)
	}
	return l
}

func (l Line) writeDerived(w *writer) {
	w.text("from", l.From)
	switch {
	case l.Profile:
		w.text("outward", "profile")
	case l.Outward < 0:
		w.length("inward", -l.Outward)
	default:
		w.length("outward", l.Outward)
	}
	w.length("sigma", l.Sigma)
	w.text("edge", l.Edge)
	w.text("state", l.State)
	if l.Mitre {
		w.text("corners", "mitre")
	}
}

// DerivedSigma is the standard deviation of the distance of a derived line that gives none, metres; a
// planned line lies where it is said to. Common practice, no source.
const DerivedSigma = 0.005

// Spread is the standard deviation of the distance of a derived line, metres.
func (l Line) Spread() float64 {
	if l.Sigma > 0 || l.State == "planned" {
		return l.Sigma
	}
	return DerivedSigma
}

// Derived is where a line comes from: the line with runs at the bottom, its distance from that one
// with its standard deviation, and whether any step keeps corners sharp.
type Derived struct {
	Root            Line
	Outward, Spread float64
	Mitre           bool
}

// Parent follows derived lines down to the one that has runs; false where a line on the way is not
// in the book, or the lines derive from each other in a circle.
func (b *Book) Parent(name string) (d Derived, ok bool) {
	for range len(b.Lines) + 1 {
		l, found := b.Line(name)
		if !found {
			return Derived{}, false
		}
		if l.From == "" {
			d.Root = l
			return d, true
		}
		if l.Profile && l.Outward == 0 && l.Sigma == 0 {
			return Derived{}, false
		}
		name, d.Outward, d.Mitre = l.From, d.Outward+l.Outward, d.Mitre || l.Mitre
		d.Spread = math.Hypot(d.Spread, l.Spread())
	}
	return Derived{}, false
}
