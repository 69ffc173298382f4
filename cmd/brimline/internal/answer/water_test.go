package answer_test

import (
	"strings"
	"testing"

	"brimline/cmd/brimline/internal/answer"
	"brimline/fieldbook"
	"brimline/survey"
	"brimline/unit"
)

// filled is a made-up result with levels and water.
func filled() *survey.Result {
	r := triangle()
	within := true
	r.Levels = &survey.Levels{RimHigh: at(0.004), RimLow: at(-0.006), Closure: at(0.002), Rule: "practical 3 mm",
		Loops:        []survey.LevelLoop{{Within: &within}, {Within: &within}},
		Collimations: []survey.Collimation{{Tool: "level", Value: at(0.00015), SD: at(0.00002)}},
		Surfaces:     []survey.Surface{{Name: "w1", Z: at(-0.152), SZ: at(0.001)}},
		Stations:     []survey.Station{{Line: "rim", Mark: "r1", Z: at(0), SZ: at(0), Off: 0.004}, {Line: "rim", Mark: "r2", Z: at(-0.010), SZ: at(0.001), Off: -0.006}}}
	r.Water = &survey.Water{Surface: "w1", Level: -0.152, Area: 50, AreaSD: at(0.1), Volume: 74.005, VolumeSD: at(0.4), WettedArea: 88.9, WettedSD: at(0.5),
		MeanDepth: 1.48, MeanDepthSD: at(0.004), Deepest: 2.4, DeepestSD: at(0.006), At: survey.Spot{Mark: "f9"}, Shallowest: 1, ShallowestSD: at(0.006), ShallowestAt: survey.Spot{Mark: "f1"},
		Split: survey.Split{Floor: 55, Walls: 30, Steps: 3.9}, Causes: survey.Causes{Water: 0.6, Floor: 0.3, Sampling: 0.1},
		Shortcut: survey.Shortcut{Volume: 85, Error: 10.995}, Stages: []survey.Stage{{Depth: 0.1, Area: 49.9, Volume: 69}, {Depth: 0, Area: 50, Volume: 74.005, VolumeSD: at(0.4)}},
		Steepest: &survey.Steepest{Slope: 0.5, OneIn: at(2), At: survey.Spot{X: 1, Y: 2}, Depth: 1.7}, Caution: "No statement about diving.",
		RuleSet: "ispsc 2012 residential", Edition: "2012", Rules: []survey.RuleLine{
			{What: fieldbook.ShallowSlope, Clause: "chapter 8", Figure: 1.0 / 7, Value: at(0.125), SD: at(0.001), Verdict: "meets the geometric figure as measured", Source: "recalled"},
			{What: fieldbook.FirstChange, Clause: "chapter 8", Least: true, Figure: 1.8288, Source: "recalled"}}}
	return r
}

// flat is a text without its line breaks.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// Levels and water in the trade's words, each figure with what it may be off.
func TestWhatIsSaidOfTheWater(t *testing.T) {
	got := answer.Text(filled(), unit.M, "larch.yaml")
	for _, want := range []string{
		"- The rim is out of level by 10 mm: 4 mm above its mean at r1, 6 mm below it at\n  r2.\n",
		"- 2 loops of levels; the largest misclosure is 2 mm, within the rule practical 3\n  mm.\n",
		"- The line of sight of level rises 3.0 mm in 20 m, ± 0.8 mm.\n",
		"- Water w1 stands at −0.152 m ± 2 mm.\n",
		"rim   r2    −0.010  2   −6\n",
		"Water at w1: 74.00 m³ ± 0.79 m³ (95 %)\n",
		"an error of 10 mm in its height is 0.50 m³.\n",
		"- Deepest read 2.400 m ± 12 mm at f9, shallowest 1.000 m ± 12 mm at f1;",
		"- Of its variance the height of the water 60 %, the depths read 30 %, what lies\n  between the readings 10 %.\n",
		"floor 55.00 m², walls 30.00 m², steps\n  3.90 m².\n",
		"would say 85.00 m³: 10.99\n  m³ too much.\n",
		"where it is 1.700 m deep: 1:2.0.\n",
		"  0.100  49.90 m²  69.00 m³        –\n",
		"at most 1:7.0; measured 1:8.0 ± 0.2: meets the geometric figure as measured.",
		"at least 1.829 m; the book does not tell what is there.",
		"\nNo statement about diving.\n",
	} {
		if !strings.Contains(flat(got), flat(want)) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	for _, line := range strings.Split(got, "\n") {
		if len([]rune(line)) > 80 {
			t.Errorf("a line of %d: %s", len([]rune(line)), line)
		}
	}
	feet := answer.Text(filled(), unit.FT, "larch.yaml")
	for _, want := range []string{"2613 ft³ (19550 US gal)", "too much"} {
		if !strings.Contains(feet, want) {
			t.Errorf("no %q in\n%s", want, feet)
		}
	}
	if bare := answer.Text(triangle(), unit.M, "larch.yaml"); strings.Contains(bare, "Levels") || strings.Contains(bare, "diving") {
		t.Error("water where none is read")
	}
}
