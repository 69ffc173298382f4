package plane

import "math"

// Foot is the place of a path that is nearest to a point.
type Foot struct {
	At    Point
	Seg   int
	Share float64 // of the segment's length
	Along float64 // metres from the start of the path
	Right float64 // distance of the point in metres, positive where it lies right of the travel
	Past  float64 // metres by which the point lies behind the start or ahead of the end of an open path, along its direction there; else 0
}

// Foot is the foot of pt on the path; the first where several are as near. Beside a corner the side
// is told by the mean of the two directions; a point on the path has Right 0. An empty path gives
// Seg −1 and Right +Inf. For the distance in and out of a ring see Distance.
func (p Path) Foot(pt Point) Foot {
	seg, share, at := p.Nearest(pt)
	if seg < 0 {
		return Foot{Seg: -1, Right: math.Inf(1)}
	}
	f := Foot{At: at, Seg: seg, Share: share, Right: at.Dist(pt)}
	for _, s := range p.Segs[:seg] {
		f.Along += s.Length()
	}
	f.Along += share * p.Segs[seg].Length()
	if p.heading(seg, share).Cross(pt.Sub(at)) > 0 {
		f.Right = -f.Right
	}
	f.Past = p.past(seg, share, pt)
	return f
}

// past is how far beyond an end of an open path a point lies whose foot is at a share of a segment.
func (p Path) past(seg int, share float64, pt Point) float64 {
	switch s := p.Segs[seg]; {
	case p.Closed:
	case seg == 0 && share == 0:
		return math.Max(0, s.Tangent(0).Dot(s.A.Sub(pt)))
	case seg == len(p.Segs)-1 && share == 1:
		return math.Max(0, s.Tangent(1).Dot(pt.Sub(s.B)))
	}
	return 0
}

// Between is the way along the path from the foot of a to the foot of b in metres: on a closed path
// in the direction of travel, round is the whole of it; on an open one negative where b comes first,
// and round is 0. NaN for an empty path.
func (p Path) Between(a, b Point) (ahead, round float64) {
	from, to := p.Foot(a), p.Foot(b)
	if from.Seg < 0 {
		return math.NaN(), 0
	}
	ahead = to.Along - from.Along
	if !p.Closed {
		return ahead, 0
	}
	round = p.Length()
	if ahead < 0 {
		ahead += round
	}
	return ahead, round
}

// heading is the direction of travel, at a joint the sum of both.
func (p Path) heading(seg int, share float64) Point {
	way, n := p.Segs[seg].Tangent(share), len(p.Segs)
	switch {
	case share == 0 && (seg > 0 || p.Closed):
		return way.Add(p.Segs[(seg+n-1)%n].Tangent(1))
	case share == 1 && (seg+1 < n || p.Closed):
		return way.Add(p.Segs[(seg+1)%n].Tangent(0))
	}
	return way
}

// Place is where one comes after so many metres along the path: round and round a closed one; of an
// open one before its start or past its end the end itself. ok is false for an empty path.
func (p Path) Place(along float64) (seg int, share float64, ok bool) {
	whole := p.Length()
	if len(p.Segs) == 0 || math.IsNaN(along) || whole == 0 {
		return 0, 0, false
	}
	if p.Closed {
		if along = math.Mod(along, whole); along < 0 {
			along += whole
		}
	}
	along = math.Max(0, along)
	for i, s := range p.Segs {
		l := s.Length()
		if along <= l && l > 0 {
			return i, along / l, true
		}
		along -= l
	}
	return len(p.Segs) - 1, 1, true
}
