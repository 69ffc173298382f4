package answer

import (
	"math"
	"strings"

	"brimline/survey"
	"brimline/unit"
)

// Measures prints check lines, one table each: every figure with its standard deviation and its ±.
// Before them stands why none of it must be used, where something says so.
func Measures(list []survey.Measured, stops []string, u unit.Unit) string {
	m := measure{style: unit.StyleFor(u)}
	var parts []string
	if len(stops) > 0 {
		text := "Use none of these figures:\n"
		for _, s := range stops {
			text += bullet(s)
		}
		parts = append(parts, text)
	}
	for _, one := range list {
		parts = append(parts, measured(one, m))
	}
	return strings.Join(parts, "\n")
}

func measured(x survey.Measured, m measure) string {
	t := table{title: x.From + " to " + x.To, heads: []string{"", "", "sd", "± 95 %"}, right: []bool{false, true, true, true}}
	row := func(name string, value, sd float64) {
		t.add(name, m.style.LengthUnit(value), m.fine(sd), m.smallUnit(m.up(normal95*sd)))
	}
	if x.Across == nil {
		row("level length", x.Length, x.LengthSD)
	} else {
		row("shortest way", x.Length, x.LengthSD)
	}
	if x.Bearing != nil {
		t.add("bearing", decimal(*x.Bearing, 2)+"°", decimal(*x.BearingSD, 3)+"°", decimal(math.Ceil(normal95**x.BearingSD*100-1e-9)/100, 2)+"°")
	}
	if r := x.Rise; r != nil {
		row("rise", r.Rise, r.RiseSD)
		if r.Slope != nil {
			t.add("slope", decimal(100**r.Slope, 2)+" %", decimal(100**r.SlopeSD, 2)+" %", decimal(math.Ceil(normal95**r.SlopeSD*1e4-1e-9)/100, 2)+" %")
		}
		if r.OneIn != nil {
			t.add("", "1:"+decimal(*r.OneIn, 1), decimal(*r.OneInSD, 1), decimal(math.Ceil(normal95**r.OneInSD*10-1e-9)/10, 1))
		}
		row("sloping length", r.Sloping, r.SlopingSD)
	}
	for _, a := range x.Along {
		if a.Opposite == nil {
			row("along "+a.Line, a.Length, a.LengthSD)
			continue
		}
		row("along "+a.Line+", in its direction", a.Length, a.LengthSD)
		row("along "+a.Line+", the other way", *a.Opposite, *a.OppositeSD)
	}
	return t.String() + bullets(x, m)
}

// bullets are the sentences under a table.
func bullets(x survey.Measured, m measure) string {
	var b strings.Builder
	if a := x.Across; a != nil {
		b.WriteString(bullet(foot(x, a, m)))
	}
	switch {
	case x.Controlled && x.Hidden != nil:
		b.WriteString(bullet("Controlled: a mistake that nothing shows could move the length by " + m.smallUnit(m.up(*x.Hidden)) + " at most"))
	case x.Unsettled:
		b.WriteString(bullet("Not controlled: it hangs on readings in which a mistake shows; read those again first"))
	default:
		b.WriteString(bullet("Not controlled: a mistake of any size could stand in this length, and nothing would show it"))
	}
	for _, o := range x.Other {
		b.WriteString(bullet("Or " + m.style.LengthUnit(o.Length) + ", if " + o.Mark + " lies at its other place, " + m.style.Length(o.X) + ", " + m.style.Length(o.Y)))
	}
	return b.String()
}

// foot says where a shortest way ends.
func foot(x survey.Measured, a *survey.Across, m measure) string {
	text := x.From + " lies " + map[string]string{"inside": "inside ", "outside": "outside ", "left": "left of ", "right": "right of ", "on": "on "}[a.Side] + a.Line
	if a.Side == "on" {
		return text + ", " + m.style.LengthUnit(a.Along) + " along it from its first mark"
	}
	text += "; the way ends " + m.style.LengthUnit(a.Along) + " along it from its first mark, "
	if a.Square {
		return text + "square to it"
	}
	return text + "at a corner or an end"
}

// fine is a standard deviation with its unit: to a tenth of a millimetre, or to a hundredth of an
// inch; from a metre on as lengths are.
func (m measure) fine(sd float64) string {
	switch {
	case sd >= 1:
		return m.style.LengthUnit(sd)
	case m.feet():
		return decimal(sd/0.0254, 2) + " in"
	}
	return decimal(sd*1000, 1) + " mm"
}
