package basin

import "math"

// Rim is the profile of the rim. Mean is the mean along its length; High and Low are readings, as
// they stand above it.
type Rim struct {
	Mean, MeanSD float64
	High, Low    RimPlace
	Out          float64 // from low to high
	OutSD        float64
	Stations     []RimPlace
}

// RimPlace is a height of the rim at a station of the path given: Height in the frame of the
// heights, Off above the mean, with the standard deviation of that.
type RimPlace struct {
	Name      string
	S, Height float64
	Off, SD   float64
}

// Rim is the rim as read; false where nobody read it.
func (b *Basin) Rim() (Rim, bool) {
	if len(b.levels) == 0 {
		return Rim{}, false
	}
	n := len(b.levels)
	share := make([]float64, n) // of the length
	for i := range n {
		half := b.ahead(b.levels[i].s, b.levels[(i+1)%n].s) / 2 / b.whole
		share[i] += half
		share[(i+1)%n] += half
	}
	if n == 1 {
		share[0] = 1
	}
	var r Rim
	mean := b.newSlopes(Exact(0))
	for i, l := range b.levels {
		r.Mean += share[i] * b.value(l.f)
		mean.height(l.f, share[i])
	}
	r.MeanSD = b.trust(mean).SD
	high, low := 0, 0
	for i, l := range b.levels {
		s := b.newSlopes(Exact(0))
		copy(s.inputs, mean.inputs)
		for k := range s.inputs {
			s.inputs[k] = -s.inputs[k]
		}
		s.height(l.f, 1)
		z := b.value(l.f)
		r.Stations = append(r.Stations, RimPlace{l.name, b.given(l.s), z, z - r.Mean, b.trust(s).SD})
		if z > r.Stations[high].Height {
			high = i
		}
		if z < r.Stations[low].Height {
			low = i
		}
	}
	r.High, r.Low, r.Out = r.Stations[high], r.Stations[low], r.Stations[high].Height-r.Stations[low].Height
	s := b.newSlopes(Exact(0))
	s.height(b.levels[high].f, 1)
	s.height(b.levels[low].f, -1)
	r.OutSD = b.trust(s).SD
	return r, true
}

// given is a station of the ring on the path as it was given.
func (b *Basin) given(s float64) float64 {
	if b.reversed {
		return b.whole - s
	}
	return s
}

// Brim is where water would leave first.
type Brim struct {
	Name   string // of the lip; empty for the rim
	Height float64
	SD     float64
}

// Brim is the lowest place of the wall tops: rim, lips, raised walls; +Inf where neither rim nor
// lip was read. The top over a bay's opening is the rim around the bay.
func (b *Basin) Brim() Brim {
	low := Brim{Height: math.Inf(1)}
	var where form
	for i := range b.nodes {
		n, m := &b.nodes[i], &b.nodes[(i+1)%len(b.nodes)]
		middle := b.wrap(n.s + b.ahead(n.s, m.s)/2)
		if len(b.bays) > 0 && b.opening(b.spot(middle)) >= 0 {
			continue
		}
		name := ""
		for _, x := range b.spills {
			if b.within(middle, x.from, x.to) {
				name = x.name
			}
		}
		if name == "" && len(b.levels) == 0 {
			continue
		}
		for _, d := range []*node{n, m} {
			if f := b.top(middle, d); b.value(f) < low.Height {
				low.Name, low.Height, where = name, b.value(f), f
			}
		}
	}
	s := b.newSlopes(Exact(0))
	s.height(where, 1)
	low.SD = b.trust(s).SD
	return low
}

// words name a lip in a sentence about the rim.
func (b Brim) words() string {
	if b.Name == "" {
		return ""
	}
	return ", the lip " + b.Name
}
