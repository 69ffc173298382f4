package draft

import "brimline/plane"

// Heights is what the sheets of levels and depths are drawn from; either may be nil.
type Heights struct {
	Levels *Levels
	Depths *Depths
}

// Levels are heights along lines, metres upward, with their standard deviations.
type Levels struct {
	Datum     string // the mark that heights are counted from; "" where none stands still
	Profiles  []Profile
	Loops     []Loop
	Rule      string // that loops are compared with, and where it is from
	Source    string
	Waters    []Water
	Latest    string // of them, to which freeboards are counted
	Sightings []Sighting
}

// Profile is a line with its stations in order along it; Length is that of the whole line.
type Profile struct {
	Line, Edge string
	Closed     bool
	Length     float64
	Stations   []Station
}

// Station is a place along a line. Off is its height above the mean of the stations; SD is that
// of Z, nil where it is not known.
type Station struct {
	Mark      string
	Along     float64
	Z, Off    float64
	SD        *float64
	Freeboard *float64 // above the latest water surface; nil where none is read
}

// Loop is a closed way of levelling. Limit and Within are nil where the rule asks for a length that is
// not known.
type Loop struct {
	Marks      []string
	Setups     int
	Length     *float64
	Misclosure float64
	Limit      *float64
	Within     *bool
}

// Water is a surface read.
type Water struct {
	Name string
	Z    float64
	SD   *float64
}

// Sighting is the collimation found of a level: the rise of its line of sight, metres a metre. SD
// nil: the readings could not tell it.
type Sighting struct {
	Tool  string
	Value float64
	SD    *float64
}

// out is from the lowest to the highest station.
func (p Profile) out() (low, high Station) {
	for i, s := range p.Stations {
		if i == 0 || s.Z < low.Z {
			low = s
		}
		if i == 0 || s.Z > high.Z {
			high = s
		}
	}
	return low, high
}

// at is the height of the line at a distance along it: straight between stations, on a closed line
// from the last to the first too; beyond the ends of an open line that of the nearest.
func (p Profile) at(along float64) float64 {
	n := len(p.Stations)
	for i, s := range p.Stations {
		next := p.Stations[(i+1)%n]
		from, to := s.Along, next.Along
		if i+1 == n {
			if !p.Closed {
				break
			}
			to += p.Length
			if along < p.Stations[0].Along {
				along += p.Length
			}
		}
		if along >= from && along <= to && to > from {
			return s.Z + (next.Z-s.Z)*(along-from)/(to-from)
		}
	}
	if along < p.Stations[0].Along {
		return p.Stations[0].Z
	}
	return p.Stations[n-1].Z
}

// inSpace is a path with the heights of its profile.
func (p Profile) inSpace(path plane.Path) (at []plane.Point, z []float64) {
	const sagitta = 0.0005
	s := 0.0
	for i, seg := range path.Segs {
		pts := plane.Path{Segs: []plane.Segment{seg}}.Flatten(sagitta)
		for k, q := range pts[:len(pts)-1] {
			at, z = append(at, q), append(z, p.at(s+seg.Length()*float64(k)/float64(len(pts)-1)))
		}
		s += seg.Length()
		if i+1 == len(path.Segs) && !path.Closed {
			at, z = append(at, pts[len(pts)-1]), append(z, p.at(s))
		}
	}
	return p.withStations(path, at, z)
}

// withStations puts the stations in where the path has no corner of its own.
func (p Profile) withStations(path plane.Path, at []plane.Point, z []float64) ([]plane.Point, []float64) {
	for _, s := range p.Stations {
		seg, share, ok := path.Place(s.Along)
		if !ok {
			continue
		}
		q := path.Segs[seg].At(share)
		k, near := nearestSide(at, path.Closed, q)
		if k < 0 || near {
			continue
		}
		at = append(at[:k+1], append([]plane.Point{q}, at[k+1:]...)...)
		z = append(z[:k+1], append([]float64{s.Z}, z[k+1:]...)...)
	}
	return at, z
}

// nearestSide is the side of a chain of places next to one, and whether one of its ends is that place.
func nearestSide(at []plane.Point, closed bool, q plane.Point) (side int, end bool) {
	path := plane.Polyline(at, closed)
	side, _, _ = path.Nearest(q)
	if side < 0 {
		return -1, false
	}
	const same = 1e-4
	return side, path.Segs[side].A.Dist(q) < same || path.Segs[side].B.Dist(q) < same
}
