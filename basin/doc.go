// Package basin makes the body of a pool out of its outline, the heights read around and in it,
// and what stands in it: the rim's profile, a floor along breaks, pad, toe and wall foot, walls that
// lean as read, coves, steps and ledges, raised walls and the lips of spills. Of it come water at any
// level, a stage table, sections, contours and slopes, each with the trust that the readings and
// their spacing give it.
//
// In goes a Spec: plain numbers with the covariance of the heights, and a function that answers for
// the outline. Nothing here reads a field book. Metres and radians; x right, y up, z upward; depths
// positive downward; rings counter-clockwise. A station is a length along the rim from the start of
// its path.
//
// The body is a shell of flat triangles with their normals into the water, so that an overhanging
// wall counts with the right sign (shell). Every corner of it hangs linearly on readings (form), on
// the place of the rim and on the lean of the wall; slopes of a figure by the corners become slopes
// by the readings (trust). What lies between the soundings is a residual surface whose size and
// reach come from the soundings' own second differences (field, spacing).
//
// Beyond the outermost sounding the floor keeps its depth to the wall; walls are plumb unless read.
package basin
