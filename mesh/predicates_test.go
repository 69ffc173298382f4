package mesh_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"brimline/mesh"
	"brimline/plane"
)

// bigOrient and bigCircle are the two determinants in rational numbers.
func bigOrient(a, b, c plane.Point) int {
	return new(big.Rat).Sub(times(minus(a.X, c.X), minus(b.Y, c.Y)), times(minus(a.Y, c.Y), minus(b.X, c.X))).Sign()
}

func bigCircle(p [3]plane.Point, d plane.Point) int {
	var x, y, lift [3]*big.Rat
	for i, q := range p {
		x[i], y[i] = minus(q.X, d.X), minus(q.Y, d.Y)
		lift[i] = new(big.Rat).Add(times(x[i], x[i]), times(y[i], y[i]))
	}
	sum := new(big.Rat)
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		minor := new(big.Rat).Sub(times(x[j], y[k]), times(x[k], y[j]))
		sum.Add(sum, minor.Mul(minor, lift[i]))
	}
	return sum.Sign()
}

func minus(a, b float64) *big.Rat {
	return new(big.Rat).Sub(new(big.Rat).SetFloat64(a), new(big.Rat).SetFloat64(b))
}

func times(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

func signOf(x float64) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// moved is x some units in the last place away; 0 stays, whose neighbours are too small.
func moved(x float64, steps int) float64 {
	if x == 0 {
		return 0
	}
	to := math.Inf(1)
	if steps < 0 {
		to, steps = math.Inf(-1), -steps
	}
	for range steps {
		x = math.Nextafter(x, to)
	}
	return x
}

// TestOrientNearALine walks a grid of neighbouring floating-point numbers around a point of the
// line y = x, where the plain formula gives a pattern of wrong signs (L. Kettner et al.,
// "Classroom examples of robustness problems in geometric computations", ESA 2004, figure 2).
func TestOrientNearALine(t *testing.T) {
	b, c := plane.Point{X: 12, Y: 12}, plane.Point{X: 24, Y: 24}
	plainWrong := 0
	for i := range 64 {
		for j := range 64 {
			a := plane.Point{X: moved(0.5, i), Y: moved(0.5, j)}
			want := bigOrient(a, b, c)
			if got := signOf(mesh.Orient(a, b, c)); got != want {
				t.Fatalf("Orient(%v, %v, %v): %d, want %d", a, b, c, got, want)
			}
			if signOf((a.X-c.X)*(b.Y-c.Y)-(a.Y-c.Y)*(b.X-c.X)) != want {
				plainWrong++
			}
		}
	}
	if plainWrong == 0 {
		t.Error("the plain formula is right everywhere: these points try nothing")
	}
}

// wild is a coordinate of some kind: of very different sizes, on few bits, or near another one.
func wild(r *rand.Rand, near float64) float64 {
	switch r.IntN(5) {
	case 0:
		return moved(near, r.IntN(5)-2)
	case 1:
		return float64(r.IntN(9) - 4)
	case 2:
		return math.Ldexp(r.Float64()-0.5, r.IntN(120)-60)
	case 3:
		return near + math.Ldexp(r.Float64()-0.5, -r.IntN(60))
	}
	return 20*r.Float64() - 10
}

func TestOrientAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	zeros := 0
	for range 20000 {
		a := plane.Point{X: wild(r, 1), Y: wild(r, 3)}
		b := plane.Point{X: wild(r, a.X), Y: wild(r, a.Y)}
		m := plane.Lerp(a, b, float64(r.IntN(8))/4)
		c := plane.Point{X: wild(r, m.X), Y: wild(r, m.Y)}
		if r.IntN(2) == 0 {
			c = plane.Point{X: moved(m.X, r.IntN(3)-1), Y: moved(m.Y, r.IntN(3)-1)}
		}
		want := bigOrient(a, b, c)
		if want == 0 {
			zeros++
		}
		if got := signOf(mesh.Orient(a, b, c)); got != want {
			t.Fatalf("Orient(%v, %v, %v): %d, want %d", a, b, c, got, want)
		}
	}
	if zeros < 100 {
		t.Errorf("only %d in a line: these points try too little", zeros)
	}
}

// onCircle is a point of the circle with radius 65 about the origin with whole coordinates, turned by quarters.
func onCircle(r *rand.Rand) plane.Point {
	p := [][2]float64{{65, 0}, {63, 16}, {60, 25}, {56, 33}, {52, 39}, {39, 52}, {33, 56}, {25, 60}, {16, 63}}[r.IntN(9)]
	q := plane.Point{X: p[0], Y: p[1]}
	for range r.IntN(4) {
		q = q.Left()
	}
	return q
}

func TestInCircleAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	zeros := 0
	for range 6000 {
		shift := plane.Point{X: wild(r, 100), Y: wild(r, -100)}
		scale := math.Ldexp(1, r.IntN(20)-10)
		var p [4]plane.Point
		for i := range p {
			p[i] = onCircle(r).Mul(scale).Add(shift)
			if r.IntN(3) == 0 {
				p[i] = plane.Point{X: moved(p[i].X, r.IntN(3)-1), Y: moved(p[i].Y, r.IntN(3)-1)}
			}
			if r.IntN(12) == 0 {
				p[i] = plane.Point{X: wild(r, p[i].X), Y: wild(r, p[i].Y)}
			}
		}
		want := bigCircle([3]plane.Point(p[:3]), p[3])
		if want == 0 {
			zeros++
		}
		if got := signOf(mesh.InCircle(p[0], p[1], p[2], p[3])); got != want {
			t.Fatalf("InCircle(%v): %d, want %d", p, got, want)
		}
	}
	if zeros < 100 {
		t.Errorf("only %d on a circle: these points try too little", zeros)
	}
}
