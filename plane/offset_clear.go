package plane

// clear says quickly that a straight of the path covers nothing of the rest of an arc about a corner;
// false says nothing. Discs of the arc's own radius about the places of a straight cover one interval
// of the whole circle, round the direction of the place nearest to its centre: where neither end of
// the arc is covered and that direction lies beside it, nothing between is.
func (r *rest) clear(other *side, d float64) bool {
	if r.of >= 0 || len(r.left) != 1 || r.Bulge <= 0 || r.Bulge > 1 || !other.straight {
		return false
	}
	a, b := r.ends[0], r.ends[1]
	if deep := (d - hairline) * (d - hairline); other.distance2(a) < deep || other.distance2(b) < deep {
		return false
	}
	near := other.foot(r.about).Sub(r.about)
	if near.Dot(near) < least*least { // the straight begins or ends at the corner
		near = other.A.Add(other.B).Sub(r.about).Sub(r.about)
	}
	return near.Dot(near) >= 4*d*d || a.Sub(r.about).Cross(near) <= 0 || near.Cross(b.Sub(r.about)) <= 0
}
