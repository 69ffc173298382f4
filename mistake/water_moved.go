package mistake

import (
	"math"
	"time"

	"brimline/adjust"
	"brimline/network"
)

// waterRange is by how much a surface may have risen or fallen at most, metres: common practice, no
// source.
const waterRange = 0.2

// watersMoved weighs, for each water surface and each place in the order of its readings, that it stood
// higher or lower from there on.
func (f *finder) watersMoved(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	var all []*hypothesis
	for w := range f.s.Net.Free {
		if f.s.Net.Free[w].Kind != "water" {
			continue
		}
		list := f.underWater(sp, w)
		if len(list) < 4 {
			continue
		}
		t := newTail(sp, 1)
		when := f.spells(list)
		for k := len(list) - 1; k >= 2; k-- {
			t.add(list[k], []float64{f.perRise(list[k]) / sp.SD[list[k]]})
			e, s := t.one()
			if len(t.part) < 2 || math.IsInf(s, 1) || math.Abs(e) > waterRange || when[k] == 0 {
				continue
			}
			half, prior := e*e/(2*s*s), math.Log(odds(f.book, "water-moved")*when[k])
			if score := half + prior + narrowed(s*math.Sqrt(2*math.Pi)/(2*waterRange)); score > 0 {
				h := f.rose(t, w, e)
				h.score, h.half, h.ln = score, half, score-half
				all = append(all, h)
			}
		}
	}
	return f.settleBest(sp, all, taken)
}

// underWater lists the parts that were read against a surface, in the order read.
func (f *finder) underWater(sp *adjust.Space, w int) []int {
	var out []int
	block := f.s.Net.FreeBlock(w)
	for i := range f.s.Net.Obs {
		o := &f.s.Net.Obs[i]
		if len(o.Extra) > 1 && o.Extra[1] == block && f.free(sp, f.s.First[i]) {
			out = append(out, f.s.First[i])
		}
	}
	return out
}

// perRise is the change of a reading for each metre that its surface rises: a freeboard falls, a depth
// grows.
func (f *finder) perRise(p int) float64 {
	if _, board := f.s.Net.Obs[f.s.ObsOf(p)].Kind.(network.Water); board {
		return -1
	}
	return 1
}

// spells are the odds that the surface moved just before each reading of a list, the first apart: as
// the times between them where all have one, else alike.
func (f *finder) spells(list []int) []float64 {
	out := make([]float64, len(list))
	timed := f.book != nil
	at := func(k int) time.Time { return f.book.Readings[f.s.Net.Obs[f.s.ObsOf(list[k])].Reading].Time }
	for k := range list {
		timed = timed && !at(k).IsZero()
	}
	sum := 0.0
	for k := 1; k < len(list); k++ {
		if out[k] = 1; timed {
			out[k] = math.Max(at(k).Sub(at(k-1)).Seconds(), 0)
		}
		sum += out[k]
	}
	for k := range out {
		if sum > 0 {
			out[k] /= sum
		}
	}
	return out
}

// rose is the hypothesis that the surface stood e higher for the readings of the tail; they are brought
// back to where it stood before. Other is the surface's place in Network.Free.
func (f *finder) rose(t *tail, w int, e float64) *hypothesis {
	n := len(t.part)
	parts, values := make([]int, n), make([]float64, n)
	for k, p := range t.part {
		parts[n-1-k], values[n-1-k] = p, f.value(p)-e*f.perRise(p)
	}
	h := f.named("water-moved", parts, values)
	h.Size, h.Other = e, w
	return h
}

// onWater says that a reading was taken against a water surface.
func (f *finder) onWater(i int) bool {
	o := &f.s.Net.Obs[i]
	if !o.Upright || len(o.Extra) < 2 {
		return false
	}
	w := int(o.Extra[1] - f.s.Net.FreeBlock(0))
	return f.s.Net.Free[w].Kind == "water"
}
