package draft

import (
	"strconv"

	"brimline/fieldbook"
)

// readingFigures prints the figures of one kind of reading: degrees with their sign, or lengths.
type readingFigures struct {
	figures
	angle bool
}

func (f figures) of(kind string) readingFigures {
	return readingFigures{f, fieldbook.Angular(kind)}
}

// length is a value in a table or a sentence.
func (f readingFigures) length(v float64) string {
	if f.angle {
		return minus(strconv.FormatFloat(v, 'f', 4, 64)) + "°"
	}
	return f.figures.length(v)
}

// ref is a value that may be missing.
func (f readingFigures) ref(v *float64) string {
	if v == nil {
		return none
	}
	return f.length(*v)
}

// small is a residual or a standard deviation in a table.
func (f readingFigures) small(v float64) string {
	if f.angle {
		return minus(strconv.FormatFloat(v, 'f', 3, 64)) + "°"
	}
	return f.figures.small(v)
}

// smallRef is one that may be missing.
func (f readingFigures) smallRef(v *float64) string {
	if v == nil {
		return none
	}
	return f.small(*v)
}

// whole is a difference in a sentence.
func (f readingFigures) whole(v float64) string {
	if f.angle {
		return f.small(v)
	}
	return f.figures.whole(v)
}
