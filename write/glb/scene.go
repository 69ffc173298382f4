package glb

import (
	"errors"
	"fmt"
	"math"

	"brimline/mesh"
)

// Scene is what is written: bodies in the order of a list that a viewer shows.
type Scene struct {
	Title  string
	Bodies []Body
}

// Body is a surface, or lines, of one colour under one name. Points are metres, x right, y up in plan,
// z upward; triangles turn counter-clockwise seen from the side that is looked at, and are drawn on
// both. Lines are runs through points, by number.
type Body struct {
	Name      string
	Paint     Paint
	Points    []mesh.Point3
	Triangles [][3]int32
	Lines     [][]int32
}

// Paint is a colour of the surface, red, green, blue and opacity, each from 0 to 1, linear.
type Paint = [4]float64

// Errors of Write.
var (
	errNumber = errors.New("a coordinate is no number, or lies more than 10000 km off")
	errCorner = errors.New("a corner is no point of the body")
	errPaint  = errors.New("a colour goes from 0 to 1")
	errShape  = errors.New("a body holds either triangles or lines, each through two points or more")
	errLarge  = errors.New("the scene is larger than a file can be")
)

// farthest bounds coordinates (metres).
const farthest = 1e7

// check says what is wrong with a body.
func (b *Body) check() error {
	for _, p := range b.Points {
		for _, x := range [3]float64{p.X, p.Y, p.Z} {
			if !(math.Abs(x) <= farthest) {
				return errNumber
			}
		}
	}
	for _, c := range b.Paint {
		if !(c >= 0 && c <= 1) {
			return errPaint
		}
	}
	if len(b.Triangles) > 0 && len(b.Lines) > 0 {
		return errShape
	}
	for _, t := range b.Triangles {
		if !b.has(t[:]) {
			return errCorner
		}
	}
	for _, l := range b.Lines {
		if len(l) < 2 {
			return errShape
		}
		if !b.has(l) {
			return errCorner
		}
	}
	return nil
}

func (b *Body) has(points []int32) bool {
	for _, p := range points {
		if p < 0 || int(p) >= len(b.Points) {
			return false
		}
	}
	return true
}

// shown are the bodies with anything to show, which alone are written: the format knows no empty ones.
func (s *Scene) shown() ([]Body, error) {
	var out []Body
	for _, b := range s.Bodies {
		if err := b.check(); err != nil {
			return nil, fmt.Errorf("body %q: %w", b.Name, err)
		}
		if len(b.Triangles)+len(b.Lines) > 0 {
			out = append(out, b)
		}
	}
	return out, nil
}

// origin is a point near the middle of everything, in whole metres: places are written as from
// there, so that the short numbers of the format hold them to a hundredth of a millimetre wherever the
// book has its zero.
func origin(bodies []Body) mesh.Point3 {
	low, high := [3]float64{}, [3]float64{}
	first := true
	for _, b := range bodies {
		for _, p := range b.Points {
			for k, x := range [3]float64{p.X, p.Y, p.Z} {
				if first {
					low[k], high[k] = x, x
				}
				low[k], high[k] = math.Min(low[k], x), math.Max(high[k], x)
			}
			first = false
		}
	}
	mid := func(k int) float64 { return math.Round((low[k] + high[k]) / 2) }
	return mesh.Point3{X: mid(0), Y: mid(1), Z: mid(2)}
}
