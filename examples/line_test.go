package examples_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/plane"
)

// Standard deviations of readings along and to lines that a book gives none for: the defaults that
// `brimline tools` prints.
const (
	alongSD, alongPPM = 0.005, 0.001
	clearSD, widthSD  = 0.010, 0.003
)

// line adds a reading along, round or to a line, or of a width, that is true to the given length; it
// gives its number. sigma is its own in metres, written as more says.
func (d *day) line(what, more string, length, sigma float64, marks ...string) string {
	v := sigma * sigma
	for _, m := range marks {
		if onRim(m) {
			v += d.definition * d.definition
		}
	}
	fmt.Fprintf(&d.book, "- {%s, is: %s%s}\n", what, d.typed(length+math.Sqrt(v)*d.noise.NormFloat64()), more)
	return d.number()
}

// alongDefault is the standard deviation of a tape laid along an edge for so many metres.
func alongDefault(length float64) float64 { return math.Hypot(alongSD, alongPPM*length) }

// outlined is the true rim for the answer sheet: where each of its pieces begins, clockwise, with its
// bulge.
func (d *day) outlined() [][3]float64 {
	var out [][3]float64
	for _, s := range d.outline.Reverse().Segs {
		out = append(out, [3]float64{rounded(s.A.X), rounded(s.A.Y), rounded(s.Bulge)})
	}
	return out
}

// rim is the true rim of an answer sheet.
func (s sheet) rim() plane.Path {
	p := plane.Path{Closed: true}
	for i, v := range s.Outline {
		w := s.Outline[(i+1)%len(s.Outline)]
		p.Segs = append(p.Segs, plane.Segment{A: plane.Point{X: v[0], Y: v[1]}, B: plane.Point{X: w[0], Y: w[1]}, Bulge: v[2]})
	}
	return p
}

// ofLine is the length of a reading of a line by the answer sheet, and its sd by the book.
func (b page) ofLine(t *testing.T, r item, s sheet) (length, sd float64) {
	t.Helper()
	marks := strings.Fields(r.Along + r.Clear + r.Width)
	at := func(k int) plane.Point { return plane.Point{X: s.Marks[marks[k]][0], Y: s.Marks[marks[k]][1]} }
	path, name := s.rim(), r.Line+r.Round
	if l := b.Lines[name]; l.From != "" {
		var err error
		if path, err = beside(path, mm(t, l.Outward)); err != nil {
			t.Fatal(err)
		}
	}
	switch {
	case r.Width != "":
		length, sd = at(0).Dist(at(1)), widthSD
	case r.Until != "":
		length, sd = s.Free[marks[0]], clearSD
	case r.Clear != "":
		length, sd = math.Abs(path.Foot(at(0)).Right), clearSD
	case r.Along != "":
		length, _ = path.Between(at(0), at(1))
		sd = alongDefault(length)
	default:
		length = path.Length()
		if known, ok := s.Lines[name]; ok {
			length = known
		}
		sd = alongDefault(length)
	}
	if own := sigmas(r.Sigma); len(own) > 0 {
		sd = mm(t, own[0])
	}
	for _, m := range marks {
		if onRim(m) {
			sd = math.Hypot(sd, mm(t, b.Lines["rim"].Definition))
		}
	}
	return length, sd
}

// beside is the parallel of a rim, travelled clockwise, with sharp corners.
func beside(rim plane.Path, outward float64) (plane.Path, error) {
	p, err := rim.Offset(outward, plane.MitredCorners)
	if err != nil || len(p.Paths) != 1 {
		return plane.Path{}, fmt.Errorf("%d parallels: %v", len(p.Paths), err)
	}
	return p.Paths[0], nil
}

// onRim says by its name that a mark lies on the rim.
func onRim(name string) bool { return name[0] == 'r' || name[0] == 's' }
