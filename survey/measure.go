package survey

import (
	"context"
	"math"
	"slices"

	"brimline/finding"
	"brimline/outline"
	"brimline/plane"
)

// Measured is what a check line between two places of a solved book says: metres, degrees, standard
// deviations in the same units, from the full covariance of the marks. Every length is level unless
// it is called sloping.
type Measured struct {
	From      string   `json:"from"` // as asked, with the line's mark or distance as understood
	To        string   `json:"to"`
	Length    float64  `json:"length"`
	LengthSD  float64  `json:"length_sd"`
	Bearing   *float64 `json:"bearing"` // clockwise from +y; null where the two lie too near each other to have one
	BearingSD *float64 `json:"bearing_sd"`

	Controlled bool     `json:"controlled"` // every reading that moves the length would show a mistake
	Unsettled  bool     `json:"unsettled"`  // it hangs on a mark with a second place, or on one that only lengths which nobody read hold
	Hidden     *float64 `json:"hidden"`     // the largest move of the length by an undetected mistake; null where not controlled

	Across *Across `json:"across"` // null unless a line was asked for as a whole
	Along  []Along `json:"along"`  // one for each line that has both places
	Rise   *Rise   `json:"rise"`   // null unless both heights are known
	Other  []Other `json:"other"`  // lengths where a mark has a second place
}

// Across is where the shortest way from a mark to a line meets it.
type Across struct {
	Line   string  `json:"line"`
	Side   string  `json:"side"`   // of the line: inside or outside of a closed one, left or right of an open one, on where it touches
	Square bool    `json:"square"` // false where it ends at a corner or at an end of the line
	Along  float64 `json:"along"`  // of its foot, from the first mark of the line
}

// Along is the way along a line from one place to the other; of a closed line in the direction of
// the book, and the other way round.
type Along struct {
	Line       string   `json:"line"`
	Length     float64  `json:"length"`
	LengthSD   float64  `json:"length_sd"`
	Opposite   *float64 `json:"opposite"` // null for an open line
	OppositeSD *float64 `json:"opposite_sd"`
}

// Other is the length where a mark lies at another place that the readings allow.
type Other struct {
	Mark   string  `json:"mark"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Length float64 `json:"length"`
}

// Ruler answers check lines on one solved book.
type Ruler struct {
	Marks map[string]*Mark // as in the Result; rises take their heights from here
	Stops []string         // why no figure of this book must be used; empty where none says so

	g    *gather
	held []*outline.Held // by line; nil until asked
	by   spun
}

// Rule solves a book to measure in it. The error is the context's, or says that nothing in the
// book gives a length.
func Rule(ctx context.Context, in Input, step func(Step)) (*Ruler, error) {
	g, err := gathered(ctx, in, nil, step)
	if err != nil {
		return nil, err
	}
	r := &Result{Marks: map[string]*Mark{}, Lines: map[string]*Line{}}
	g.scaleless()
	if err := g.sizeless(); err != nil {
		return nil, err
	}
	g.settle()
	g.frame()
	g.heldMarks()
	g.marks(r)
	return &Ruler{Marks: r.Marks, Stops: g.stops(), g: g, held: make([]*outline.Held, len(g.lines)), by: g.spun()}, nil
}

// stops are the findings that forbid the use of figures, with their cures.
func (g *gather) stops() []string {
	var out []string
	for _, f := range g.found {
		if f.Severity() == finding.Stop {
			out = append(out, f.Text(g.show())+"; "+f.Cure(g.show()))
		}
	}
	return out
}

// Measure is the check line from p to q: names of marks, points of lines (rim@3.20, rim@r7), or one
// mark and a line's name for the shortest way between them. A length without a unit is in that of
// the book. The error is a *Misplaced.
func (r *Ruler) Measure(p, q string) (*Measured, error) {
	a, err := r.find(p)
	if err != nil {
		return nil, err
	}
	b, err := r.find(q)
	if err != nil {
		return nil, err
	}
	if err := between(a, b); err != nil {
		return nil, err
	}
	m := &Measured{From: a.label, To: b.label, Along: []Along{}, Other: []Other{}}
	if a.whole || b.whole {
		if a, b, err = r.across(a, b, m); err != nil {
			return nil, err
		}
	}
	r.level(a, b, m)
	r.along(a, b, m)
	r.rise(a, b, m)
	r.other(a, b, m)
	return m, nil
}

// level fills length and bearing with their trust.
func (r *Ruler) level(a, b end, m *Measured) {
	d := b.at.Sub(a.at)
	way := d.Unit()
	if m.Across != nil && d.Len() < touching {
		way = b.spot.Way.Left()
	}
	across, _, _ := r.pull(a, b, way.Left()).Ask()
	length := r.pull(a, b, way)
	sd, hidden, ok := length.Ask()
	if m.Across == nil && d.Len() < nearby*across { // which way they lie from each other is open
		x, _, _ := r.pull(a, b, plane.Point{X: 1}).Ask()
		y, _, _ := r.pull(a, b, plane.Point{Y: 1}).Ask()
		sd = math.Hypot(x, y)
	}
	m.Length, m.LengthSD = d.Len(), r.g.factor*sd
	m.Unsettled = r.open(length)
	if m.Controlled = ok && !m.Unsettled; m.Controlled {
		m.Hidden = some(hidden)
	}
	if d.Len() < nearby*across || d.Len() < touching {
		return
	}
	turn := r.pull(a, b, way.Left().Mul(1/d.Len()))
	r.by.takeOff(turn)
	sd, _, _ = turn.Ask()
	deg := math.Mod((plane.Bearing(d)-r.g.place.Angle())*degree+720, 360)
	m.Bearing, m.BearingSD = &deg, some(r.g.factor*sd*degree)
}

// Two places nearer than touching are one; nearer than so many standard deviations across, they have
// no bearing.
const (
	touching = 1e-6 // metres
	nearby   = 3
)

// pull is the figure "b less a in a direction".
func (r *Ruler) pull(a, b end, way plane.Point) *outline.Measure {
	f := outline.NewMeasure(r.g.sol)
	a.add(f, way.Mul(-1))
	b.add(f, way)
	return f
}

// open says that a figure hangs on a mark with a second place, or on one that only a corrected length
// holds: what it rests on is not settled.
func (r *Ruler) open(f *outline.Measure) bool {
	const little = 0.05
	return slices.ContainsFunc(f.Marks(little), func(m int) bool { return len(r.g.rep.Other[m]) > 0 || r.g.held[m] })
}

// other gives the lengths to the second places of marks: those of doubtful groups, and those on the
// other side where nothing read settles it for the one mark and not for the other.
func (r *Ruler) other(a, b end, m *Measured) {
	if m.Across != nil {
		return
	}
	for _, way := range [][2]end{{a, b}, {b, a}} {
		from, to := way[0], way[1]
		if to.spot != nil {
			continue
		}
		for _, p := range r.places(to.mark, from.mark) {
			at := r.g.place.Apply(p)
			if d := p.Dist(from.at); math.Abs(d-m.Length) > m.LengthSD { // else it makes no difference
				m.Other = append(m.Other, Other{Mark: to.label, X: at.X, Y: at.Y, Length: d})
			}
		}
	}
}

// places are the second places of a mark, seen from another (−1 from a point of a line), in the inner datum.
func (r *Ruler) places(m, from int) []plane.Point {
	out := slices.Clone(r.g.rep.Other[m])
	if !r.g.openSide(m) || from < 0 || r.g.openSide(from) {
		return out
	}
	for _, o := range r.g.start.Other[m] {
		if p, ok := r.g.inner(o); ok {
			out = append(out, p)
		}
	}
	return out
}
