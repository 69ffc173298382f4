package outline

import "slices"

// sliding frees the joints that are said to be by eye along the edge from their marks, which then
// hold the edge across and the joint only within its play. Beside a fair curve, and at the ends of an
// arc whose rise was read between them, a joint stays at its mark.
func (c *chain) sliding() {
	c.l.Runs = slices.Clone(c.l.Runs)
	for i := range c.l.Runs {
		q := &c.l.Runs[i]
		if q.play == 0 || q.loose != atMark || i == 0 && !c.l.Closed || q.Marks[0] >= len(c.s.Net.Marks) {
			continue
		}
		if p := &c.l.Runs[(i+len(c.l.Runs)-1)%len(c.l.Runs)]; !c.fast(p) && !c.fast(q) {
			q.loose = nearMark
		}
	}
}

// fast says that the ends of a run stay at their marks.
func (c *chain) fast(r *SpecRun) bool {
	last := len(r.Marks) - 1
	return r.Kind == "curve" || r.Kind == "arc" && last == 1 && c.bow(r.Marks[0], r.Marks[last]) >= 0
}
