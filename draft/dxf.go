package draft

import (
	"brimline/fieldbook"
	"brimline/plane"
	"brimline/sheet"
	"brimline/survey"
)

// The layers of a model. Every outline has one more of its own, by its name.
const (
	modelInferred   sheet.Layer = "edge inferred"
	modelSoft       sheet.Layer = "edge soft"
	modelMarks      sheet.Layer = "marks"
	modelNames      sheet.Layer = "mark names"
	modelPegs       sheet.Layer = "pegs"
	modelAxes       sheet.Layer = "centres and baseline"
	modelDimensions sheet.Layer = "dimensions"
	modelChecks     sheet.Layer = "check readings"
	modelDoubt      sheet.Layer = "readings in doubt"
	modelReadings   sheet.Layer = "readings"
	modelFindings   sheet.Layer = "findings"
	modelNotes      sheet.Layer = "notes"
	modelSpots      sheet.Layer = "marks in space"
	modelFloor      sheet.Layer = "floor points"
	modelDepths     sheet.Layer = "floor depths"
	modelBreaks     sheet.Layer = "floor breaks"
	modelContours   sheet.Layer = "floor contours"
	modelTops       sheet.Layer = "steps and ledges"
	modelWater      sheet.Layer = "water surface"
)

// modelLayers is the list of them, below the outlines.
var modelLayers = []sheet.ModelLayer{
	{Name: modelInferred, Pen: sheet.PenInferred},
	{Name: modelSoft, Pen: sheet.PenSoft},
	{Name: modelMarks, Pen: sheet.PenThin},
	{Name: modelNames, Pen: sheet.PenThin},
	{Name: modelPegs, Pen: sheet.PenThin},
	{Name: modelAxes, Pen: sheet.PenAxis, Ink: sheet.Grey},
	{Name: modelDimensions, Pen: sheet.PenThin},
	{Name: modelChecks, Pen: sheet.PenHair, Ink: sheet.Good},
	{Name: modelDoubt, Pen: sheet.PenUnder, Ink: sheet.Wrong},
	{Name: modelReadings, Pen: sheet.PenHair, Ink: sheet.Grey, Off: true},
	{Name: modelFindings, Pen: sheet.PenThin, Ink: sheet.Open},
	{Name: modelNotes, Pen: sheet.PenThin},
}

// spaceLayers are those of what has a height; they are listed where there is something on them.
var spaceLayers = []sheet.ModelLayer{
	{Name: modelSpots, Pen: sheet.PenThin},
	{Name: modelFloor, Pen: sheet.PenThin},
	{Name: modelDepths, Pen: sheet.PenThin},
	{Name: modelBreaks, Pen: sheet.PenUnder},
	{Name: modelContours, Pen: sheet.PenHair},
	{Name: modelTops, Pen: sheet.PenThin},
	{Name: modelWater, Pen: sheet.PenHair, Ink: sheet.Open},
}

// Outlines makes the drawing at true size, for files that others cut and set out from: every line of
// the result as one path with its true arcs on a layer of its own, flat at the height 0; the same lines in space, with floor
// points, breaks and contours, on layers of theirs where they have heights; marks and pegs as places; names,
// dimensions, check readings, readings in doubt, findings and notes each on theirs. Coordinates are
// those of the result, metres. Letters have their usual size on Options.Paper, or smaller where marks
// stand so close that some would have no name.
func Outlines(b *fieldbook.Book, r *survey.Result, o Options, u sheet.ModelUnit) sheet.Model {
	j := newJob(b, r, o)
	m := &modeller{job: j, model: sheet.Model{Title: j.name(), Unit: u, Scale: 50}}
	c, drawn := j.modelCanvas()
	if drawn {
		m.view, m.model.Scale = c.view, c.view.Scale
	} else {
		m.view = sheet.View{Scale: m.model.Scale}
	}
	m.outlines(c)
	m.model.Layers = append(m.model.Layers, modelLayers...)
	if drawn {
		m.places()
		m.fromPaper(c)
		m.readings()
	}
	m.inSpace(o.heights(b, r))
	m.findings()
	m.notes(c)
	return m.model
}

// modelCanvas is the plan arranged at the scale of the paper, or at the first larger one at which
// every mark has room for its name: a model has no borders.
func (j *job) modelCanvas() (*canvas, bool) {
	c, ok := j.newCanvas(planZones(j.size).plan)
	if !ok {
		return c, false
	}
	c.composeModel()
	scales := sheet.Scales(j.fig.feet())
	for i := len(scales) - 1; i >= 0 && len(c.skipped)+len(c.nameless) > 0 && scales[i] >= largestDetail; i-- {
		if s := scales[i]; s < c.view.Scale {
			box := grow(c.extent(s), modelRoom)
			c = &canvas{job: j, metres: c.metres, view: sheet.View{Name: "plan", Scale: s}}
			c.lay(box)
			c.composeModel()
		}
	}
	return c, true
}

// composeModel arranges symbols, names and dimensions as on the plan, so that they keep out of each
// other's way.
func (c *canvas) composeModel() {
	c.thin()
	c.edges()
	c.drawMarks()
	c.drawCorners()
	c.baseline()
	c.kinks()
	c.radii()
	c.dimensions()
	c.notes()
	c.beside()
	c.cornerNames()
	c.numbers()
}

// modelRoom is the paper round a model at a larger scale, in millimetres.
const modelRoom = 60.0

// modeller is a model in the making.
type modeller struct {
	*job
	model sheet.Model
	view  sheet.View
	box   plane.Box // of what is drawn so far, for the words beneath
}

// mm is a length on paper, in metres of the model.
func (m *modeller) mm(x float64) float64 { return x / m.view.Scale.PerMetre() }

func (m *modeller) add(l sheet.Layer, ink sheet.Ink, shapes ...sheet.Shape) {
	pen := sheet.PenThin
	for _, list := range [][]sheet.ModelLayer{modelLayers, spaceLayers} {
		for _, k := range list {
			if k.Name == l {
				pen = k.Pen
			}
		}
	}
	for _, s := range shapes {
		m.model.Items = append(m.model.Items, sheet.Item{Layer: l, Pen: pen, Ink: ink, Shape: s})
	}
}

// name is what the job is called, else the book.
func (j *job) name() string {
	if j.book.Job.Name != "" {
		return j.book.Job.Name
	}
	return j.book.Name
}

// outlines lays each line on its layer, and over it what nobody touched.
func (m *modeller) outlines(c *canvas) {
	m.box = plane.EmptyBox()
	for _, o := range c.metres {
		l, pen := sheet.Layer("line "+o.name), sheet.PenThin
		if o.line.Closed || o.line.Edge != "" {
			l = sheet.Layer("outline " + o.name)
			_, pen = o.stroke()
		}
		m.model.Layers = append(m.model.Layers, sheet.ModelLayer{Name: l, Pen: pen})
		m.model.Items = append(m.model.Items, sheet.Item{Layer: l, Pen: pen, Shape: sheet.Path{Path: o.path}})
		m.box = m.box.Join(o.path.Bounds())
	}
	for i, o := range c.paper {
		for _, g := range c.inferred(i) {
			m.add(modelInferred, sheet.Black, sheet.Path{Path: stretchOf(c.metres[i].path, g.span)})
		}
		for _, g := range o.soft() {
			m.add(modelSoft, sheet.Black, sheet.Path{Path: stretchOf(c.metres[i].path, g.span)})
		}
	}
}

// stretchOf is a span of a path as a path of its own; past the end of a ring it goes on from the start.
func stretchOf(p plane.Path, g span) plane.Path {
	var out plane.Path
	for i := int(g.from); float64(i) < g.to; i++ {
		s := p.Segs[i%len(p.Segs)]
		from, to := max(0, g.from-float64(i)), min(1, g.to-float64(i))
		if to-from > 1e-9 {
			out.Segs = append(out.Segs, s.Part(from, to))
		}
	}
	return out
}
