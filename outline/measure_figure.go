package outline

import (
	"math"

	"brimline/adjust"
	"brimline/plane"
)

// Measure is a figure between marks and points of lines, put together from its derivatives, to be
// asked how far it can be trusted.
type Measure struct {
	s     *adjust.Solution
	marks []float64 // derivatives by x and y of every mark of the network
	lines []lineShare
	open  float64 // variance of what lies between the marks of lines
}

// lineShare are derivatives by the unknowns of a line.
type lineShare struct {
	held *Held
	by   []float64
}

// NewMeasure is a figure that nothing moves yet.
func NewMeasure(s *adjust.Solution) *Measure {
	return &Measure{s: s, marks: make([]float64, 2*len(s.Net.Marks))}
}

// Mark adds to the derivatives of the figure by x and y of a mark.
func (f *Measure) Mark(m int, by plane.Point) {
	f.marks[2*m] += by.X
	f.marks[2*m+1] += by.Y
}

// Spot adds to its derivatives by x and y of a spot.
func (f *Measure) Spot(p *Spot, by plane.Point) {
	f.add(p, [4]float64{by.X, by.Y, 0, 0})
	across := p.Way.Left().Dot(by)
	f.open += across * across * p.open
}

// Along adds to its derivatives by the length along the line up to a spot, and by the whole length
// of that line.
func (f *Measure) Along(p *Spot, by, whole float64) { f.add(p, [4]float64{0, 0, by, whole}) }

// Way adds what the marks of the line leave open of so much of its length: the share of the way in
// the variance that the line's length has beyond its marks.
func (f *Measure) Way(p *Spot, metres float64) {
	l := p.held.line
	more := l.LengthSD*l.LengthSD - p.held.marksSD*p.held.marksSD
	f.open += math.Max(more, 0) * metres / p.Whole
}

func (f *Measure) add(p *Spot, by [4]float64) {
	to := f.share(p.held)
	for k, g := range by {
		if g == 0 {
			continue
		}
		for a, v := range p.byLine[k] {
			to[a] += g * v
		}
		for i, v := range p.byMark[k] {
			f.marks[2*p.marks[i/2]+i%2] += g * v
		}
	}
}

// share is the place of a line's derivatives.
func (f *Measure) share(h *Held) []float64 {
	for _, x := range f.lines {
		if x.held == h {
			return x.by
		}
	}
	f.lines = append(f.lines, lineShare{h, make([]float64, h.c.n)})
	return f.lines[len(f.lines)-1].by
}

// Marks are the marks that move the figure by more than least of their own move.
func (f *Measure) Marks(least float64) []int {
	var out []int
	by, _, _, _ := f.onMarks()
	for m := range len(by) / 2 {
		if math.Hypot(by[2*m], by[2*m+1]) > least {
			out = append(out, m)
		}
	}
	return out
}

// onMarks brings the shares of the lines home to the marks; variance is what these do not explain.
func (f *Measure) onMarks() (by []float64, variance, hidden float64, controlled bool) {
	by, variance, controlled = append([]float64(nil), f.marks...), f.open, true
	for _, x := range f.lines {
		pull := x.held.pull(x.by)
		x.held.onMarks(pull, by)
		variance += x.held.variance(pull)
		h, ok := x.held.rises(pull)
		hidden, controlled = math.Max(hidden, h), controlled && ok
	}
	return by, variance, hidden, controlled
}

// Ask gives the standard deviation of the figure from the full covariance of the marks, the largest
// change of it by an undetected mistake in one reading (NaN where nothing would show one), and
// whether every reading that moves it would show one. See adjust.Solution.Ask.
func (f *Measure) Ask() (sd, hidden float64, controlled bool) {
	by, variance, most, ok := f.onMarks()
	a := adjust.Functional{}
	for m := range len(by) / 2 {
		if by[2*m] != 0 || by[2*m+1] != 0 {
			a.Marks = append(a.Marks, m)
			a.Grad = append(a.Grad, by[2*m], by[2*m+1])
		}
	}
	sd, hidden, controlled = f.s.Ask(a)
	if controlled = controlled && ok; !controlled {
		return math.Hypot(sd, math.Sqrt(variance)), math.NaN(), false
	}
	return math.Hypot(sd, math.Sqrt(variance)), math.Max(hidden, most), true
}

// Slope is the derivative of the figure by x and y of a mark, through the lines as well.
func (f *Measure) Slope(m int) [2]float64 {
	by, _, _, _ := f.onMarks()
	return [2]float64{by[2*m], by[2*m+1]}
}
