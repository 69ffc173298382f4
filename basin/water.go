package basin

import (
	"math"

	"brimline/finding"
	"brimline/plane"
)

// Water is the pool filled to a level. Metres, m², m³.
type Water struct {
	Level       float64
	Area        float64 // of the surface
	AreaTrust   Trust
	Volume      float64
	VolumeTrust Trust
	Wetted      float64
	WettedTrust Trust
	Parts       [parts]float64 // of Wetted, in the order of Parts
	Mean        float64        // depth: volume over area
	MeanSD      float64
	Deepest     Depth
	Shallowest  Depth // of the floor readings
	Shortcut    Shortcut
}

// Depth is a depth and where.
type Depth struct {
	Depth, SD float64
	At        plane.Point
	Name      string
}

// Shortcut is the usual estimate: half of shallow and deep, times the area. Error is what it is more
// than the volume.
type Shortcut struct{ Volume, Error float64 }

// Fill is the water at a level; a level above the lowest place of rim and lips is taken there, with a
// finding.
func (b *Basin) Fill(level Height) (*Water, []finding.Finding) {
	var found []finding.Finding
	brim := b.Brim()
	if over := level.Z - brim.Height; over > 0 {
		found = append(found, finding.Finding{Code: "over-lip", Words: map[string]string{"name": brim.words()}, Figures: map[string]float64{"over": over}})
		level = Exact(brim.Height)
	}
	return b.Water(level), found
}

// Water is the water at a level, wherever that lies to the rim.
func (b *Basin) Water(level Height) *Water {
	z := level.Z
	w := &Water{Level: z}
	w.Area, w.Volume, w.Parts = b.shell.under(z)
	for _, p := range w.Parts {
		w.Wetted += p
	}
	open := b.unseen(b.floorProbes(z))
	w.VolumeTrust = b.volumeTrust(level, w.Area, open)
	w.AreaTrust = b.areaTrust(level, false)
	w.WettedTrust = b.areaTrust(level, true)
	w.Shallowest, w.Deepest = b.extremes(level)
	if w.Area > 0 {
		w.Mean = w.Volume / w.Area
		w.MeanSD = b.meanSD(level, w, open)
	}
	w.Shortcut.Volume = w.Area * (w.Shallowest.Depth + w.Deepest.Depth) / 2
	w.Shortcut.Error = w.Shortcut.Volume - w.Volume
	return w
}

// volumeTrust: the volume rises with the level by the area. open is what the floor between soundings leaves.
func (b *Basin) volumeTrust(level Height, area, open float64) Trust {
	s := b.newSlopes(level)
	b.fold(s, b.shell.volumeSlopes(level.Z))
	s.level, s.open = area, open
	return b.trust(s)
}

// areaTrust of the surface or of what is wetted.
func (b *Basin) areaTrust(level Height, wetted bool) Trust {
	s := b.newSlopes(level)
	by, byLevel := b.shell.areaSlopes(level.Z, wetted)
	b.fold(s, by)
	s.level = byLevel
	if wetted {
		s.open = b.unseen(b.footProbes(level.Z))
	}
	return b.trust(s)
}

// meanSD: of volume over area, whose errors from the outline go together.
func (b *Basin) meanSD(level Height, w *Water, open float64) float64 {
	s := b.newSlopes(level)
	by, byLevel := b.shell.areaSlopes(level.Z, false)
	for i, v := range b.shell.volumeSlopes(level.Z) {
		for k := range v {
			by[i][k] = (v[k] - w.Mean*by[i][k]) / w.Area
		}
	}
	b.fold(s, by)
	s.level = 1 - w.Mean*byLevel/w.Area
	s.open = open / (w.Area * w.Area)
	return b.trust(s).SD
}

// extremes are the least and the greatest depth of the floor, at readings.
func (b *Basin) extremes(level Height) (shallow, deep Depth) {
	low, high := -1, -1
	for _, i := range b.soundAt {
		if !b.used[i] {
			continue
		}
		if low < 0 || b.inputs[i].z < b.inputs[low].z {
			low = i
		}
		if high < 0 || b.inputs[i].z > b.inputs[high].z {
			high = i
		}
	}
	return b.depth(level, high), b.depth(level, low)
}

// depth is that of an input of the floor.
func (b *Basin) depth(level Height, i int) Depth {
	in := &b.inputs[i]
	s := b.newSlopes(level)
	s.inputs[i], s.level = -1, 1
	return Depth{level.Z - in.z, b.trust(s).SD, in.at, in.name}
}

// Surfaces are the water surfaces read, by name and height, in the order of the Spec.
func (b *Basin) Surfaces() []Surface { return b.waters }

// At is the height of the floor, or of the step or ledge over it, at a place; ok is false outside.
func (b *Basin) At(p plane.Point) (z, sd float64, part Part, ok bool) {
	spot := b.base.find(p)
	if spot.triangle < 0 || spot.at.Dist(p) > joined {
		return math.NaN(), math.NaN(), Floor, false
	}
	f := spot.form(b.base)
	s := b.newSlopes(Exact(0))
	if k := b.covering(p, b.value(f)); k >= 0 {
		s.height(b.solids[k].top, 1)
		return b.solids[k].z, b.trust(s).SD, b.solids[k].part, true
	}
	s.height(f, 1)
	s.open = b.unseen([]probe{{at: p, weight: 1, drawn: b.sampling.drawn(f)}})
	return b.value(f), b.trust(s).SD, Floor, true
}
