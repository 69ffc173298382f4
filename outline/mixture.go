package outline

import "math"

// moments add up a figure over models by their weights: its squares about what is drawn.
type moments struct{ drawn, squares, weight float64 }

func (m *moments) add(weight, value, sd float64) {
	d := value - m.drawn
	m.weight += weight
	m.squares += weight * (d*d + sd*sd)
}

// sd is the root of the mean square error of the drawn figure over the models, with a variance
// added.
func (m *moments) sd(more float64) float64 { return math.Sqrt(m.squares/m.weight + more) }

// mix adds to the standard deviations of length and area, which are those of the line as drawn,
// what the models differ from it by and what fair curves leave open between marks.
func (l *Line) mix(best *chain, models []model, edge []float64) {
	if len(l.Path.Segs) == 0 {
		return // all marks on one place
	}
	b, spans := best.block, l.spans(best)
	length, area := moments{drawn: l.Length}, moments{drawn: l.Area}
	length.add(1, l.Length, l.LengthSD)
	area.add(1, l.Area, l.AreaSD)
	for _, m := range models[1:] {
		c := m.scored(b, edge)
		v, sd := c.figures(c.q), c.figureSDs()
		length.add(m.weight, v[0], sd[0])
		area.add(m.weight, math.Abs(v[1]), sd[1])
		path, _ := c.path(c.q)
		for i := range spans {
			d := path.Distance(spans[i].middle)
			spans[i].open += m.weight * d * d
		}
	}
	for i := range spans {
		spans[i].open /= length.weight
	}
	moreArea, moreLength, longer := l.curves(b, models[0].spec, spans, edge)
	cornerArea, cornerLength := b.cornersOpen()
	l.LengthSD = length.sd(moreLength + cornerLength + longer*longer)
	if l.Closed {
		l.AreaReadSD, l.AreaSD = l.AreaSD, area.sd(moreArea+cornerArea)
	}
	l.judge(b, spans, edge)
	l.kept = &kept{best, edge, spans}
}

// curves adds what the fair curves of a line leave open to its spans, and gives the variances of
// area and length and by how much noise makes the line longer.
func (l *Line) curves(b *block, spec Spec, spans []span, edge []float64) (area, length, longer float64) {
	for _, r := range spec.Runs {
		if r.Kind != "curve" || len(r.Marks) < 4 {
			continue
		}
		t := newTrail(b, r, edge)
		middle, a, g := t.openSpans()
		area, length, longer = area+a, length+g, longer+t.longer(b, edge)
		for i := range spans {
			for k, sd := range middle {
				if l.Marks[spans[i].from] == t.marks[k] && l.Marks[spans[i].to] == t.marks[t.index(k+1)] {
					spans[i].open += sd * sd
				}
			}
		}
	}
	return area, length, longer
}
