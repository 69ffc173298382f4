package plane

import (
	"math"
	"math/rand/v2"
	"testing"
)

// What is shown to be whole at once and what is cut piece by piece agree: rings of straights and arcs,
// inward and outward, both corners. Seed 15.
func TestPlainIsWhatCuttingGives(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 15))
	shown := 0
	for i := range 3000 {
		p := bumpy(r)
		if p.Crossings() != nil {
			continue
		}
		d, c := math.Exp(math.Log(0.005)+r.Float64()*math.Log(200)), Corners(i%2)
		if i%4 < 2 {
			p, d = p.Reverse(), -d
		}
		quick, ok := p.plain(d, c)
		if !ok {
			continue
		}
		shown++
		side := p
		if d < 0 {
			side = p.Reverse()
		}
		full, err := side.right(math.Abs(d), c)
		if err != nil || len(full.Paths) != 1 {
			t.Fatalf("ring %d by %g: %d paths cut piece by piece, %v", i, d, len(full.Paths), err)
		}
		a, b := quick.Paths[0], full.Paths[0]
		if math.Abs(math.Abs(a.Area())-math.Abs(b.Area())) > 1e-7 || math.Abs(a.Length()-b.Length()) > 1e-6 || full.Gone != nil {
			t.Fatalf("ring %d by %g: area %.9f, length %.9f; cut piece by piece %.9f, %.9f, gone %v",
				i, d, a.Area(), a.Length(), b.Area(), b.Length(), full.Gone)
		}
	}
	if shown < 600 {
		t.Errorf("only %d rings were whole at once", shown)
	}
}

// bumpy is a ring of 3 to 40 straights and arcs round the origin.
func bumpy(r *rand.Rand) Path {
	n := 3 + r.IntN(38)
	var pts []Point
	for i := range n {
		way := 2 * math.Pi * (float64(i) + 0.6*(r.Float64()-0.5)) / float64(n)
		pts = append(pts, Point{X: 4 + r.Float64()*0.4}.Turn(way))
	}
	p := Polyline(pts, true)
	for i := range p.Segs {
		if r.IntN(2) == 0 {
			p.Segs[i].Bulge = 0.5*r.Float64() - 0.2
		}
	}
	return p
}

// What the shears leave of a strand is all of it that nothing covers: the pieces they cut away add up
// with what is left to what cutting in full leaves of the whole strand. Seed 16.
func TestShearsCutNothingFree(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 16))
	for range 300 {
		p, d := bumpy(r), 0.05+r.Float64()
		for i := range p.Segs {
			p.Segs[i].Bulge = 0
		}
		strands, kites := p.strands(d, RoundCorners)
		w, k := newCovering(p, kites, d), newShears(p, d)
		for _, s := range strands {
			want := 0.0
			for _, f := range w.free(s) {
				want += (f.to - f.from) * s.Length()
			}
			got, cut := 0.0, s
			if k.cut(&cut) {
				for _, f := range w.free(cut) {
					got += (f.to - f.from) * cut.Length()
				}
			}
			if math.Abs(got-want) > 1e-6 {
				t.Fatalf("strand %v of a ring of %d at %g: %.9f m free, after the shears %.9f", s, len(p.Segs), d, want, got)
			}
		}
	}
}
