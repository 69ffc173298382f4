package survey

import (
	"math"

	"brimline/outline"
	"brimline/plane"
)

// fitted lists the lines in the book's frame, in the book's order.
func (g *gather) fitted(r *Result) {
	own := map[string]*outline.Line{}
	for _, l := range g.lines {
		own[l.Name] = l
	}
	for _, l := range g.book.Lines {
		r.LineOrder = append(r.LineOrder, l.Name)
		if d := g.derived[l.Name]; d != nil {
			r.Lines[l.Name] = g.drawnBeside(d)
		} else {
			r.Lines[l.Name] = g.drawn(own[l.Name])
		}
	}
}

func emptyLine() *Line {
	return &Line{Gaps: []Gap{}, Runs: []LineRun{}, Vertices: []Vertex{}, Corners: []Corner{}}
}

// drawn is a line with runs of its own.
func (g *gather) drawn(l *outline.Line) *Line {
	out := emptyLine()
	out.Closed, out.Edge, out.Waits = l.Closed, l.Edge, l.Waits
	if len(l.Waits) > 0 || !g.solved() {
		return out
	}
	out.Length, out.LengthSD = some(l.Length), some(g.factor*l.LengthSD)
	if l.Closed {
		out.Area, out.AreaSD = some(l.Area), some(g.factor*l.AreaSD)
	}
	out.Inferred = some(l.Inferred)
	for _, gap := range l.Gaps {
		out.Gaps = append(out.Gaps, Gap{gap.From, gap.To, gap.Length, g.factor * gap.SD})
	}
	for _, c := range l.Corners {
		at := g.place.Apply(c.At)
		out.Corners = append(out.Corners, Corner{c.Name, at.X, at.Y, g.factor * c.SD, c.Radius})
	}
	out.Family = g.family(l.Family)
	g.path(out, l.Path, l.Runs)
	return out
}

// drawnBeside is a derived line: gaps, corners and what nobody touched stand at its parent.
func (g *gather) drawnBeside(d *derived) *Line {
	if root, ok := g.book.Parent(d.book.Name); ok && len(d.path.Segs) == 0 {
		for _, l := range g.lines {
			if l.Name == root.Root.Name {
				d.line.Waits = l.Waits
			}
		}
	}
	if d.line.Length != nil {
		d.line.LengthSD = some(g.factor * d.lengthSD)
	}
	if d.line.Area != nil {
		d.line.AreaSD = some(g.factor * d.areaSD)
	}
	g.path(d.line, d.path, d.runs)
	return d.line
}

// path fills runs and vertices.
func (g *gather) path(out *Line, path plane.Path, runs []outline.Run) {
	for _, run := range runs {
		out.Runs = append(out.Runs, g.run(run))
	}
	path = path.Move(g.place)
	for _, s := range path.Segs {
		out.Vertices = append(out.Vertices, Vertex{s.A.X, s.A.Y, s.Bulge})
	}
	if n := len(path.Segs); !out.Closed && n > 0 {
		out.Vertices = append(out.Vertices, Vertex{path.Segs[n-1].B.X, path.Segs[n-1].B.Y, 0})
	}
}

const degree = 180 / math.Pi

func (g *gather) run(in outline.Run) LineRun {
	r := LineRun{Kind: in.Kind, From: in.From, To: in.To, Length: in.Length, Joint: in.Joint, Pieces: in.Pieces}
	if sd := some(g.factor * in.LengthSD); sd != nil {
		r.LengthSD = *sd
	}
	if !math.IsNaN(in.Turn) {
		r.Turn = some(in.Turn * degree)
	}
	switch in.Kind {
	case "straight":
		b := math.Mod((in.Bearing-g.place.Angle())*degree+720, 360)
		r.Bearing, r.BearingSD = some(b), some(g.factor*in.BearingSD*degree)
	case "arc":
		r.Radius, r.RadiusSD = some(in.Radius), some(g.factor*in.RadiusSD)
		if c := g.place.Apply(in.Centre); r.Radius != nil && c.Finite() {
			r.Centre = &[2]float64{c.X, c.Y}
		}
		r.Sweep, r.SweepSD = some(in.Sweep*degree), some(g.factor*in.SweepSD*degree)
		r.Sagitta, r.SagittaSD = some(in.Sagitta), some(g.factor*in.SagittaSD)
	}
	return r
}

// family says what a line is in a sentence, with its sizes.
func (g *gather) family(f *outline.Family) *Family {
	if f == nil {
		return nil
	}
	out := &Family{Kind: f.Kind, Text: f.Text(g.show()), Figures: map[string]float64{}}
	for _, x := range f.Figures {
		v := x.Value
		if x.Name == "skew" || x.Name == "parallel" {
			v *= degree
		}
		out.Figures[x.Name] = v
	}
	return out
}
