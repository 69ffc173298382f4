package outline

import "math"

// moments add up a figure over models by their weights.
type moments struct{ sum, squares float64 }

func (m *moments) add(weight, value, sd float64) {
	m.sum += weight * value
	m.squares += weight * (value*value + sd*sd)
}

// mean and standard deviation of the mixture, with a variance added: that of a mixture is the mean
// of the variances and the variance of the means.
func (m *moments) of(weight, more float64) (mean, sd float64) {
	mean = m.sum / weight
	return mean, math.Sqrt(math.Max(m.squares/weight-mean*mean, 0) + more)
}

// mix makes length and area those of all models of the line, by their weights, and adds to their
// standard deviations what the models differ by and what fair curves leave open between marks.
func (l *Line) mix(best *chain, models []model, edge []float64) {
	if len(l.Path.Segs) == 0 {
		return // all marks on one place
	}
	b, spans := best.block, l.spans(best)
	total := 1.0
	var length, area moments
	length.add(1, l.Length, l.LengthSD)
	area.add(1, l.Area, l.AreaSD)
	for _, m := range models[1:] {
		c := m.scored(b, edge)
		v, sd := c.figures(c.q), c.figureSDs()
		total += m.weight
		length.add(m.weight, v[0], sd[0])
		area.add(m.weight, math.Abs(v[1]), sd[1])
		path, _ := c.path(c.q)
		for i := range spans {
			d := path.Distance(spans[i].middle)
			spans[i].open += m.weight * d * d
		}
	}
	for i := range spans {
		spans[i].open /= total
	}
	moreArea, moreLength, longer := l.curves(b, models[0].spec, spans, edge)
	l.Length, l.LengthSD = length.of(total, moreLength)
	l.Length -= longer
	if l.Closed {
		l.Area, l.AreaSD = area.of(total, moreArea)
	}
	l.judge(b, spans, edge)
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
		area, length, longer = area+a, length+g, longer+t.longer(b)
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
