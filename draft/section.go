package draft

import (
	"math"

	"brimline/plane"
)

// reach is from the first to the last place of a section, metres along it.
func (s Section) reach() (low, high float64) {
	box := s.box()
	if box.Empty() {
		return 0, 0
	}
	return box.Min.X, box.Max.X
}

// box holds all of it: metres along by heights.
func (s Section) box() plane.Box {
	box := plane.EmptyBox()
	for _, c := range s.Pieces {
		box = box.Join(plane.BoundsOf(c.Points...))
	}
	return box
}

// floor are the places of floor and coves in order along.
func (s Section) floor() []plane.Point {
	var out []plane.Point
	for _, c := range s.Pieces {
		if c.Part == "floor" {
			out = append(out, c.Points...)
		}
	}
	return out
}

// falls is where the floor of a section begins to fall most sharply; NaN where it nowhere does.
func (s Section) falls() float64 {
	pts := corners(s.floor(), 0.01)
	at, most := math.NaN(), 0.03
	for i := 1; i+1 < len(pts); i++ {
		if turn := slope(pts[i-1], pts[i]) - slope(pts[i], pts[i+1]); turn > most {
			at, most = pts[i].X, turn
		}
	}
	return at
}

func slope(a, b plane.Point) float64 { return (b.Y - a.Y) / (b.X - a.X) }

// corners are the places of a chain that say its shape to a tolerance, its ends always (U. Ramer,
// An iterative procedure for the polygonal approximation of plane curves, 1972).
func corners(pts []plane.Point, tolerance float64) []plane.Point {
	if len(pts) < 3 {
		return pts
	}
	chord := plane.Segment{A: pts[0], B: pts[len(pts)-1]}
	far, at := tolerance, -1
	for i, p := range pts[1 : len(pts)-1] {
		if q, _ := chord.Nearest(p); q.Dist(p) > far {
			far, at = q.Dist(p), i+1
		}
	}
	if at < 0 {
		return []plane.Point{pts[0], pts[len(pts)-1]}
	}
	left := corners(pts[:at+1], tolerance)
	return append(left[:len(left):len(left)], corners(pts[at:], tolerance)[1:]...)
}

// wet are the stretches along a section in which the water at a level stands: between the places
// where its line passes the level.
func (s Section) wet(level float64) [][2]float64 {
	var cuts []float64
	for _, c := range s.Pieces {
		for i := 1; i < len(c.Points); i++ {
			a, b := c.Points[i-1], c.Points[i]
			if (a.Y > level) != (b.Y > level) {
				cuts = append(cuts, a.X+(b.X-a.X)*(level-a.Y)/(b.Y-a.Y))
			}
		}
	}
	if len(cuts) == 0 {
		if box := s.box(); !box.Empty() && box.Max.Y <= level {
			return [][2]float64{{box.Min.X, box.Max.X}}
		}
	}
	var out [][2]float64
	for i := 1; i < len(cuts); i += 2 {
		out = append(out, [2]float64{cuts[i-1], cuts[i]})
	}
	return out
}
