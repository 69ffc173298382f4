package outline

import "brimline/plane"

// segmental is a body of two parallel sides with a segment of a circle at one end or both, from
// shoulder to shoulder or from side to side.
func (b *body) segmental() *Family {
	var arcs []int // places in side
	shoulders := true
	switch {
	case b.begin("ssasssas"):
		arcs = []int{2, 6}
	case b.begin("ssasss"):
		arcs = []int{2}
	case b.begin("sasa"):
		arcs, shoulders = []int{1, 3}, false
	case b.begin("sass"):
		arcs, shoulders = []int{1}, false
	default:
		return nil
	}
	far := 2
	if shoulders {
		far = 4
	}
	if d := b.angle(b.c.q, 0, far, 180); d > nearRight || d < -nearRight {
		return nil
	}
	f := &Family{Kind: "segmental"}
	f.Figures = b.list([]string{"length", "width"}, func(q []float64) []float64 { return b.size(q, far, shoulders) })
	pieces := []int{b.side[arcs[0]], b.side[arcs[len(arcs)-1]]}[:len(arcs)]
	b.same(f, "radius", pieces, b.radius)
	b.same(f, "rise", pieces, func(q []float64, p int) float64 { return b.hand * b.seg(q, p).Sagitta() })
	f.Test = b.c.wald(func(q []float64) []float64 {
		out := []float64{b.angle(q, 0, far, 180)}
		if shoulders {
			for _, k := range arcs {
				s, t := b.seg(q, b.side[k-1]), b.seg(q, b.side[k+1])
				out = append(out, b.angle(q, k-1, k+1, 0), leftOf(plane.Segment{A: s.A, B: t.B}, s.B))
			}
		}
		return out
	})
	f.Square = b.c.wald(func(q []float64) []float64 { return b.ends(q, far, shoulders, arcs) })
	if f.Square.Freedom > 0 {
		b.worst(f, "skew", func(q []float64) []float64 { return b.ends(q, far, shoulders, arcs) })
	}
	return f
}

// ends are the corners of straight ends and shoulders, from a right angle.
func (b *body) ends(q []float64, far int, shoulders bool, arcs []int) []float64 {
	var out []float64
	if shoulders {
		out = append(out, b.angle(q, 0, 1, 90))
	}
	if len(arcs) == 1 || shoulders {
		out = append(out, b.angle(q, far, far+1, 90))
	}
	return out
}

// size is length and width of the body without its segments.
func (b *body) size(q []float64, far int, shoulders bool) []float64 {
	near, other := b.seg(q, b.side[0]), b.seg(q, b.side[far])
	length := (near.Chord() + other.Chord()) / 2
	if shoulders {
		length = (b.long(q, 0) + b.long(q, far)) / 2
	}
	across := func(s plane.Segment, p plane.Point) float64 { return b.hand * leftOf(s, p) }
	width := (across(near, plane.Lerp(other.A, other.B, 0.5)) + across(other, plane.Lerp(near.A, near.B, 0.5))) / 2
	return []float64{length, width}
}
