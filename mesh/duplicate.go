package mesh

import (
	"cmp"
	"slices"
)

// sameVertex notes that vertex v lies on the place of vertex kept and is not put in. The point
// with the lower number is the one that stays.
func (s *sewing) sameVertex(kept, v int32, alias []int32) {
	if s.index[v] < s.index[kept] {
		s.index[v], s.index[kept] = s.index[kept], s.index[v]
	}
	alias[s.index[v]] = s.index[kept]
}

// thin looks for points within the tolerance of each other and gives all but the lowest number
// that alias; false when there were none. Any two points so near are joined by a chain of
// edges no longer than that, for the shortest links of all points are edges of their Delaunay
// triangulation (G. Toussaint, "The relative neighbourhood graph of a finite planar set",
// Pattern Recognition 12, 1980). What is left is triangulated and thinned again.
func (s *sewing) thin(tolerance float64, alias []int32) bool {
	var pairs [][2]int32 // the higher number first
	for t := range s.cells {
		c := &s.cells[t]
		for i := range int32(3) {
			j, k := following(i)
			a, b := c.v[j&3], c.v[k&3]
			if a == outer || b == outer || s.pts[a].Dist(s.pts[b]) > tolerance {
				continue
			}
			p, q := s.index[a], s.index[b]
			pairs = append(pairs, [2]int32{max(p, q), min(p, q)})
		}
	}
	slices.SortFunc(pairs, func(a, b [2]int32) int {
		return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1]))
	})
	for _, p := range pairs {
		if alias[p[0]] == p[0] && alias[p[1]] == p[1] {
			alias[p[0]] = p[1]
		}
	}
	return len(pairs) > 0
}

// reportDuplicates follows each alias to the point that is kept and names both.
func (s *sewing) reportDuplicates(alias []int32) {
	for i := range alias {
		a := alias[i]
		if a < 0 || a == int32(i) {
			continue
		}
		for alias[a] != a {
			a = alias[a]
		}
		alias[i] = a
		s.issues = append(s.issues, Issue{
			Kind: Duplicate, Points: []int{int(a), i},
			At: s.points[i].Plan(), Gap: s.points[i].Z - s.points[a].Z,
		})
	}
}
