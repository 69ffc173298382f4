package draft

import (
	"sort"

	"brimline/plane"
	"brimline/sheet"
)

// span is a stretch of a path from one place to a later one, in segments and shares of them
// together: 3.25 is a quarter along segment 3. On a ring it may end beyond the last segment.
type span struct{ from, to float64 }

// styled is a span with the way it is drawn.
type styled struct {
	span
	layer sheet.Layer
	pen   sheet.Pen
}

// edges draws the outlines: the edge wide, dashed where nobody touched it, in short dashes where it
// is soft; other lines and those derived from an edge narrow.
func (c *canvas) edges() {
	for i, o := range c.paper {
		layer, pen := o.stroke()
		c.field.path(o.path, forbidden, crossEdge)
		if pen != sheet.PenEdge {
			c.stretch(o.path, layer, pen)
			continue
		}
		c.symbols.edge = true
		spans := append(c.inferred(i), o.soft()...)
		for _, s := range spans {
			c.symbols.inferred = c.symbols.inferred || s.pen == sheet.PenInferred
			c.symbols.soft = c.symbols.soft || s.pen == sheet.PenSoft
		}
		if len(spans) == 0 {
			c.stretch(o.path, layer, pen)
			continue
		}
		c.broken(o, styled{layer: layer, pen: pen}, spans)
	}
}

// stroke is the layer and the pen of a line where nothing else is said.
func (o outline) stroke() (sheet.Layer, sheet.Pen) {
	if !o.derived && (o.line.Closed || o.line.Edge != "") {
		return sheet.LayerEdge, sheet.PenEdge
	}
	return sheet.LayerAround, sheet.PenThin
}

// stretch draws a path as far as the window shows it.
func (c *canvas) stretch(p plane.Path, layer sheet.Layer, pen sheet.Pen) {
	for _, piece := range c.clipped(p) {
		c.draw(sheet.Item{Layer: layer, Pen: pen, Shape: sheet.Path{Path: piece}})
	}
}

// inferred are the spans of an outline that rest on no reading: its gaps, and the way past each
// corner that could not be reached.
func (c *canvas) inferred(i int) []styled {
	var out []styled
	for _, g := range append(c.gaps(i), c.pastCorners(i)...) {
		out = append(out, styled{g, sheet.LayerInferred, sheet.PenInferred})
	}
	return out
}

// gaps are the spans that the result names.
func (c *canvas) gaps(i int) []span {
	o := c.paper[i]
	var out []span
	for _, g := range o.line.Gaps {
		a, okA := c.where(o, g.From)
		b, okB := c.where(o, g.To)
		if !okA || !okB || b <= a && !o.line.Closed {
			continue
		}
		if b <= a {
			b += float64(len(o.path.Segs))
		}
		out = append(out, span{a, b})
	}
	return out
}

// where is the place of a mark along an outline.
func (c *canvas) where(o outline, mark string) (float64, bool) {
	p, ok := c.at(mark)
	if !ok {
		return 0, false
	}
	seg, t, _ := o.path.Nearest(p)
	return float64(seg) + t, seg >= 0
}

// soft are the runs of an outline whose edge is soft.
func (o outline) soft() []styled {
	var out []styled
	at := 0
	for _, r := range o.runs {
		if r.Kind == "soft" && len(r.segs) > 0 {
			out = append(out, styled{span{float64(at), float64(at + len(r.segs))}, sheet.LayerEdge, sheet.PenSoft})
		}
		at += len(r.segs)
	}
	return out
}

// broken draws an outline whose spans look otherwise: every segment is cut where one begins or
// ends, and the first span that holds a piece says how it is drawn.
func (c *canvas) broken(o outline, usual styled, spans []styled) {
	n := float64(len(o.path.Segs))
	for i, s := range o.path.Segs {
		at := float64(i)
		cuts := []float64{0, 1}
		for _, g := range spans {
			for _, x := range []float64{g.from - at, g.to - at, g.from - n - at, g.to - n - at} {
				if x > 0 && x < 1 {
					cuts = append(cuts, x)
				}
			}
		}
		sort.Float64s(cuts)
		for k := 1; k < len(cuts); k++ {
			mid := at + (cuts[k-1]+cuts[k])/2
			how := usual
			for _, g := range spans {
				if g.holds(mid) || g.holds(mid+n) {
					how = g
					break
				}
			}
			c.stretch(plane.Path{Segs: []plane.Segment{s.Part(cuts[k-1], cuts[k])}}, how.layer, how.pen)
		}
	}
}

func (s span) holds(x float64) bool { return x > s.from && x < s.to }
