package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// inSpace adds what has a height, each kind on its layer: lines as courses, points with their height.
func (m *modeller) inSpace(h Heights) {
	start := len(m.model.Items)
	if h.Levels != nil {
		m.linesInSpace(h.Levels)
	}
	if h.Depths != nil {
		m.floor(h.Depths)
	}
	for _, l := range spaceLayers {
		for _, it := range m.model.Items[start:] {
			if it.Layer == l.Name {
				m.model.Layers = append(m.model.Layers, l)
				break
			}
		}
	}
}

// linesInSpace are the lines whose marks have heights, on a layer each, and those marks.
func (m *modeller) linesInSpace(v *Levels) {
	for _, p := range v.Profiles {
		line := m.result.Lines[p.Line]
		if line == nil || len(p.Stations) == 0 {
			continue
		}
		path := pathOf(line)
		at, z := p.inSpace(path)
		if len(at) < 2 {
			continue
		}
		l := sheet.Layer("outline " + p.Line + " in space")
		m.model.Layers = append(m.model.Layers, sheet.ModelLayer{Name: l, Pen: sheet.PenThin})
		m.model.Items = append(m.model.Items, sheet.Item{Layer: l, Pen: sheet.PenThin, Shape: sheet.Course{At: at, Z: z, Closed: path.Closed}})
		for _, s := range p.Stations {
			if q, ok := m.place(s.Mark); ok {
				m.add(modelSpots, sheet.Black, sheet.Spot{At: q, Z: s.Z})
			}
		}
	}
}

// floor are the depths read with their figures, breaks, contours, steps and ledges, and the water.
func (m *modeller) floor(d *Depths) {
	var f field
	f.area = plane.Box{Min: plane.Point{X: -1e6, Y: -1e6}, Max: plane.Point{X: 1e6, Y: 1e6}}
	for _, s := range d.Soundings {
		m.add(modelFloor, sheet.Black, sheet.Spot{At: s.At, Z: d.Level - s.Depth})
	}
	for _, s := range d.Soundings {
		m.depthFigure(&f, s)
	}
	for _, line := range d.Breaks {
		c := sheet.Course{}
		for _, q := range line {
			c.At, c.Z = append(c.At, q.Plan()), append(c.Z, q.Z)
		}
		m.course(modelBreaks, c)
	}
	for _, l := range d.Contours {
		m.course(modelContours, levelCourse(l.Points, d.Level-l.Depth, l.Closed))
	}
	for _, t := range d.Tops {
		m.course(modelTops, levelCourse(t.Ring, d.Level-t.Depth, true))
	}
	m.course(modelWater, levelCourse(d.Rim.Flatten(0.001), d.Level, true))
}

func (m *modeller) course(l sheet.Layer, c sheet.Course) {
	if len(c.At) > 1 {
		m.add(l, sheet.Black, c)
	}
}

func levelCourse(at []plane.Point, z float64, closed bool) sheet.Course {
	c := sheet.Course{At: at, Closed: closed}
	for range at {
		c.Z = append(c.Z, z)
	}
	return c
}

// depthFigure writes a depth beside its point where no other stands. It lies flat, as all letters of a
// model; the point beside it has the height.
func (m *modeller) depthFigure(f *field, s Sounding) {
	at := m.view.Point(s.At)
	t := sheet.Text{S: m.fig.length(s.Depth), Height: smallHeight, Anchor: sheet.MidCentre}
	var list []candidate
	for _, d := range []float64{0, 1, 2.5, 4.5, 7, 10, 14, 19, 25} {
		for _, turn := range round() {
			list = append(list, numberCandidate(modelDepths, t, at, plane.Point{X: 1}.Turn(turn), 1.1+d, d+0.3*abs(turn)))
		}
	}
	best, ok := f.best(list, 0, forbidden)
	if !ok {
		return
	}
	f.keep(best, 0, crossThin)
	for _, it := range best.draw() {
		m.add(modelDepths, it.Ink, m.back(it.Shape))
	}
}
