package draft

import (
	"math"
	"strconv"
	"strings"

	"brimline/sheet"
)

// cubicFoot and gallon in m³ (exact; the gallon is the US liquid gallon of 231 in³).
const (
	cubicFoot = foot * foot * foot
	gallon    = 231 * 0.0254 * 0.0254 * 0.0254
)

// volume prints cubic metres to 0.1, to 0.01 of a whole below 10, or cubic feet to 1: a rod and a tape tell no
// more.
func (f figures) volume(m3, whole float64) string {
	if f.feet() {
		return minus(strconv.FormatFloat(m3/cubicFoot, 'f', 0, 64)) + " ft³"
	}
	return minus(strconv.FormatFloat(m3, 'f', volumePlaces(whole), 64)) + " m³"
}

func volumePlaces(whole float64) int {
	if abs(whole) < 10 {
		return 2
	}
	return 1
}

// volumeUp is a ± of a volume, never rounded away.
func (f figures) volumeUp(m3, whole float64) string {
	if f.feet() {
		return f.volume(math.Ceil(m3/cubicFoot-1e-9)*cubicFoot, whole)
	}
	steps := math.Pow(10, float64(volumePlaces(whole)))
	return f.volume(math.Ceil(m3*steps-1e-9)/steps, whole)
}

// alsoVolume is the volume in the unit in which water is dosed and paid, to hundreds.
func (f figures) alsoVolume(m3 float64) string {
	if f.feet() {
		return strconv.FormatFloat(100*math.Round(m3/gallon/100), 'f', 0, 64) + " US gal"
	}
	return strconv.FormatFloat(100*math.Round(m3*10), 'f', 0, 64) + " L"
}

// steepness writes a slope as 1:7.4.
func steepness(rise float64) string {
	if !(rise > 0) {
		return "level"
	}
	return "1:" + strconv.FormatFloat(1/rise, 'f', 1, 64)
}

// words is the column beside the depth plan.
func (c *depthCanvas) words(width float64) []row {
	d := c.depths
	h := d.Held
	rows := heading("Volume to the water surface "+d.Water, width)
	line := c.fig.volume(h.Volume, h.Volume) + " ± " + c.fig.volumeUp(cover*h.VolumeSD, h.Volume) + " (95 %), " + c.fig.alsoVolume(h.Volume)
	rows = append(rows, paragraph(line, dimHeight, true, width)...)
	rows = append(rows, gap(1))
	rows = append(rows, heading("Where its uncertainty comes from", width)...)
	rows = append(rows, listed(c.causes(), smallHeight, width)...)
	rows = append(rows, heading("What the water covers", width)...)
	rows = append(rows, listed(c.covered(), smallHeight, width)...)
	rows = append(rows, heading("Depths", width)...)
	rows = append(rows, listed(c.depthSentences(), smallHeight, width)...)
	if len(d.Compared) > 0 {
		rows = append(rows, heading("Beside a rule set", width)...)
		rows = append(rows, listed(c.compared(), smallHeight, width)...)
	}
	rows = append(rows, heading("Cautions", width)...)
	rows = append(rows, listed(c.depthCautions(), smallHeight, width)...)
	return append(rows, c.depthKey(width)...)
}

// causes are the parts of the variance of the volume, the largest first; what is below a hundredth is
// not told.
func (c *depthCanvas) causes() []string {
	h := c.depths.Held
	whole := h.VolumeSD * h.VolumeSD
	if whole <= 0 {
		return []string{"Nothing is said to be uncertain in it."}
	}
	var out []string
	for _, p := range sorted(h.Causes) {
		share := p.Value / whole
		if abs(share) < 0.01 {
			continue
		}
		t := capital(p.Name) + ": " + strconv.FormatFloat(100*share, 'f', 0, 64) + " % of the variance"
		if p.Value > 0 {
			t += ", alone ± " + c.fig.volumeUp(cover*math.Sqrt(p.Value), h.Volume)
		}
		out = append(out, t+".")
	}
	by := "more"
	if h.ShortcutBy < 0 {
		by = "less"
	}
	return append(out, "The usual shortcut, area times the mean of shallowest and deepest depth, would say "+c.fig.volume(h.Shortcut, h.Volume)+": "+
		c.fig.volume(abs(h.ShortcutBy), h.Volume)+" "+by+" ("+strconv.FormatFloat(100*abs(h.ShortcutBy)/h.Volume, 'f', 0, 64)+" %).")
}

// sorted puts the largest first, equals in their order.
func sorted(list []Part) []Part {
	out := append([]Part(nil), list...)
	for i := range out {
		for k := i; k > 0 && out[k].Value > out[k-1].Value; k-- {
			out[k], out[k-1] = out[k-1], out[k]
		}
	}
	return out
}

func (c *depthCanvas) covered() []string {
	h := c.depths.Held
	var parts []string
	for _, p := range h.Parts {
		if p.Value > 0 {
			parts = append(parts, p.Name+" "+c.fig.area(p.Value, nil))
		}
	}
	return []string{
		"Water surface: " + c.fig.area(h.Area, &h.AreaSD) + ".",
		"Wetted: " + c.fig.area(h.Wetted, &h.WettedSD) + ": " + strings.Join(parts, ", ") + ".",
	}
}

func (c *depthCanvas) depthSentences() []string {
	d, h := c.depths, c.depths.Held
	out := []string{
		"All depths are below the water surface " + d.Water + ".",
		"Mean " + c.fig.withUnit(h.Mean) + " ± " + c.fig.whole(cover*h.MeanSD) + ", volume over water surface.",
		"Deepest reading " + c.fig.withUnit(d.Deepest.Depth) + " ± " + c.fig.whole(cover*d.Deepest.SD) + named(d.Deepest.Name) + "; shallowest " + c.fig.withUnit(h.Shallowest) + ".",
	}
	if s := d.Steepest; s != nil && s.Rise > 0 {
		out = append(out, "Steepest floor between readings: "+steepness(s.Rise)+" ("+strconv.FormatFloat(100*s.Rise, 'f', 1, 64)+" ± "+
			strconv.FormatFloat(100*cover*s.SD, 'f', 1, 64)+" %), where the water is "+c.fig.withUnit(s.Depth)+" deep.")
	}
	return append(out, "Beyond the outermost sounding the floor keeps its depth to the wall; walls are plumb unless read.")
}

func named(mark string) string {
	if mark == "" {
		return ""
	}
	return " at " + mark
}

// compared are figures beside those of a rule set.
func (c *depthCanvas) compared() []string {
	var out []string
	for _, x := range c.depths.Compared {
		value, limit := c.fig.withUnit(x.Value)+" ± "+c.fig.whole(cover*x.SD), c.fig.withUnit(x.Limit)
		if x.Slope {
			value, limit = steepness(x.Value), steepness(x.Limit)
		}
		out = append(out, capital(x.Figure)+": "+value+" beside "+limit+" of "+x.Set+", "+x.Clause+" ("+x.Source+"): "+x.Verdict+".")
	}
	return append(out, "Whether the rule set applies, and the verdict, are for the authority or a qualified designer.")
}

// depthCautions are said on every sheet of depths.
func (c *depthCanvas) depthCautions() []string {
	out := []string{
		"No statement about diving: a depth or a slope on this sheet is no leave to dive. Boards and slides ask for their maker's own figures, checked again after any change of finish or edge.",
		"Nothing here advises to empty the pool. Ground water can lift an empty shell and float a liner, and walls can fall in: an engineer or a pool contractor decides. Keep people out of an empty deep end.",
	}
	if c.covers() {
		out = append(out, coverCaution)
	}
	return out
}

const coverCaution = "A cover is no floor: never walk on it, take it off whole before anyone bathes, and let no water stand on it. What a cover may be called is for its maker and its standard to say."

// covers says that something is ordered that lies over the water.
func (j *job) covers() bool {
	for _, o := range j.result.Orders {
		if o.Kind == "cover" || o.Kind == "blanket" || o.Kind == "automatic" {
			return true
		}
	}
	return false
}

// unitAfter is the unit after a figure that does not carry it.
func (c *depthCanvas) unitAfter() string {
	if u := c.fig.lengthUnit(); u != "ft in" {
		return " " + u
	}
	return ""
}

// depthKey explains the lines and symbols that are drawn.
func (c *depthCanvas) depthKey(width float64) []row {
	var lines []keyLine
	add := func(there bool, words string, items ...sheet.Item) {
		if there {
			lines = append(lines, keyLine{moved(items), words})
		}
	}
	dot := sheet.Item{Layer: sheet.LayerWords, Fill: sheet.Filled(sheet.Black), Shape: sheet.Circle{R: dotR}}
	add(len(c.depths.Soundings) > 0, "depth read there", dot)
	add(c.shown.contours, "line of one depth, every "+c.contourText(c.depths.Step)+c.unitAfter(), stroke(sheet.PenHair))
	add(c.shown.breaks, "break, pad or toe: the slope changes", stroke(sheet.PenUnder))
	add(c.shown.tops, "step or ledge, with its depth", stroke(sheet.PenThin))
	add(c.shown.sections, "end of a section, with its direction of sight", stroke(sheet.PenAxis))
	var rows []row
	for _, l := range lines {
		rows = append(rows, keyRows(l, width)...)
	}
	if c.shown.nameless {
		rows = append(rows, paragraph("Depths that found no room stand in the table.", smallHeight, false, width)...)
	}
	if len(rows) == 0 {
		return nil
	}
	return append(heading("Key", width), rows...)
}
