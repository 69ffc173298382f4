package survey

import (
	"math"

	"brimline/basin"
	"brimline/fieldbook"
)

// face is what was read of the wall at one mark of the rim: where it begins, and points below.
type face struct {
	mark   string
	s      float64
	starts []basin.Out
	points []basin.Out
}

// beside is how far from the rim a mark may lie and still be a station of it (metres): common practice,
// no source.
const beside = 0.5

// onePoint is how near in depth two readings of a wall are of one point of it (metres).
const onePoint = 1e-3

// faces lists the stations at which plumb lines and profiles were read, in book order.
func (y *body) faces() []face {
	var out []face
	for i := range y.g.book.Readings {
		t := &y.g.book.Readings[i]
		if t.Kind != "plumb" && t.Kind != "profile" || !counts(t) {
			continue
		}
		s, off, ok := y.station(t.Marks[0])
		if !ok || off > beside {
			continue
		}
		o, start, ok := y.out(t)
		if !ok {
			continue
		}
		k := faceAt(&out, t.Marks[0], s)
		if start {
			out[k].starts = append(out[k].starts, o)
		} else {
			out[k].points = append(out[k].points, o)
		}
	}
	return out
}

func faceAt(list *[]face, mark string, s float64) int {
	for k := range *list {
		if (*list)[k].mark == mark {
			return k
		}
	}
	*list = append(*list, face{mark: mark, s: s})
	return len(*list) - 1
}

// out is a reading as a point of the wall, outward of the line of the marks; start says that the wall
// begins there.
func (y *body) out(t *fieldbook.Taken) (o basin.Out, start, ok bool) {
	sign := 1.0
	to := t.To
	if t.Kind == "profile" {
		if !y.isRim(t.From) {
			if sign, to = -1, t.From; !y.isRim(t.To) {
				return o, false, false
			}
		}
	}
	out, down := false, false
	for i, v := range t.Values {
		switch v.Part {
		case "outward":
			o.Outward, o.SD, out = sign*v.Metres, y.sigma(t, i), true
		case "down":
			o.Down, down = sign*v.Metres, true
		}
	}
	start = t.Kind == "profile" && among(begins, to)
	o.Edge = start
	return o, start, out && (down || start)
}

// isRim says that an edge is that at which the marks of the rim were read.
func (y *body) isRim(edge string) bool { return edge == y.edge || y.edge == "" && edge == "nose" }

// sigma is the standard deviation of a part of a reading that takes no part in the solution.
func (y *body) sigma(t *fieldbook.Taken, part int) float64 {
	tool, _ := y.g.book.Tool(t.Tool)
	switch {
	case part < len(t.Sigma):
		return t.Sigma[part]
	case len(t.Sigma) == 1:
		return t.Sigma[0]
	case tool.Sigma > 0:
		return math.Hypot(tool.Sigma, tool.PPM*1e-6*t.Values[part].Metres)
	case y.g.book.Rules.Sigma[t.Kind] > 0:
		return y.g.book.Rules.Sigma[t.Kind]
	}
	return fieldbook.DefaultSigma(t.Kind, t.Values[part].Part, t.Class, t.Values[part].Metres, 0)
}

// profiles gives the stations to the basin, outward of its rim. Where a station does not say how far
// behind the marks the wall begins, it begins at the rim or, with no derived line, as at the stations that
// do say, in the mean.
func (y *body) profiles(faces []face) {
	var starts []basin.Out
	for _, f := range faces {
		starts = append(starts, f.starts...)
	}
	usual := meanOut(starts)
	for _, f := range faces {
		p := basin.Profile{S: f.s}
		switch {
		case len(f.starts) > 0:
			p.Points = append(p.Points, meanOut(f.starts))
		case y.back != 0:
		case len(starts) > 0:
			p.Points = append(p.Points, usual)
		}
		for len(f.points) > 0 {
			var same, rest []basin.Out
			for _, o := range f.points {
				if math.Abs(o.Down-f.points[0].Down) <= onePoint {
					same = append(same, o)
				} else {
					rest = append(rest, o)
				}
			}
			p.Points, f.points = append(p.Points, meanOut(same)), rest
		}
		for k := range p.Points {
			p.Points[k].Outward -= y.back
		}
		y.spec.Profiles = append(y.spec.Profiles, p)
	}
}

// meanOut is the mean of readings of one point.
func meanOut(list []basin.Out) basin.Out {
	var m basin.Out
	n := float64(len(list))
	for _, o := range list {
		m.Down, m.Outward, m.SD = m.Down+o.Down/n, m.Outward+o.Outward/n, m.SD+o.SD*o.SD/(n*n)
		m.Edge = o.Edge
	}
	m.SD = math.Sqrt(m.SD)
	return m
}
