package outline

import (
	"math"

	"brimline/plane"
)

// Gap is a span between two neighbouring marks of which more is open about the line between them
// than about the marks themselves.
type Gap struct {
	From, To string
	Length   float64 // along the line
	SD       float64 // of the line across, in the middle of the span, beyond that of the marks
}

// touched is how many usual steps a span may have that counts as touched: common practice, no
// source. The usual step of a line is the median of its spans.
const touched = 2.5

// span is the line between two neighbouring marks.
type span struct {
	from, to int     // places in Line.Marks
	length   float64 // along the line
	middle   plane.Point
	open     float64 // variance of the line there, across it, beyond that of the marks
	unsaid   bool    // on a curve, or on a run that nobody stated
}

// spans lists the spans of a fitted line.
func (l *Line) spans(c *chain) []span {
	said := map[[2]int]bool{}
	for _, r := range c.l.Runs {
		for i := 1; i < len(r.Marks) && !r.found && r.Kind != "curve"; i++ {
			said[[2]int{r.Marks[i-1], r.Marks[i]}] = true
		}
	}
	ends := ends(l.Path)
	whole := ends[len(ends)-1]
	at := make([]float64, len(l.Marks))
	_, count := c.path(c.q)
	near := c.nearby(count)
	for i, m := range l.Marks {
		best := math.Inf(1)
		for _, k := range near[m] {
			q, t := l.Path.Segs[k].Nearest(c.block.point(m))
			if d := q.Dist(c.block.point(m)); d < best {
				best, at[i] = d, ends[k]+t*(ends[k+1]-ends[k])
			}
		}
	}
	var out []span
	for i := range l.Marks {
		next := (i + 1) % len(l.Marks)
		if next == 0 && !l.Closed {
			break
		}
		d := at[next] - at[i]
		if l.Closed {
			d = math.Mod(d+2*whole, whole)
		}
		out = append(out, span{from: i, to: next, length: d, middle: pointAt(l.Path, ends, math.Mod(at[i]+d/2, whole)),
			unsaid: !said[[2]int{l.Marks[i], l.Marks[next]}]})
	}
	return out
}

// ends are the lengths from the start of a path to the end of each segment, 0 first.
func ends(p plane.Path) []float64 {
	out := []float64{0}
	for i, s := range p.Segs {
		out = append(out, out[i]+s.Length())
	}
	return out
}

func pointAt(p plane.Path, ends []float64, at float64) plane.Point {
	for i, s := range p.Segs {
		if at <= ends[i+1] || i == len(p.Segs)-1 {
			return s.At((at - ends[i]) / math.Max(ends[i+1]-ends[i], 1e-12))
		}
	}
	return plane.Point{}
}

// judge names the gaps and adds up what nobody touched.
func (l *Line) judge(b *block, spans []span, edge []float64) {
	var lengths []float64
	for _, x := range spans {
		lengths = append(lengths, x.length)
	}
	usual := median(lengths)
	for _, x := range spans {
		if l.beyond[x.from] {
			l.Inferred += x.length
			continue
		}
		if !x.unsaid {
			continue
		}
		if x.length > touched*usual {
			l.Inferred += x.length
		}
		own := 0.0
		for _, k := range []int{x.from, x.to} {
			n, v, e := l.Normals[k], b.of(l.Marks[k]), edge[l.Marks[k]]
			own += (v[0]*n.X*n.X + 2*v[1]*n.X*n.Y + v[2]*n.Y*n.Y + e*e) / 2
		}
		if x.open > own {
			l.Gaps = append(l.Gaps, Gap{l.Names[x.from], l.Names[x.to], x.length, math.Sqrt(x.open)})
		}
	}
}
