package basin

import (
	"math"

	"brimline/plane"
)

// spacing is what lies between readings: the field, with the places of the readings.
type spacing struct {
	field  *field
	places []plane.Point
	number map[int]int // of inputs: place
}

// spread of the lean of walls between the profiles read, before looking at them: as Options.Lean,
// alike along so many metres of rim. Common practice, no source.
const leanReach = 3.0

// learn reads from the soundings how much the floor does between them, and from the profiles how
// much the walls do.
func (b *Basin) learn() {
	b.slopesOfPlaces()
	s := spacing{number: map[int]int{}}
	for i := range b.inputs {
		if in := &b.inputs[i]; in.floor {
			s.number[i] = len(s.places)
			s.places = append(s.places, in.at)
		}
	}
	list := b.floorContrasts()
	spare := float64(len(s.places) - 3)
	share := 0.0
	if spare > 0 && len(list) > 0 {
		share = math.Min(1, spare/float64(len(list)))
	}
	s.field = learnField(list, share, b.options.Wave, b.options.Length)
	b.sampling = s
	b.learnLean()
}

// slopesOfPlaces turns the uncertainty of where soundings were taken into height, by the root mean
// square slope of the floor around each, triangles counted by their areas; at the wall, where only the way along it is open, by the slope
// along it.
func (b *Basin) slopesOfPlaces() {
	g := b.base
	sum, count := make([]float64, len(b.inputs)), make([]float64, len(b.inputs))
	for t, v := range g.Triangles {
		slope := g.SlopeOf(t)
		for _, p := range v {
			in := b.reading(p)
			if in < 0 {
				continue
			}
			rise := math.Min(slope.Rise, 2*steepest)
			if int(p) < len(b.nodes) {
				rise *= slope.Uphill.Dot(b.nodes[p].out.Left().Unit())
			}
			area := g.area(t)
			sum[in] += area * rise * rise
			count[in] += area
		}
	}
	for i := range b.inputs {
		if in := &b.inputs[i]; in.place > 0 && count[i] > 0 {
			in.own += in.place * in.place * sum[i] / count[i]
		}
	}
}

// reading is the input that was read at a point of the ground; −1 for a point that has its height
// from elsewhere.
func (b *Basin) reading(p int32) int {
	f := b.base.forms[p]
	if len(f.terms) != 1 || f.terms[0].w != 1 || !b.inputs[f.terms[0].in].floor {
		return -1
	}
	in := f.terms[0].in
	if b.base.Points[p].Plan().Dist(b.inputs[in].at) > 2*b.options.Snap {
		return -1
	}
	return in
}

// slim is how much larger than those of the two far corners a weight may be: beyond, three of the four
// lie near a line.
const slim = 3.0

// floorContrasts are the second differences of the soundings: across each side that two triangles
// share and no break runs along, how the fourth corner lies to the plane of the other three. A side from one
// break, pad or wall to another may be where two slopes meet, which nobody had to say, since
// the surface bends there of itself; it tells nothing.
func (b *Basin) floorContrasts() []contrast {
	g := b.base
	var out []contrast
	for t, v := range g.Triangles {
		for i := range v {
			u := g.Beside[t][i]
			if int(u) < t || g.Fixed[t]&(1<<i) != 0 {
				continue
			}
			if b.edged[v[(i+1)%3]] && b.edged[v[(i+2)%3]] {
				continue
			}
			far := opposite(g, int(u), v[(i+1)%3], v[(i+2)%3])
			ins := [4]int{b.reading(v[0]), b.reading(v[1]), b.reading(v[2]), b.reading(far)}
			if ins[0] < 0 || ins[1] < 0 || ins[2] < 0 || ins[3] < 0 {
				continue
			}
			w := g.shares(t, g.Points[far].Plan())
			if most := math.Max(1, math.Max(math.Abs(w[0]), math.Max(math.Abs(w[1]), math.Abs(w[2])))); !(most < slim*math.Min(1, math.Abs(w[i]))) {
				continue
			}
			out = append(out, b.contrast(ins, [4]float64{-w[0], -w[1], -w[2], 1}))
		}
	}
	return out
}

// opposite is the corner of triangle t that is neither p nor q.
func opposite(g *ground, t int, p, q int32) int32 {
	for _, v := range g.Triangles[t] {
		if v != p && v != q {
			return v
		}
	}
	return p
}

// contrast is one of four floor heights.
func (b *Basin) contrast(ins [4]int, alpha [4]float64) contrast {
	var c contrast
	for k, i := range ins {
		in := &b.inputs[i]
		c.value += alpha[k] * in.z
		c.at, c.alpha = append(c.at, in.at), append(c.alpha, alpha[k])
		c.noise += alpha[k] * alpha[k] * in.own
		for l, j := range ins {
			c.noise += alpha[k] * alpha[l] * b.covOf(in.index, b.inputs[j].index)
		}
	}
	return c
}

// covOf is an entry of the covariance; 0 for a height without error.
func (b *Basin) covOf(i, j int) float64 {
	if i < 0 || j < 0 {
		return 0
	}
	return b.cov[i*b.rows+j]
}

// drawn are the readings of a height, by place.
func (s *spacing) drawn(f form) []term {
	var out []term
	for _, t := range f.terms {
		if k, ok := s.number[t.in]; ok {
			out = append(out, term{k, t.w})
		}
	}
	return out
}

// learnLean does for the lean of the walls what learn does for the floor: the second difference is
// that of three profiles that follow each other.
func (b *Basin) learnLean() {
	at, lean, noise := b.leaning()
	s := spacing{number: map[int]int{}}
	for k, i := range at {
		s.number[i] = k
		s.places = append(s.places, b.spot(b.profiles[i].s))
	}
	var list []contrast
	n := len(at)
	for k := 0; n > 3 && k < n; k++ {
		l, m := (k+n-1)%n, (k+1)%n
		from, here, to := b.profiles[at[l]].s, b.profiles[at[k]].s, b.profiles[at[m]].s
		t := b.ahead(from, here) / b.ahead(from, to)
		if !(t > 0 && t < 1) {
			continue
		}
		list = append(list, contrast{
			value: lean[k] - (1-t)*lean[l] - t*lean[m],
			at:    []plane.Point{s.places[k], s.places[l], s.places[m]},
			alpha: []float64{1, t - 1, -t},
			noise: noise[k] + (1-t)*(1-t)*noise[l] + t*t*noise[m],
		})
	}
	s.field = learnField(list, 1, b.options.Lean, leanReach)
	b.leans = s
}
