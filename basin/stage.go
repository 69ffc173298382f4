package basin

import (
	"fmt"
	"math"
)

// Stage is a row of the stage table.
type Stage struct {
	Level, Area, Volume, VolumeSD, Wetted float64
}

// mostStages bounds a stage table.
const mostStages = 2000

// Stages is the stage table: at every whole step below the top, from the first above the deepest floor,
// and at the top itself. top is usually the water level; the step, 0.05 or 0.10 m, counts from it downward.
func (b *Basin) Stages(top Height, step float64) ([]Stage, error) {
	low := math.Inf(1)
	for _, v := range b.shell.vertices {
		low = math.Min(low, v.p[2])
	}
	n := math.Ceil((top.Z - low) / step)
	if !(step > 0) || !(n <= mostStages) {
		return nil, fmt.Errorf("basin: a stage table of %g m in steps of %g m is not made: at most %d rows", top.Z-low, step, mostStages)
	}
	var out []Stage
	for k := int(n) - 1; k >= 0; k-- {
		level := Height{top.Z - float64(k)*step, top.Index}
		s := Stage{Level: level.Z}
		var wetted [parts]float64
		s.Area, s.Volume, wetted = b.shell.under(level.Z)
		for _, w := range wetted {
			s.Wetted += w
		}
		s.VolumeSD = b.volumeTrust(level, s.Area, b.unseen(b.floorProbes(level.Z))).SD
		out = append(out, s)
	}
	return out, nil
}
