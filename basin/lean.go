package basin

import (
	"cmp"
	"slices"
)

// least is the shortest stretch of a wall that tells its lean (metres): below the lowest point of a
// profile the wall goes on straight if it was followed for that long, plumb otherwise.
const least = 0.2

// profile is a Profile with its points in order downward and the number of the first of them.
type profile struct {
	s      float64
	points []Out
	first  int
}

func (b *Basin) readProfiles(list []Profile) {
	for _, p := range list {
		q := profile{s: b.station(p.S), points: slices.Clone(p.Points)}
		slices.SortStableFunc(q.points, func(a, c Out) int { return cmp.Compare(a.Down, c.Down) })
		if len(q.points) > 0 {
			b.profiles = append(b.profiles, q)
		}
	}
	slices.SortStableFunc(b.profiles, func(p, q profile) int { return cmp.Compare(p.s, q.s) })
	for i := range b.profiles {
		b.profiles[i].first = len(b.outs)
		b.outs = append(b.outs, b.profiles[i].points...)
	}
}

// face is how far outward the wall stands at a depth below the rim, in shares of the points read.
func (p *profile) face(down float64) []term {
	last := len(p.points) - 1
	if down <= p.points[0].Down {
		if p.points[0].Down <= 0 {
			return []term{{p.first, 1}}
		}
		return []term{{p.first, max(0, down) / p.points[0].Down}}
	}
	for i := range last {
		from, to := p.points[i].Down, p.points[i+1].Down
		if down <= to && to > from {
			t := (down - from) / (to - from)
			return []term{{p.first + i, 1 - t}, {p.first + i + 1, t}}
		}
	}
	start, base := p.start()
	low := p.points[last].Down
	if base == last || low-start < least {
		return []term{{p.first + last, 1}}
	}
	t := (down - start) / (low - start)
	if base < 0 {
		return []term{{p.first + last, t}}
	}
	return []term{{p.first + base, 1 - t}, {p.first + last, t}}
}

// start is where the wall begins: its lowest edge, else the rim, whose number is −1.
func (p *profile) start() (down float64, point int) {
	for i := len(p.points) - 1; i >= 0; i-- {
		if p.points[i].Edge {
			return p.points[i].Down, i
		}
	}
	return 0, -1
}

// lean is how far outward the wall stands at a station and depth below the rim: between stations
// along the rim, so much of the one and of the other.
func (b *Basin) lean(s, down float64) (outward float64, terms []term) {
	if len(b.profiles) == 0 {
		return 0, nil
	}
	k, t := b.bracket(len(b.profiles), func(i int) float64 { return b.profiles[i].s }, s)
	for i, w := range []float64{1 - t, t} {
		if w == 0 {
			continue
		}
		for _, x := range b.profiles[(k+i)%len(b.profiles)].face(down) {
			terms = append(terms, term{x.in, w * x.w})
		}
	}
	for _, x := range terms {
		outward += x.w * b.outs[x.in].Outward
	}
	return outward, terms
}

// leaning is the lean of the wall at each profile that tells one, outward over down, with its
// variance.
func (b *Basin) leaning() (at []int, lean, variance []float64) {
	for i := range b.profiles {
		p := &b.profiles[i]
		low := p.points[len(p.points)-1]
		start, base := p.start()
		if low.Edge || low.Down-start < least {
			continue
		}
		u, v := low.Outward, low.SD*low.SD
		if base >= 0 {
			u, v = u-p.points[base].Outward, v+p.points[base].SD*p.points[base].SD
		}
		d := low.Down - start
		at, lean, variance = append(at, i), append(lean, u/d), append(variance, v/(d*d))
	}
	return at, lean, variance
}
