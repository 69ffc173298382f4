package survey

import (
	"math"
	"slices"

	"brimline/basin"
	"brimline/outline"
	"brimline/plane"
)

// outlined answers for the rim: the variance of a figure by how its pushes move the rim. The line moves
// with its marks, whose full covariance is asked of the solution; what their spacing leaves open of its
// area is spread over its length; a line derived from it may lie nearer or further all round. Where the line
// keeps no fit, the variance of its area takes the place of the first two.
func (y *body) outlined() func([]basin.Push) float64 {
	held := outline.Hold(y.line)
	spots := map[float64]*outline.Spot{} // looked up only
	f2 := y.g.factor * y.g.factor
	whole := y.path.Length()
	return func(pushes []basin.Push) float64 {
		p := y.spread(pushes, whole)
		between := y.line.AreaSD*y.line.AreaSD - y.line.AreaReadSD*y.line.AreaReadSD
		if held == nil {
			return f2*y.line.AreaSD*y.line.AreaSD*p.each + y.loose*y.loose*p.all*p.all
		}
		y.find(held, spots, pushes)
		m := outline.NewMeasure(y.g.sol)
		back := y.g.place.Inverse()
		for _, x := range pushes {
			m.Spot(spots[x.S], back.ApplyVec(x.By))
		}
		y.still(m, spots, pushes)
		sd, _, _ := m.Ask()
		return f2*(sd*sd+math.Max(0, between)*p.each) + y.loose*y.loose*p.all*p.all
	}
}

// still takes shift and turn of the rim as a whole out of a figure: the floor was read beside it and
// goes with it. A figure whose pushes at p add up to a force F and to a moment M about the middle of the
// marks loses F times the mean move of these and M times Σ d×δ / Σ d², their turn.
func (y *body) still(m *outline.Measure, spots map[float64]*outline.Spot, pushes []basin.Push) {
	var middle, force plane.Point
	n := float64(len(y.line.Marks))
	for _, k := range y.line.Marks {
		middle = middle.Add(y.g.sol.X.Point(k).Mul(1 / n))
	}
	size, moment := 0.0, 0.0
	for _, k := range y.line.Marks {
		d := y.g.sol.X.Point(k).Sub(middle)
		size += d.Dot(d)
	}
	back := y.g.place.Inverse()
	for _, x := range pushes {
		by := back.ApplyVec(x.By)
		force = force.Add(by)
		moment += spots[x.S].At.Sub(middle).Cross(by)
	}
	for _, k := range y.line.Marks {
		d := y.g.sol.X.Point(k).Sub(middle)
		m.Mark(k, force.Mul(-1/n).Sub(d.Left().Mul(moment/size)))
	}
}

// find adds the stations of pushes that are not known yet.
func (y *body) find(held *outline.Held, spots map[float64]*outline.Spot, pushes []basin.Push) {
	var along, at []float64
	for _, x := range pushes {
		if spots[x.S] == nil && !slices.Contains(at, x.S) {
			at = append(at, x.S)
			along = append(along, y.base.Foot(x.At).Along)
		}
	}
	if len(at) == 0 {
		return
	}
	for k, s := range held.Fixed(along) {
		spots[at[k]] = s
	}
}

// pushed is what pushes are across the rim: all together for a move outward by a metre all round, and each
// its square for each metre of rim, as a share of the rim's length.
type pushed struct{ all, each float64 }

func (y *body) spread(pushes []basin.Push, whole float64) pushed {
	list := slices.Clone(pushes)
	slices.SortStableFunc(list, func(a, b basin.Push) int {
		switch {
		case a.S < b.S:
			return -1
		case a.S > b.S:
			return 1
		}
		return 0
	})
	var out pushed
	for i, x := range list {
		across := x.By.Dot(y.across(x.S))
		out.all += across
		before, after := list[(i+len(list)-1)%len(list)].S, list[(i+1)%len(list)].S
		length := math.Mod(after-before+whole, whole) / 2
		if len(list) < 3 || length <= 0 {
			length = whole / float64(len(list))
		}
		out.each += across * across / (length * whole)
	}
	return out
}

// across is how a place of the rim moves when the rim moves out by a metre all round: at a corner along
// its mitre.
func (y *body) across(s float64) plane.Point {
	const near = 1e-6 // metres
	side := func(s float64) plane.Point {
		seg, share, _ := y.path.Place(s)
		return y.path.Segs[seg].Tangent(share).Left()
	}
	a, b := side(s-near), side(s+near)
	return a.Add(b).Mul(1 / math.Max(1+a.Dot(b), 0.2))
}
