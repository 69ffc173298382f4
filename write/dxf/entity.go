package dxf

import (
	"fmt"
	"math"

	"brimline/plane"
	"brimline/sheet"
)

// entities writes the items. What only clears a ground on paper is left out.
func (p *printer) entities() {
	p.section("ENTITIES")
	for _, it := range p.items {
		if it.Pen == sheet.PenNone && it.Fill != nil && *it.Fill == sheet.White {
			continue
		}
		p.entity(it)
	}
	p.str(0, "ENDSEC")
}

func (p *printer) entity(it sheet.Item) {
	layer, ok := p.names[it.Layer]
	if !ok {
		p.fail(fmt.Errorf("layer %q is not listed", it.Layer))
		return
	}
	e := entity{p, layer, it}
	switch s := it.Shape.(type) {
	case sheet.Path:
		e.path(s.Path)
	case sheet.Circle:
		e.circle(s)
	case sheet.Spot:
		e.begin("POINT", "AcDbPoint")
		p.high(10, p.at(s.At), p.size(s.Z))
		p.covers(s.At)
	case sheet.Course:
		e.course(s)
	case sheet.Text:
		e.text(s)
	default:
		p.fail(fmt.Errorf("shape %T has no place in a model", it.Shape))
	}
}

// entity is an item being written.
type entity struct {
	*printer
	layer string
	item  sheet.Item
}

// begin opens an entity: handle, owner, layer, and the colour where it differs from its layer's.
func (e entity) begin(kind, class string) {
	e.object(kind, e.next(), e.fixed.model)
	e.class("AcDbEntity")
	e.str(8, e.layer)
	if c := colour(e.item.Ink); c != colour(e.layerOf(e.item.Layer).Ink) {
		e.whole(62, c)
	}
	if class != "" {
		e.class(class)
	}
}

func (p *printer) layerOf(l sheet.Layer) sheet.ModelLayer {
	for _, x := range p.file.Layers {
		if x.Name == l {
			return x
		}
	}
	return sheet.ModelLayer{}
}

// covers widens the extents.
func (p *printer) covers(places ...plane.Point) {
	for _, q := range places {
		p.extent = p.extent.Join(plane.BoundsOf(p.at(q)))
	}
}

func (e entity) path(q plane.Path) {
	if len(q.Segs) == 0 {
		return
	}
	b := q.Bounds()
	e.covers(b.Min, b.Max)
	switch {
	case e.item.Fill != nil && *e.item.Fill != sheet.White && cornered(q):
		e.solid(q)
	case len(q.Segs) == 1 && q.Segs[0].Bulge == 0 && !q.Closed:
		e.begin("LINE", "AcDbLine")
		e.point(10, e.at(q.Segs[0].A))
		e.point(11, e.at(q.Segs[0].B))
	case e.modern():
		e.polyline(q)
	default:
		e.oldPolyline(q)
	}
}

// vertices are the places of a path with the bulge that follows each; an open path ends with its end.
func vertices(q plane.Path) (at []plane.Point, bulges []float64) {
	for _, s := range q.Segs {
		at, bulges = append(at, s.A), append(bulges, s.Bulge)
	}
	if !q.Closed {
		at, bulges = append(at, q.Segs[len(q.Segs)-1].B), append(bulges, 0)
	}
	return at, bulges
}

func flag(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (e entity) polyline(q plane.Path) {
	at, bulges := vertices(q)
	e.begin("LWPOLYLINE", "AcDbPolyline")
	e.whole(90, len(at))
	e.whole(70, flag(q.Closed))
	e.num(43, 0)
	for i, v := range at {
		e.flat(10, e.at(v))
		e.bulge(bulges[i])
	}
}

// oldPolyline is a polyline of R12: a head, a vertex each, an end.
func (e entity) oldPolyline(q plane.Path) {
	at, bulges := vertices(q)
	e.begin("POLYLINE", "")
	e.whole(66, 1)
	e.point(10, plane.Point{})
	e.whole(70, flag(q.Closed))
	for i, v := range at {
		e.begin("VERTEX", "")
		e.point(10, e.at(v))
		e.bulge(bulges[i])
	}
	e.begin("SEQEND", "")
}

// bulge writes one that is an arc.
func (e entity) bulge(b float64) {
	if !(math.Abs(b) <= 1e-15) {
		e.num(42, b)
	}
}

// cornered says that a path is a triangle or a four-sided figure, which can be filled.
func cornered(q plane.Path) bool {
	for _, s := range q.Segs {
		if !s.Straight() {
			return false
		}
	}
	return q.Closed && (len(q.Segs) == 3 || len(q.Segs) == 4)
}

// solid fills a triangle or a four-sided figure; the format wants its third and fourth corner crossed.
func (e entity) solid(q plane.Path) {
	n := len(q.Segs)
	e.begin("SOLID", "AcDbTrace")
	for i, k := range []int{0, 1, n - 1, min(2, n-1)} {
		e.point(10+i, e.at(q.Segs[k].A))
	}
}

func (e entity) circle(c sheet.Circle) {
	if !(c.R > 0) {
		e.fail(errNumber)
	}
	r := plane.Point{X: c.R, Y: c.R}
	e.covers(c.Centre.Sub(r), c.Centre.Add(r))
	e.begin("CIRCLE", "AcDbCircle")
	e.point(10, e.at(c.Centre))
	e.num(40, e.size(c.R))
}

// text writes one line of letters. The place is that of its anchor, so that letters of another width
// still stand right; the left end of the foot line is given too, as the format asks.
func (e entity) text(t sheet.Text) {
	corners := t.Corners()
	e.covers(corners[:]...)
	e.begin("TEXT", "AcDbText")
	e.point(10, e.at(t.Foot()))
	e.num(40, e.size(t.Height))
	e.str(1, e.printer.text(t.S))
	if t.Turn != 0 {
		e.num(50, math.Mod(t.Turn*180/math.Pi+360, 360))
	}
	across, up := int(t.Anchor.Across), [...]int{0, 2, 3}[t.Anchor.Up]
	if across != 0 || up != 0 {
		e.whole(72, across)
		e.point(11, e.at(t.At))
	}
	e.class("AcDbText")
	if up != 0 {
		e.whole(73, up)
	}
}
