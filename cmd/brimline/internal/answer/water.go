package answer

import (
	"fmt"
	"math"
	"strings"

	"brimline/fieldbook"
	"brimline/survey"
)

// water says what the pool holds at the surface read, how well that is known and why, and what the floor
// does; empty where no water is computed.
func water(r *survey.Result, m measure) string {
	w := r.Water
	if w == nil {
		return ""
	}
	var b strings.Builder
	b.WriteString(wrap(fmt.Sprintf("Water at %s: %s ± %s (95 %%)", w.Surface, m.volume(w.Volume), m.volumePlus(w.VolumeSD)), "", "  "))
	for _, t := range []string{surface(w, m), depths(w, m), because(w), wetted(w, m), shortcut(w, m), falls(w, m)} {
		if t != "" {
			b.WriteString(bullet(t))
		}
	}
	b.WriteString(stages(w, m) + ruled(w, m))
	b.WriteString(wrap(w.Caution, "", ""))
	return b.String()
}

func surface(w *survey.Water, m measure) string {
	return fmt.Sprintf("Surface %s ± %s; an error of %s in its height is %s",
		m.area(w.Area), m.areaPlusSD(w.AreaSD), m.smallUnit(centimetre), m.volume(w.Area*centimetre))
}

// centimetre is the error of a water level that people can picture.
const centimetre = 0.010

func depths(w *survey.Water, m measure) string {
	text := fmt.Sprintf("Deepest read %s ± %s at %s, shallowest %s ± %s at %s", m.style.LengthUnit(w.Deepest), m.plusUnit(w.DeepestSD), w.At.Mark,
		m.style.LengthUnit(w.Shallowest), m.plusUnit(w.ShallowestSD), w.ShallowestAt.Mark)
	return text + fmt.Sprintf("; mean depth %s ± %s", m.style.LengthUnit(w.MeanDepth), m.plusUnit(w.MeanDepthSD))
}

// because lists the causes of the uncertainty of the volume, the largest first, and leaves out what is
// less than a hundredth.
func because(w *survey.Water) string {
	c := w.Causes
	list := []struct {
		share float64
		what  string
	}{{c.Water, "the height of the water"}, {c.Outline, "the outline"}, {c.Floor, "the depths read"},
		{c.Walls, "rim, walls and tops"}, {c.Sampling, "what lies between the readings"}}
	var parts []string
	for range list {
		best := -1
		for k, x := range list {
			if x.share >= 0.005 && (best < 0 || x.share > list[best].share) {
				best = k
			}
		}
		if best < 0 {
			break
		}
		parts = append(parts, list[best].what+" "+percent(list[best].share))
		list[best].share = 0
	}
	if len(parts) == 0 {
		return ""
	}
	return "Of its variance " + strings.Join(parts, ", ")
}

// wetted splits the wetted area.
func wetted(w *survey.Water, m measure) string {
	text := fmt.Sprintf("Wetted %s ± %s: floor %s, walls %s", m.area(w.WettedArea), m.areaPlusSD(w.WettedSD), m.area(w.Split.Floor), m.area(w.Split.Walls))
	for _, x := range []struct {
		what string
		v    float64
	}{{"coves", w.Split.Coves}, {"steps", w.Split.Steps}, {"ledges", w.Split.Ledges}} {
		if x.v > 0 {
			text += ", " + x.what + " " + m.area(x.v)
		}
	}
	return text
}

// shortcut sets the usual estimate beside the volume.
func shortcut(w *survey.Water, m measure) string {
	word := "too much"
	if w.Shortcut.Error < 0 {
		word = "too little"
	}
	return fmt.Sprintf("Half of shallowest and deepest times the surface would say %s: %s %s", m.volume(w.Shortcut.Volume), m.volume(math.Abs(w.Shortcut.Error)), word)
}

func falls(w *survey.Water, m measure) string {
	s := w.Steepest
	if s == nil || s.OneIn == nil {
		return ""
	}
	return fmt.Sprintf("The floor is steepest near %s, %s, where it is %s deep: 1:%s", m.style.Length(s.At.X), m.style.Length(s.At.Y), m.style.LengthUnit(s.Depth), decimal(*s.OneIn, 1))
}

// stages tables the filling of the pool.
func stages(w *survey.Water, m measure) string {
	t := table{
		title: "  filling (below the surface read in " + m.style.UnitName() + ")",
		heads: []string{"below", "surface", "volume", "± 95 %"},
		right: []bool{true, true, true, true},
	}
	for k := len(w.Stages) - 1; k >= 0; k-- {
		s := w.Stages[k]
		t.add(m.style.Length(s.Depth), m.area(s.Area), m.volume(s.Volume), m.volumePlus(s.VolumeSD))
	}
	return t.String()
}

// ruled says what was measured beside each figure of the rule set that the book chose, and how the figure
// is known.
func ruled(w *survey.Water, m measure) string {
	if w.RuleSet == "" {
		return ""
	}
	var b strings.Builder
	b.WriteString(wrap("Beside the figures of "+w.RuleSet+" ("+w.Edition+")", "  ", "  "))
	for _, x := range w.Rules {
		b.WriteString(bullet(against(x, m)))
	}
	return b.String()
}

// against puts one figure into a sentence.
func against(x survey.RuleLine, m measure) string {
	show, plus := m.style.LengthUnit, m.plusUnit
	if strings.HasSuffix(x.What, "slope") {
		show = func(v float64) string { return "1:" + decimal(1/v, 1) }
		plus = func(sd *float64) string { return slopePlus(x.Value, sd) }
	}
	most := "at most "
	if x.Least {
		most = "at least "
	}
	text := figures[x.What] + " (" + x.Clause + "): " + most + show(x.Figure)
	switch {
	case x.Value == nil:
		text += "; the book does not tell what is there"
	case *x.Value <= 0:
		text += "; level as measured"
	default:
		text += "; measured " + show(*x.Value) + " ± " + plus(x.SD) + ": " + x.Verdict
	}
	return text + ". The figure is " + x.Source
}

// figures are what a rule set limits, in words.
var figures = map[string]string{
	fieldbook.ShallowSlope: "Steepest slope where it is less than 5 ft deep",
	fieldbook.DeepSlope:    "Steepest slope where it is deeper than 5 ft",
	fieldbook.FirstChange:  "From the shallow wall to the first change of slope",
	fieldbook.LeastDepth:   "Least depth",
	fieldbook.AdvisedDepth: "Least depth advised",
}

// slopePlus is the 95 % half-width of n in 1:n.
func slopePlus(slope, sd *float64) string {
	if slope == nil || sd == nil || *slope <= 0 {
		return nothing
	}
	return decimal(math.Ceil(normal95**sd/(*slope**slope)*10-1e-9)/10, 1)
}

// cubicFoot and gallon (US, 231 cubic inches) in m³, exact.
const (
	cubicFoot = 0.3048 * 0.3048 * 0.3048
	gallon    = 231 * 0.0254 * 0.0254 * 0.0254
)

// volume prints m³, or cubic feet and US gallons in jobs of feet and inches, with its unit.
func (m measure) volume(v float64) string {
	if m.feet() {
		return decimal(v/cubicFoot, 0) + " ft³ (" + decimal(v/gallon, 0) + " US gal)"
	}
	return decimal(v, 2) + " m³"
}

// volumePlus is the 95 % half-width of a volume, rounded up, with its unit.
func (m measure) volumePlus(sd *float64) string {
	if sd == nil {
		return nothing
	}
	v := normal95 * *sd
	if m.feet() {
		return decimal(math.Ceil(v/cubicFoot-1e-9), 0) + " ft³"
	}
	return decimal(math.Ceil(v*100-1e-9)/100, 2) + " m³"
}

func (m measure) areaPlusSD(sd *float64) string {
	if sd == nil {
		return nothing
	}
	return m.areaPlus(normal95 * *sd)
}
