package sheet

import (
	"fmt"
	"math"
	"strings"

	"brimline/plane"
)

// Dump prints a sheet as text rounded to a tenth of a millimetre and of a degree, one plain shape
// a line: what a test keeps to see that a drawing has not moved.
func (s Sheet) Dump() string {
	var b strings.Builder
	fmt.Fprintf(&b, "sheet %q %s %s x %s\n", s.Title, s.Size.Name, tenth(s.Size.W), tenth(s.Size.H))
	for _, v := range s.Views {
		fmt.Fprintf(&b, "view %q %s model %s paper %s\n", v.Name, v.Scale, spot(v.Model), spot(v.Paper))
	}
	layer := Layer("")
	for _, it := range s.Flat() {
		if it.Layer != layer {
			layer = it.Layer
			fmt.Fprintf(&b, "[%s]\n", layer)
		}
		b.WriteString(it.line() + "\n")
	}
	return b.String()
}

func (it Item) line() string {
	how := string(it.Pen)
	if it.Ink != Black {
		how += fmt.Sprintf(" ink%d", it.Ink)
	}
	if it.Fill != nil {
		how += fmt.Sprintf(" fill%d", *it.Fill)
	}
	how = strings.TrimSpace(how)
	switch s := it.Shape.(type) {
	case Path:
		return "path " + how + " " + pathText(s.Path)
	case Circle:
		return fmt.Sprintf("circle %s %s r %s", how, spot(s.Centre), tenth(s.R))
	case Ellipse:
		return fmt.Sprintf("ellipse %s %s %s %s turn %s", how, spot(s.Centre), tenth(s.A), tenth(s.B), degrees(s.Turn))
	case Picture:
		return fmt.Sprintf("picture %x %s %s", s.Hash[:4], spot(s.Box.Min), spot(s.Box.Max))
	case Text:
		weight := ""
		if s.Bold {
			weight = " bold"
		}
		return fmt.Sprintf("text %s h %s%s turn %s %s %q", how, tenth(s.Height), weight, degrees(s.Turn), spot(s.Foot()), s.S)
	}
	return fmt.Sprintf("unknown %T", it.Shape)
}

func pathText(p plane.Path) string {
	var b strings.Builder
	for i, s := range p.Segs {
		if i == 0 {
			b.WriteString(spot(s.A))
		}
		if s.Straight() {
			b.WriteString(" - ")
		} else {
			b.WriteString(" ( " + degrees(s.Sweep()) + " ) ")
		}
		b.WriteString(spot(s.B))
	}
	if p.Closed {
		b.WriteString(" closed")
	}
	return b.String()
}

func spot(p plane.Point) string { return tenth(p.X) + "," + tenth(p.Y) }

func degrees(rad float64) string { return tenth(rad * 180 / math.Pi) }

// tenth prints one decimal and never a minus zero.
func tenth(x float64) string {
	r := math.Round(x*10) / 10
	if r == 0 {
		r = 0
	}
	return fmt.Sprintf("%.1f", r)
}
