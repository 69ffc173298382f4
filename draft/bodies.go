package draft

import (
	"math"

	"brimline/basin"
	"brimline/fieldbook"
	"brimline/mesh"
	"brimline/plane"
	"brimline/survey"
)

// deckWide is how wide a band of deck is drawn round the rim in space (metres): to see the pool by, not
// measured.
const deckWide = 1.0

// waterPaint lets the floor be seen through the water.
var waterPaint = [4]float64{0.25, 0.55, 0.75, 0.35}

// partPaints are the colours of the parts, in their order: pale, so that shading tells the shape.
var partPaints = [...][4]float64{{0.80, 0.86, 0.90, 1}, {0.72, 0.80, 0.86, 1}, {0.76, 0.83, 0.88, 1}, {0.88, 0.86, 0.78, 1}, {0.86, 0.82, 0.74, 1}}

func partPaint(p basin.Part) [4]float64 { return partPaints[p] }

// bodies are the parts of the pool, the water, a band of deck at the height of the rim, and the rim as a line.
func (d *Depths) bodies(b *basin.Basin) []Body {
	var out []Body
	top := d.wallTop(b)
	for p := range basin.Parts {
		out = append(out, spatial(b, basin.Part(p), top))
	}
	water := Body{Name: "water at " + d.Water, Paint: waterPaint}
	for _, p := range d.Rim.Flatten(0.001) {
		water.Points = append(water.Points, mesh.Point3{X: p.X, Y: p.Y, Z: d.Level})
	}
	water.Triangles = filled(water.Points, count3(len(water.Points)), nil)
	return append(append(out, water), d.deck(b, top)...)
}

func count3(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// filled triangulates a ring with holes.
func filled(points []mesh.Point3, ring []int, holes [][]int) [][3]int32 {
	s, _ := mesh.Triangulate(points, nil, ring, holes)
	if len(s.Points) > len(points) {
		return nil // the ring crosses itself
	}
	return s.Triangles
}

// deck is a band round the rim at its height, and the rim as a line; nothing where nobody read the rim.
func (d *Depths) deck(b *basin.Basin, top float64) []Body {
	if !math.IsInf(top, 1) {
		return nil
	}
	high := func(p plane.Point) mesh.Point3 {
		z, _ := b.RimAt(p)
		return mesh.Point3{X: p.X, Y: p.Y, Z: z}
	}
	rim := Body{Name: "rim", Paint: [4]float64{0, 0, 0, 1}}
	for _, p := range d.Rim.Flatten(0.001) {
		rim.Points = append(rim.Points, high(p))
	}
	n := len(rim.Points)
	var loop []int32
	for i := range n + 1 {
		loop = append(loop, int32(i%n))
	}
	rim.Lines = [][]int32{loop}
	beside, err := d.Rim.Offset(deckWide, plane.RoundCorners)
	if err != nil || len(beside.Paths) == 0 {
		return []Body{rim}
	}
	deck := Body{Name: "deck, a band of 1 m at the height of the rim, not measured", Paint: [4]float64{0.82, 0.80, 0.76, 1}}
	deck.Points = append(deck.Points, rim.Points...)
	for _, p := range beside.Paths[0].Flatten(0.002) {
		deck.Points = append(deck.Points, high(p))
	}
	ring := count3(len(deck.Points))
	deck.Triangles = filled(deck.Points, ring[n:], [][]int{ring[:n]})
	return []Body{deck, rim}
}

// InSpace are the bodies of a pool for views in space: floor, walls and what stands in it, water and deck
// where a floor and a water surface are read, else the lines that have heights; none where nothing has.
func InSpace(b *fieldbook.Book, r *survey.Result, o Options) []Body {
	h := o.heights(b, r)
	if h.Depths != nil {
		return h.Depths.Bodies
	}
	if h.Levels == nil {
		return nil
	}
	var out []Body
	for _, p := range h.Levels.Profiles {
		at, z := p.inSpace(pathOf(r.Lines[p.Line]))
		o := Body{Name: p.Line, Paint: [4]float64{0, 0, 0, 1}}
		var run []int32
		for i, q := range at {
			o.Points, run = append(o.Points, mesh.Point3{X: q.X, Y: q.Y, Z: z[i]}), append(run, int32(i))
		}
		if p.Closed && len(run) > 0 {
			run = append(run, 0)
		}
		if len(run) > 1 {
			o.Lines = [][]int32{run}
			out = append(out, o)
		}
	}
	return out
}
