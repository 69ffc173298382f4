package basin

import (
	"math"

	"brimline/mesh"
)

// Part says what a piece of the basin is.
type Part int

// The parts.
const (
	Floor Part = iota
	Walls
	Coves
	Steps
	Ledges
	parts int = iota
)

// Parts names the parts, in their order.
var Parts = [...]string{"floor", "walls", "coves", "steps", "ledges"}

func (p Part) String() string { return Parts[p] }

// vec is a vector in space.
type vec [3]float64

func (a vec) sub(b vec) vec { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func (a vec) cross(b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func (a vec) len() float64 { return math.Sqrt(a[0]*a[0] + a[1]*a[1] + a[2]*a[2]) }

// vertex is a corner of the shell: it moves with its node, −1 for none, and with the lean of the
// wall at a depth below the rim. At the foot of the wall that depth hangs on the floor and the rim.
type vertex struct {
	p    vec
	z    form
	node int
	down float64
	foot bool
}

// face is a triangle of the shell, its normal into the water.
type face struct {
	v    [3]int
	part Part
}

// shell is the wetted body: floor, walls, coves, and the tops and fronts of what stands in it.
type shell struct {
	vertices []vertex
	faces    []face
}

func (s *shell) vertex(v vertex) int {
	s.vertices = append(s.vertices, v)
	return len(s.vertices) - 1
}

// face adds a triangle unless it has no area.
func (s *shell) face(a, b, c int, part Part) {
	f := face{[3]int{a, b, c}, part}
	if s.normal(f).len() > 0 {
		s.faces = append(s.faces, f)
	}
}

// quad adds two triangles.
func (s *shell) quad(a, b, c, d int, part Part) {
	s.face(a, b, c, part)
	s.face(a, c, d, part)
}

// normal is the area of a face as a vector into the water.
func (s *shell) normal(f face) vec {
	a, b, c := s.vertices[f.v[0]].p, s.vertices[f.v[1]].p, s.vertices[f.v[2]].p
	n := b.sub(a).cross(c.sub(a))
	return vec{n[0] / 2, n[1] / 2, n[2] / 2}
}

// depths are those of the corners of a face under a level.
func (s *shell) depths(f face, level float64) [3]float64 {
	var d [3]float64
	for i, v := range f.v {
		d[i] = level - s.vertices[v].p[2]
	}
	return d
}

// under is what the shell holds below a level: water area, volume, wetted area by part.
func (s *shell) under(level float64) (area, volume float64, wetted [parts]float64) {
	for _, f := range s.faces {
		d := s.depths(f, level)
		part, share := mesh.Wet(d)
		if part == 0 {
			continue
		}
		n := s.normal(f)
		area += n[2] * part
		volume += n[2] * (share[0]*d[0] + share[1]*d[1] + share[2]*d[2])
		wetted[f.part] += n.len() * part
	}
	return area, volume, wetted
}

// volumeSlopes is how the volume changes with the place of each vertex: −n·∫φ over the wet part of
// its faces, φ being 1 there and 0 at the other corners.
func (s *shell) volumeSlopes(level float64) []vec {
	out := make([]vec, len(s.vertices))
	for _, f := range s.faces {
		part, share := mesh.Wet(s.depths(f, level))
		if part == 0 {
			continue
		}
		n := s.normal(f)
		for i, v := range f.v {
			for k := range n {
				out[v][k] -= n[k] * share[i]
			}
		}
	}
	return out
}

// nudge is the step of differences (metres): areas of faces are smooth at its size but for those
// that a level just touches.
const nudge = 1e-6

// areaSlopes is the same for the water area or the wetted area, by central differences of each face,
// and the slope by the level.
func (s *shell) areaSlopes(level float64, wetted bool) (out []vec, byLevel float64) {
	out = make([]vec, len(s.vertices))
	for _, f := range s.faces {
		if part, _ := mesh.Wet(s.depths(f, level)); part == 0 {
			continue
		}
		var p [3]vec
		for i, v := range f.v {
			p[i] = s.vertices[v].p
		}
		for i, v := range f.v {
			for k := range 3 {
				was := p[i][k]
				p[i][k] = was + nudge
				more := wetArea(&p, level, wetted)
				p[i][k] = was - nudge
				less := wetArea(&p, level, wetted)
				p[i][k] = was
				out[v][k] += (more - less) / (2 * nudge)
			}
		}
		byLevel += (wetArea(&p, level+nudge, wetted) - wetArea(&p, level-nudge, wetted)) / (2 * nudge)
	}
	return out, byLevel
}

func wetArea(p *[3]vec, level float64, wetted bool) float64 {
	part, _ := mesh.Wet([3]float64{level - p[0][2], level - p[1][2], level - p[2][2]})
	n := p[1].sub(p[0]).cross(p[2].sub(p[0]))
	if wetted {
		return n.len() / 2 * part
	}
	return n[2] / 2 * part
}
