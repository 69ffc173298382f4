package mesh

import "math"

// Water is what lies under a level plane on a surface: the prisms between both where the
// surface is lower.
type Water struct {
	Volume float64 // m³
	Plan   float64 // area of the plane over them, m²
	Wetted float64 // area of the surface under it, on the slope, m²; upright walls have no part in it
}

// Under is the water at a level (metres, the frame of the heights), exact up to rounding:
// triangles that the level cuts are cut.
func (s *Surface) Under(level float64) Water {
	var volume, plan, wetted total
	for t := range s.Triangles {
		a, b, c := s.corners(t)
		whole := area(a, b, c)
		p := prismOf(whole, [3]float64{level - a.Z, level - b.Z, level - c.Z})
		volume.add(p.volume)
		plan.add(p.plan)
		if p.plan > 0 {
			wetted.add(p.plan / whole * slopeArea(a, b, c))
		}
	}
	return Water{volume.value(), plan.value(), wetted.value()}
}

// VolumeGradient is how the volume under a level changes with the height of each point, m³/m:
// exact, 0 or negative, the volume being −Σ of it × depth. What the made points have falls to those they are made of.
func (s *Surface) VolumeGradient(level float64) []float64 {
	out := make([]float64, len(s.Points))
	for t, v := range s.Triangles {
		a, b, c := s.corners(t)
		p := prismOf(area(a, b, c), [3]float64{level - a.Z, level - b.Z, level - c.Z})
		for i, share := range p.share {
			out[v[i]] -= share
		}
	}
	for k := len(s.Made) - 1; k >= 0; k-- {
		m := s.Made[k]
		for i, from := range m.From {
			out[from] += float64(m.Weight[i] * out[m.Point])
		}
		out[m.Point] = 0
	}
	return out
}

// prism is one triangle's part: share[i] is the integral over the wet part of the function that
// is 1 at corner i and 0 at the others.
type prism struct {
	volume, plan float64
	share        [3]float64
}

// prismOf is the prism over a triangle of an area in plan, with the depths of its corners, negative where dry.
func prismOf(area float64, depth [3]float64) prism {
	wet := 0
	odd := 0 // the corner that is alone on its side
	for i, d := range depth {
		if d > 0 {
			wet++
		}
		if (d > 0) != (depth[(i+1)%3] > 0) && (d > 0) != (depth[(i+2)%3] > 0) {
			odd = i
		}
	}
	whole := prism{area * (depth[0] + depth[1] + depth[2]) / 3, area, [3]float64{area / 3, area / 3, area / 3}}
	switch wet {
	case 0:
		return prism{}
	case 1:
		return tip(area, depth, odd)
	case 2:
		dry := tip(area, depth, odd)
		whole.volume -= dry.volume
		whole.plan -= dry.plan
		for i := range whole.share {
			whole.share[i] -= dry.share[i]
		}
	}
	return whole
}

// tip is the part on corner i's side of the line of no depth; its volume has the sign of that
// corner's depth.
func tip(area float64, depth [3]float64, i int) prism {
	j, k := (i+1)%3, (i+2)%3
	toJ, toK := depth[i]/(depth[i]-depth[j]), depth[i]/(depth[i]-depth[k])
	p := prism{plan: area * toJ * toK}
	p.volume = p.plan * depth[i] / 3
	p.share[i] = p.plan * (3 - toJ - toK) / 3
	p.share[j] = p.plan * toJ / 3
	p.share[k] = p.plan * toK / 3
	return p
}

// Areas are those of the whole surface, in plan and on the slope, m².
func (s *Surface) Areas() (plan, slope float64) {
	var p, q total
	for t := range s.Triangles {
		a, b, c := s.corners(t)
		p.add(area(a, b, c))
		q.add(slopeArea(a, b, c))
	}
	return p.value(), q.value()
}

// slopeArea is the true area of a triangle, half the length of its normal.
func slopeArea(a, b, c Point3) float64 {
	ux, uy, uz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	vx, vy, vz := c.X-a.X, c.Y-a.Y, c.Z-a.Z
	nx, ny, nz := uy*vz-uz*vy, uz*vx-ux*vz, ux*vy-uy*vx
	return 0.5 * math.Sqrt(nx*nx+ny*ny+nz*nz)
}

// Wet is the share of a triangle's area that is under water, by the depths of its corners (negative
// where dry), and how that share falls to each corner: the mean over the whole triangle of the function that is
// 1 there and 0 at the others, where wet, and 0 elsewhere. Σ share × depth is the mean depth.
func Wet(depth [3]float64) (part float64, share [3]float64) {
	p := prismOf(1, depth)
	return p.plan, p.share
}
