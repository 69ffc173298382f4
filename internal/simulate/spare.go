package simulate

import (
	"math"
	"slices"

	"brimline/plane"
)

// Spare is how many readings of a mark or peg may be lost, whichever they are, so that two of
// those left still cross at it between 30° and 150° and fix it, its neighbours standing where they
// do: by the true places. −1 where no two of them cross so. A tape has one direction; an offset
// and an instrument's point fix a mark alone.
//
// What is left fixes nothing where all its directions lie within 30° of each other, and only
// tapes can: so all may be lost but one more than the most tapes that lie together so.
func (c Case) Spare(mark string) int {
	n := 0
	var rays []float64 // directions of the tapes as lines, from 0 to π
	for _, x := range c.Readings {
		if !slices.Contains(x.Marks, mark) || x.Kind == "offset" && x.Marks[0] != mark {
			continue
		}
		n++
		if x.Kind == "tie" {
			angle := plane.Angle(c.Truth[x.Marks[1]].Sub(c.Truth[x.Marks[0]]))
			rays = append(rays, math.Mod(angle+2*math.Pi, math.Pi))
		}
	}
	return n - together(rays) - 1
}

// together is the most lines of which no two cross at 30° or more: as 30° is less than a third of
// the half circle of their directions, these lie within an arc of that width.
func together(rays []float64) int {
	most := 0
	for _, from := range rays {
		n := 0
		for _, to := range rays {
			if math.Mod(to-from+math.Pi, math.Pi) < good {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}
