package draft

import (
	"math"
)

// reading says how to read the plan: direction of view, left and right, the sizes, the caution.
func (j *job) reading(c *canvas) []string {
	out := []string{"Viewed from above; nothing is mirrored."}
	for _, o := range c.metres {
		if o.ring == 0 || len(o.runs) == 0 || o.derived {
			continue
		}
		way := "counter-clockwise"
		if o.ring < 0 {
			way = "clockwise"
		}
		name := o.name
		if o.line.Edge != "" {
			name += " (" + edgeWord(o.line.Edge) + ")"
		}
		out = append(out, "The marks of "+name+" run "+way+" from "+o.runs[0].From+".")
	}
	switch {
	case c.every > 1 && len(c.details) > 0:
		out = append(out, "Along the edge every "+ordinal(c.every)+" mark is numbered and has its error ellipse drawn; the details and the table have them all.")
	case c.every > 1:
		out = append(out, "Along the edge every "+ordinal(c.every)+" mark is numbered and has its error ellipse drawn; the table has them all.")
	}
	if p := j.book.Place; p.Shallow != "" && p.Deep != "" {
		out = append(out, "Left and right are said standing at the shallow end ("+p.Shallow+") and facing the deep end ("+p.Deep+").")
	}
	if t := c.noRoom(); t != "" {
		out = append(out, t)
	}
	found := "Sizes are as found"
	if j.book.Job.Measured != "" {
		found += " on " + j.book.Job.Measured
	}
	out = append(out, found+", without any allowance: overlaps, joints and reductions belong to the order.")
	return append(out, "The plan informs; who orders, cuts and sets out decides. It says nothing about depth, diving or barriers.")
}

// noRoom says what stands in the tables only.
func (c *canvas) noRoom() string {
	if len(c.unplaced) == 0 {
		return ""
	}
	var list []string
	seen := map[string]bool{}
	for _, u := range c.unplaced {
		if !seen[u] {
			seen[u] = true
			list = append(list, u)
		}
	}
	where := "in the tables"
	if len(c.details) > 0 {
		where = "in the details or in the tables"
	}
	return "Figures that found no room on the plan stand " + where + ": " + names(list, 10) + "."
}

// sweep prints degrees with a sign.
func sweepText(degrees *float64) string {
	if degrees == nil || math.IsNaN(*degrees) {
		return none
	}
	return plain(degrees, 1) + "°"
}

// ordinal writes the numbers that thin chooses from.
func ordinal(n int) string {
	switch n {
	case 2:
		return "second"
	case 5:
		return "fifth"
	case 10:
		return "tenth"
	}
	return itoa(n) + "th"
}
