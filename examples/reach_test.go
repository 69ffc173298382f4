package examples_test

import (
	"strconv"

	"brimline/plane"
)

// slid moves marks along the true rim, as an eye does that has to find where an arc begins.
func (d *day) slid(sd float64, marks ...string) {
	rim := d.outline.Reverse()
	for _, m := range marks {
		seg, share, _ := rim.Place(rim.Foot(d.at[m]).Along + sd*d.noise.NormFloat64())
		d.at[m] = rim.Segs[seg].At(share)
	}
}

// unreached takes away the marks of the arc of run k, its ends as well: in their place the sides
// beside it end at a corner of this name, where they would meet. The other marks are numbered anew.
func (d *day) unreached(k int, name string) {
	n := len(d.runs)
	before, arc, after := &d.runs[(k+n-1)%n], &d.runs[k], &d.runs[(k+1)%n]
	gone := map[string]bool{}
	for _, m := range arc.Marks {
		gone[m] = true
	}
	side := func(r *truthRun) (a, b plane.Point) { return d.at[r.Marks[0]], d.at[r.Marks[len(r.Marks)-1]] }
	p, q := side(before)
	v, w := side(after)
	u := q.Sub(p)
	d.at[name] = p.Add(u.Mul(v.Sub(p).Cross(w.Sub(v)) / u.Cross(w.Sub(v))))
	before.Marks[len(before.Marks)-1], after.Marks[0], arc.Marks = name, name, []string{name}
	d.renumber(gone)
}

// renumber drops marks and closes the gaps in the numbers.
func (d *day) renumber(gone map[string]bool) {
	now := map[string]string{}
	places := map[string]plane.Point{}
	var order []string
	for _, m := range d.order {
		if !gone[m] {
			now[m] = "r" + strconv.Itoa(len(order)+1)
			order = append(order, now[m])
			places[now[m]] = d.at[m]
		}
		delete(d.at, m)
	}
	for m, p := range places {
		d.at[m] = p
	}
	d.order = order
	for i := range d.runs {
		for j, m := range d.runs[i].Marks {
			if to, ok := now[m]; ok {
				d.runs[i].Marks[j] = to
			}
		}
	}
}
