package mistake

import (
	"math"
	"sort"

	"brimline/network"
	"brimline/plane"
)

// usual is the usual step along a line, its median: on straights, where marks stand at the ends and
// at will between, and elsewhere. 0: too few to tell.
type usual struct{ straight, other float64 }

// fewSteps is how many steps of a sort are too few to tell which is usual.
const fewSteps = 3

// usualSteps are the usual steps of a line with its marks at places; a NaN place has none.
func (f *finder) usualSteps(p network.Path, at func(m int) plane.Point) usual {
	var straight, other []float64
	f.eachStep(p, func(a, b int) {
		switch d := at(a).Dist(at(b)); {
		case math.IsNaN(d):
		case f.straight[[2]int{a, b}]:
			straight = append(straight, d)
		default:
			other = append(other, d)
		}
	})
	return usual{median(straight), median(other)}
}

// of is the usual step of the sort that leads from a to b.
func (u usual) of(f *finder, a, b int) float64 {
	if f.straight[[2]int{a, b}] {
		return u.straight
	}
	return u.other
}

func median(d []float64) float64 {
	if len(d) < fewSteps {
		return 0
	}
	sort.Float64s(d)
	return d[len(d)/2]
}

// eachStep visits the neighbours on a line.
func (f *finder) eachStep(p network.Path, visit func(a, b int)) {
	n := len(p.Marks)
	for k := range n {
		if k+1 < n || p.Closed {
			visit(p.Marks[k], p.Marks[(k+1)%n])
		}
	}
}

// findStraights notes the neighbours on runs that the book says are straight.
func (f *finder) findStraights() {
	f.straight = map[[2]int]bool{}
	if f.book == nil {
		return
	}
	for _, l := range f.book.Lines {
		for _, r := range l.Runs {
			for k := 0; r.Kind == "straight" && k+1 < len(r.Marks); k++ {
				a, ok1 := f.s.Net.ByName[r.Marks[k]]
				b, ok2 := f.s.Net.ByName[r.Marks[k+1]]
				if ok1 && ok2 {
					f.straight[[2]int{a, b}], f.straight[[2]int{b, a}] = true, true
				}
			}
		}
	}
}

// steps weighs how odd the steps along a line are: a run of rows read wrongly makes the edge leap.
func (f *finder) steps(t *trial) {
	home := make(map[int]plane.Point, len(t.v.mark))
	for r, m := range t.v.mark {
		home[m] = t.home[r]
	}
	at := func(m int) plane.Point {
		if p, ok := home[m]; ok {
			return p
		}
		return plane.Point{X: math.NaN()}
	}
	next := map[[2]int]float64{} // usual step of the line by neighbours
	for _, p := range f.s.Net.Paths {
		u := f.usualSteps(p, at)
		f.eachStep(p, func(a, b int) {
			next[[2]int{a, b}], next[[2]int{b, a}] = u.of(f, a, b), u.of(f, b, a)
		})
	}
	for r := range len(t.gain) - 1 {
		u := next[[2]int{t.v.mark[r], t.v.mark[r+1]}]
		if u == 0 {
			continue
		}
		t.plain[r] = leap(t.home[r].Dist(t.home[r+1]), u)
		t.both[r] = leap(t.new[r].Dist(t.new[r+1]), u)
		t.into[r] = leap(t.home[r].Dist(t.new[r+1]), u)
		t.off[r] = leap(t.new[r].Dist(t.home[r+1]), u)
	}
}

// leap is how odd a step is, as a log odds, never more than mostLeap: common practice, no source.
func leap(d, usual float64) float64 {
	const (
		mostLeap = 6.0
		from     = 2.5 // times the usual step
		spread   = 0.3 // of its logarithm
	)
	z := math.Max(0, math.Log(math.Max(d, 1e-6)/(from*usual))/spread)
	return math.Min(mostLeap, z*z/2)
}

// oddness is how odd the steps along the lines are at a state, as a log odds.
func (f *finder) oddness(x network.State) float64 {
	sum := 0.0
	for _, p := range f.s.Net.Paths {
		u := f.usualSteps(p, x.Point)
		f.eachStep(p, func(a, b int) {
			d := x.Point(a).Dist(x.Point(b))
			if w := u.of(f, a, b); w > 0 && !math.IsNaN(d) {
				sum += leap(d, w)
			}
		})
	}
	return sum
}
