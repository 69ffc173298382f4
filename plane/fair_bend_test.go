package plane_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/plane"
)

// wobbly gives n points round a bean, or along a wave when open.
func wobbly(r *rand.Rand, n int, closed bool) []plane.Point {
	var out []plane.Point
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		rad := 3 + math.Cos(2*a) + 0.3*r.Float64()
		p := plane.Point{X: rad * math.Cos(a), Y: rad * math.Sin(a)}
		if !closed {
			p = plane.Point{X: 0.8 * float64(i), Y: math.Sin(float64(i)) + 0.3*r.Float64()}
		}
		out = append(out, p)
	}
	return out
}

// The workings draw what Fair draws.
func TestBendIsFair(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	dir := plane.Point{X: 1, Y: 0.4}
	for _, closed := range []bool{true, false} {
		for n := 3; n < 20; n++ {
			pts := wobbly(r, n, closed)
			var start, end *plane.Point
			if n%2 == 0 {
				start, end = &dir, &dir
			}
			if closed {
				start, end = nil, nil
			}
			b, ok := plane.FairBend(pts, closed, start, end)
			want := plane.Fair(pts, closed, start, end)
			for i := range len(want.Segs) / 2 {
				one, two, drawn := b.Span(i)
				if !ok || !drawn || one != want.Segs[2*i] || two != want.Segs[2*i+1] {
					t.Fatalf("closed %v, %d points, span %d: %v %v, want %v %v", closed, n, i, one, two, want.Segs[2*i], want.Segs[2*i+1])
				}
			}
		}
	}
}

// hanging is a random sum over points and directions of tangents, and its derivatives by both.
type hanging struct {
	at   []plane.Point
	turn []float64
}

func (f hanging) value(t *testing.T, pts []plane.Point, closed bool, start, end *plane.Point, was []plane.Point) float64 {
	t.Helper()
	b, ok := plane.FairBend(pts, closed, start, end)
	if !ok {
		t.Fatal("no curve")
	}
	sum := 0.0
	for i, p := range pts {
		sum += f.at[i].Dot(p) + f.turn[i]*plane.Between(was[i], b.Tangent(i))
	}
	return sum
}

// Law: Pull gives the derivatives that central differences give, of points and given directions.
func TestBendPull(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 2))
	const h = 1e-5
	for round := range 60 {
		closed, n := round%2 == 0, 3+round%11
		pts := wobbly(r, n, closed)
		a, z := 0.3*r.Float64(), 0.3*r.Float64()
		dir := func(angle float64) *plane.Point { p := plane.Point{X: 1}.Turn(angle); return &p }
		var start, end *plane.Point
		if round%3 == 1 && !closed {
			start, end = dir(a), dir(z)
		}
		b, _ := plane.FairBend(pts, closed, start, end)
		f := hanging{}
		var was []plane.Point
		for i := range pts {
			f.at, f.turn = append(f.at, plane.Point{X: r.Float64(), Y: r.Float64()}), append(f.turn, r.Float64()-0.5)
			was = append(was, b.Tangent(i))
		}
		grad, ds, de := b.Pull(f.at, f.turn)
		check := func(what string, got, up, down float64) {
			if want := (up - down) / (2 * h); math.Abs(got-want) > 1e-7*(1+math.Abs(want)) {
				t.Fatalf("round %d, %s: %.9f, by differences %.9f", round, what, got, want)
			}
		}
		for i := range pts {
			for c, step := range []plane.Point{{X: h}, {Y: h}} {
				keep := pts[i]
				pts[i] = keep.Add(step)
				up := f.value(t, pts, closed, start, end, was)
				pts[i] = keep.Sub(step)
				down := f.value(t, pts, closed, start, end, was)
				pts[i] = keep
				check("point", []float64{grad[i].X, grad[i].Y}[c], up, down)
			}
		}
		if start != nil {
			check("start", ds, f.value(t, pts, closed, dir(a+h), end, was), f.value(t, pts, closed, dir(a-h), end, was))
			check("end", de, f.value(t, pts, closed, start, dir(z+h), was), f.value(t, pts, closed, start, dir(z-h), was))
		}
	}
}
