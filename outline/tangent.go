package outline

// leans says that the joint where piece i begins is a condition: said to be tangent, and neither
// side a curve, which takes its direction from the other.
func (c *chain) leans(i int) bool {
	return c.pieces[i].joint == "tangent" && (i > 0 || c.l.Closed) && c.pieces[c.before(i)].kind != "curve" && c.pieces[i].kind != "curve"
}

// held finds a tangent joint that fixes the bulge of arc i, at its start or else at its end, and
// takes it: one condition fixes one arc.
func (c *chain) held(i int, taken []bool) bool {
	for _, j := range []int{i, (i + 1) % len(c.pieces)} {
		if c.leans(j) && !taken[j] {
			taken[j] = true
			return true
		}
	}
	return false
}
