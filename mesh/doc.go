// Package mesh makes a surface of flat triangles from points with heights, along breaks, within
// a ring and around holes, and reads volumes, areas, sections, contours and slopes off it.
//
// Metres; x right, y up, z upward; triangles counter-clockwise seen from above. The tests of which
// side of a line or a circle a point is on are exact, so that no input, however near to
// degenerate, breaks the triangulation; what is wrong with the input comes back as a list of
// issues. Upright walls are not part of a surface: it has one height at each place.
//
// Sources: C. L. Lawson (1977) for flipping, M. V. Anglada (1997) for constraints, J. R. Shewchuk
// (1997) for the exact tests, N. Amenta et al. (2003) for the order of insertion; each is named in full where it is used.
package mesh
