package locate

import (
	"math"

	"brimline/plane"
)

// circle is a distance from a placed mark; long is the further sd of a tape round something, where
// the place is nearer than read.
type circle struct {
	mark        int
	centre      plane.Point
	r, sd, long float64
	lent        bool
}

// off is how far a place is off the circle, in standard deviations.
func (k circle) off(p plane.Point) float64 {
	e := p.Dist(k.centre) - k.r
	if e < 0 && k.long > 0 {
		return e / math.Hypot(k.sd, k.long)
	}
	return e / k.sd
}

// fromCircles proposes where circles cross; all takes lent ones too.
func (c *candidate) fromCircles(all bool) {
	few := spread(c.circles)
	for i, a := range few {
		for _, b := range few[i+1:] {
			if (a.lent || b.lent) && !all || a.mark == b.mark || a.centre.Dist(b.centre) < 0.05 {
				continue
			}
			l, r, gap := plane.MeetCircles(a.centre, a.r, b.centre, b.r)
			if math.Abs(gap) > 6*math.Hypot(a.sd, b.sd)+3*(a.long+b.long) {
				continue
			}
			for _, p := range []plane.Point{l, r} {
				u, v := a.centre.Sub(p).Unit(), b.centre.Sub(p).Unit()
				c.places = append(c.places, place{p: p, angle: math.Abs(u.Cross(v)), pair: [2]int{a.mark, b.mark}})
				if l == r {
					break
				}
			}
		}
	}
}

// spread thins many circles to about mostCircles, evenly through the book: all vote, these
// propose.
func spread(all []circle) []circle {
	const mostCircles = 10
	if len(all) <= mostCircles {
		return all
	}
	var few []circle
	for i := range mostCircles {
		few = append(few, all[i*len(all)/mostCircles])
	}
	return few
}
