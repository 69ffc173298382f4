package pdf

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"brimline/plane"
	"brimline/sheet"
)

// cubics reads the points of a path's operators.
func cubics(t *testing.T, ops string) (start plane.Point, curves [][3]plane.Point) {
	t.Helper()
	var v []plane.Point
	words := strings.Fields(ops)
	for i := 0; i < len(words); i++ {
		switch words[i] {
		case "m":
			start, v = v[0], nil
		case "c":
			curves, v = append(curves, [3]plane.Point{v[0], v[1], v[2]}), nil
		case "h":
		default:
			x, errX := strconv.ParseFloat(words[i], 64)
			y, errY := strconv.ParseFloat(words[i+1], 64)
			if errX != nil || errY != nil {
				t.Fatalf("operators %q", ops)
			}
			v = append(v, plane.Point{X: x, Y: y})
			i++
		}
	}
	return start, curves
}

// Bézier pieces keep within a thousandth of a millimetre of the true arc.
func TestArcsWithinAThousandth(t *testing.T) {
	p := &page{}
	for _, r := range []float64{0.5, 20, 180, 900} {
		for _, sweep := range []float64{0.2, -1.4, 3, -5.9} {
			a := plane.Point{X: 100 + r, Y: 50}
			b := plane.Point{X: 100, Y: 50}.Add(plane.Point{X: r}.Turn(sweep))
			seg := plane.Segment{A: a, B: b, Bulge: math.Tan(sweep / 4)}
			start, curves := cubics(t, p.path(plane.Path{Segs: []plane.Segment{seg}}))
			if worst := farthest(start, curves, plane.Point{X: 100, Y: 50}, r); worst > 0.001 {
				t.Errorf("r %g sweep %g: %g mm off with %d pieces", r, sweep, worst, len(curves))
			}
			if end := curves[len(curves)-1][2]; end.Dist(b) > 0.001 {
				t.Errorf("r %g sweep %g: ends at %v, not %v", r, sweep, end, b)
			}
		}
	}
}

// farthest is the largest distance of points along the cubics from a circle.
func farthest(start plane.Point, curves [][3]plane.Point, centre plane.Point, r float64) float64 {
	worst := 0.0
	for _, c := range curves {
		for t := 0.0; t <= 1; t += 0.01 {
			u := 1 - t
			q := start.Mul(u * u * u).Add(c[0].Mul(3 * u * u * t)).Add(c[1].Mul(3 * u * t * t)).Add(c[2].Mul(t * t * t))
			worst = math.Max(worst, math.Abs(q.Dist(centre)-r))
		}
		start = c[2]
	}
	return worst
}

func TestEllipseIsWhole(t *testing.T) {
	p := &page{}
	e := sheet.Ellipse{Centre: plane.Point{X: 30, Y: 40}, A: 9, B: 2, Turn: 0.6}
	start, curves := cubics(t, p.ellipse(e))
	if curves[len(curves)-1][2].Dist(start) > 1e-3 {
		t.Error("the ellipse is open")
	}
	for _, c := range curves {
		v := c[2].Sub(e.Centre).Turn(-e.Turn)
		if d := v.X*v.X/81 + v.Y*v.Y/4; math.Abs(d-1) > 1e-3 {
			t.Errorf("%v is not on the ellipse: %g", c[2], d)
		}
	}
}
