package main

import (
	"math"

	"brimline/internal/simulate"
	"brimline/plane"
)

// toldApart says that merging any two neighbours into one straight or arc, or giving the marks of
// any piece to its neighbours, raises the weighted sum of squares by the least that counts. A
// piece without marks of its own cannot be given away: its neighbours do not meet there.
func toldApart(f simulate.Figure, read [][]plane.Point) bool {
	n := len(read)
	sum := func(i int, at []plane.Point) float64 { return leastSum(f[(i+n)%n].Kind, at) }
	for i := range n {
		before, b, after := read[(i+n-1)%n], read[i], read[(i+1)%n]
		if n < 2 {
			break
		}
		if leastSum("arc", joinedMarks(b, after))-sum(i, b)-sum(i+1, after) < plain {
			return false
		}
		if n < 3 || len(b) < 3 {
			continue
		}
		apart := sum(i-1, before) + sum(i, b) + sum(i+1, after)
		for cut := 1; cut < len(b); cut++ { // marks before cut go to one side, the others to the other
			one, two := joinedMarks(before, b[:cut]), joinedMarks(b[cut:], after)
			if sum(i-1, one)+sum(i+1, two)-apart < plain {
				return false
			}
		}
	}
	return true
}

func joinedMarks(a, b []plane.Point) []plane.Point {
	return append(append([]plane.Point(nil), a...), b[1:]...)
}

// leastSum is the least weighted sum of squares of a straight, or of a circle or straight,
// through marks.
func leastSum(kind string, at []plane.Point) float64 {
	sum := 0.0
	if kind == "straight" {
		sum = squares(at)
	} else if len(at) > 3 {
		_, rms, _ := plane.FitCircle(at)
		sum = math.Min(float64(len(at))*rms*rms, squares(at))
	}
	return sum / markSD / markSD
}

// squares is the least sum of squared distances from a straight: the lesser eigenvalue of the
// moments about the mean.
func squares(at []plane.Point) float64 {
	var mean plane.Point
	for _, p := range at {
		mean = mean.Add(p.Mul(1 / float64(len(at))))
	}
	var xx, xy, yy float64
	for _, p := range at {
		q := p.Sub(mean)
		xx, xy, yy = xx+q.X*q.X, xy+q.X*q.Y, yy+q.Y*q.Y
	}
	return math.Max(0, (xx+yy)/2-math.Hypot((xx-yy)/2, xy))
}
