package answer

import (
	"math"
	"strconv"

	"brimline/fieldbook"
)

// figure prints the figures of one kind of reading: degrees, or lengths of the job's unit.
type figure struct {
	measure
	angle bool
}

func (m measure) of(kind string) figure { return figure{m, fieldbook.Angular(kind)} }

// value is a reading in a column: of an angle with its sign.
func (f figure) value(v float64) string {
	if f.angle {
		return decimal(v, 4) + "°"
	}
	return f.style.Length(v)
}

// small is a difference in a column.
func (f figure) small(v float64) string {
	if f.angle {
		return decimal(v, 3) + "°"
	}
	return f.measure.small(v)
}

// smallUnit is a difference in a sentence.
func (f figure) smallUnit(v float64) string {
	if f.angle {
		return f.small(v)
	}
	return f.measure.smallUnit(v)
}

// up rounds away from zero to the step of what small prints.
func (f figure) up(v float64) float64 {
	if f.angle {
		return math.Ceil(v*1000-1e-9) / 1000
	}
	return f.measure.up(v)
}

// plus is a ± in a column, rounded up.
func (f figure) plus(v *float64) string {
	if v == nil {
		return nothing
	}
	return f.small(f.up(*v))
}

func itoa(n int) string { return strconv.Itoa(n) }
