package draft

import (
	"math"

	"brimline/basin"
	"brimline/mesh"
	"brimline/unit"
)

// DepthsOf takes what the sheets need from a basin filled to a surface, in the steps of a style.
func DepthsOf(b *basin.Basin, water basin.Surface, s unit.Style) *Depths {
	level := water.Height
	d := &Depths{Water: water.Name, Level: level.Z, Rim: b.Outline()}
	for _, x := range b.Soundings(level) {
		d.Soundings = append(d.Soundings, Sounding(depthOf(x)))
	}
	w := b.Water(level)
	d.Held = heldOf(w)
	d.Deepest = depthOf(w.Deepest)
	for _, t := range b.Tops() {
		d.Tops = append(d.Tops, Top{t.Name, topKind(t.Part), t.Ring, level.Z - t.Height})
	}
	d.Breaks = b.BreakLines()
	feet := figures{s}.feet()
	d.Step = contourStep(w.Deepest.Depth, feet)
	for k := 1; float64(k)*d.Step < w.Deepest.Depth; k++ {
		for _, l := range b.Contours(level.Z, []float64{float64(k) * d.Step}) {
			d.Contours = append(d.Contours, Contour{l.Depth, l.Points, l.Closed})
		}
	}
	d.sections(b)
	if st, err := b.Stages(level, stageStep(w.Deepest.Depth, feet)); err == nil {
		for _, x := range st {
			d.Stages = append(d.Stages, Stage(x))
		}
	}
	if x, ok := b.Steepest(level.Z, 0, math.Inf(1)); ok {
		d.Steepest = &Slope{x.Rise, x.SD, x.Depth, x.At}
	}
	d.Bodies = d.bodies(b)
	return d
}

func depthOf(d basin.Depth) Sounding { return Sounding{d.Name, d.At, d.Depth, d.SD} }

func topKind(p basin.Part) string {
	if p == basin.Steps {
		return "step"
	}
	return "ledge"
}

func heldOf(w *basin.Water) Held {
	h := Held{
		Volume: w.Volume, VolumeSD: w.VolumeTrust.SD, Area: w.Area, AreaSD: w.AreaTrust.SD, Wetted: w.Wetted, WettedSD: w.WettedTrust.SD,
		Mean: w.Mean, MeanSD: w.MeanSD, Shallowest: w.Shallowest.Depth, Deepest: w.Deepest.Depth,
		Shortcut: w.Shortcut.Volume, ShortcutBy: w.Shortcut.Error,
	}
	for i, v := range w.VolumeTrust.Cause {
		h.Causes = append(h.Causes, Part{basin.Cause(i).String(), v})
	}
	for i, v := range w.Parts {
		h.Parts = append(h.Parts, Part{basin.Part(i).String(), v})
	}
	return h
}

// Steps of contours and of stage tables, metres and of feet: common practice, no source.
var (
	contourSteps     = []float64{0.05, 0.1, 0.2, 0.5, 1, 2}
	contourStepsFeet = []float64{0.25 * foot, 0.5 * foot, foot, 2 * foot, 5 * foot}
	stageSteps       = []float64{0.05, 0.1, 0.2, 0.5, 1}
	stageStepsFeet   = []float64{0.25 * foot, 0.5 * foot, foot, 2 * foot}
)

const foot = 0.3048 // m, exactly

// contourStep gives at most twelve contours, stageStep at most 30 rows.
func contourStep(deepest float64, feet bool) float64 {
	if feet {
		return stepOf(contourStepsFeet, deepest, 12)
	}
	return stepOf(contourSteps, deepest, 12)
}

func stageStep(deepest float64, feet bool) float64 {
	if feet {
		return stepOf(stageStepsFeet, deepest, 30)
	}
	return stepOf(stageSteps, deepest, 30)
}

// stepOf is the first of the steps of which so many at most reach over a length.
func stepOf(steps []float64, length float64, most int) float64 {
	for _, s := range steps {
		if length/s <= float64(most) {
			return s
		}
	}
	return math.Max(steps[len(steps)-1], length/float64(most))
}

// spatial turns faces of a part into a body.
func spatial(b *basin.Basin, part basin.Part, top float64) Body {
	o := Body{Name: part.String(), Paint: partPaint(part)}
	number := map[mesh.Point3]int32{}
	for _, f := range b.Faces() {
		if f.Part != part {
			continue
		}
		var t [3]int32
		for k, p := range f.At {
			p.Z = math.Min(p.Z, top)
			i, ok := number[p]
			if !ok {
				i = int32(len(o.Points))
				number[p], o.Points = i, append(o.Points, p)
			}
			t[k] = i
		}
		if t[0] != t[1] && t[1] != t[2] && t[2] != t[0] {
			o.Triangles = append(o.Triangles, t)
		}
	}
	return o
}
