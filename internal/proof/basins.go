package main

import (
	"fmt"
	"math"

	"brimline/basin"
	"brimline/internal/simulate"
)

// basinTally counts over basins of one kind.
type basinTally struct {
	tried, built               int
	volume, area, wetted       int
	places, heights            int
	sds, share, sampling, cuts []float64 // of the volume: sd in per cent, sampling in it, error of the shortcut
	missed                     string
}

// basins measures basins of every kind, each with 12 to 60 soundings: do volume, wetted area and
// the heights of the floor lie within 1.96 standard deviations of the truth, which a fine grid gives?
func basins(c config) *report {
	r := &report{}
	var all basinTally
	for i, kind := range simulate.BasinKinds {
		var t basinTally
		for k, one := range pools(c.n, func(k int) basinTally { return lookInto(c.kind(i)+uint64(k), kind) }) {
			t.add(one)
			if one.missed != "" {
				r.miss(c, "%s seed %d: %s", kind, c.kind(i)+uint64(k), one.missed)
			}
		}
		all.add(t)
		t.tell(r, kind)
	}
	all.tell(r, "all")
	return r
}

func (t basinTally) tell(r *report, name string) {
	r.atLeast(name, "built", t.built, t.tried, 100)
	r.share(name, "volumes in 1.96 sd", t.volume, t.tried, 93, 97)
	r.share(name, "wetted areas in 1.96 sd", t.wetted, t.tried, 93, 97)
	r.share(name, "heights of the floor in 1.96 sd", t.heights, t.places, 93, 97)
	r.plain(name, "water areas in 1.96 sd", t.area, t.tried)
	r.figure(name, "median sd of the volume", 100*middle(t.sds), "%", math.NaN(), math.NaN())
	r.figure(name, "sampling in its variance, median", 100*middle(t.sampling), "%", math.NaN(), math.NaN())
	r.figure(name, "error of the volume, median", 100*middle(t.share), "%", math.NaN(), math.NaN())
	r.figure(name, "error of shallow and deep, median", 100*middle(t.cuts), "%", math.NaN(), math.NaN())
}

func (t *basinTally) add(o basinTally) {
	t.tried, t.built = t.tried+o.tried, t.built+o.built
	t.volume, t.area, t.wetted = t.volume+o.volume, t.area+o.area, t.wetted+o.wetted
	t.places, t.heights = t.places+o.places, t.heights+o.heights
	t.sds, t.share = append(t.sds, o.sds...), append(t.share, o.share...)
	t.sampling, t.cuts = append(t.sampling, o.sampling...), append(t.cuts, o.cuts...)
}

// lookInto judges one basin.
func lookInto(seed uint64, kind string) basinTally {
	s := simulate.DrawBasin(seed, kind)
	t := basinTally{tried: 1, places: len(s.True.Places)}
	spec, level := basinSpec(s)
	b, _, err := basin.New(spec)
	if b == nil {
		t.missed = fmt.Sprint("not built: ", err)
		return t
	}
	t.built = 1
	w, _ := b.Fill(level)
	dv, dw := w.Volume-s.True.Volume, w.Wetted-s.True.Wetted
	t.volume, t.area, t.wetted = within(dv, w.VolumeTrust.SD), within(w.Area-s.True.Area, w.AreaTrust.SD), within(dw, w.WettedTrust.SD)
	for i, p := range s.True.Places {
		z, sd, _, ok := b.At(p)
		if ok {
			t.heights += within(z-s.True.Heights[i], sd)
		}
	}
	t.sds, t.share = []float64{w.VolumeTrust.SD / w.Volume}, []float64{math.Abs(dv) / s.True.Volume}
	t.sampling = []float64{w.VolumeTrust.Cause[basin.Spacing] / math.Pow(w.VolumeTrust.SD, 2)}
	t.cuts = []float64{math.Abs(w.Shortcut.Volume-s.True.Volume) / s.True.Volume}
	if t.volume+t.wetted < 2 {
		t.missed = fmt.Sprintf("%d soundings: volume off by %.3f (sd %.3f), wetted by %.3f (sd %.3f)", len(s.Floor), dv, w.VolumeTrust.SD, dw, w.WettedTrust.SD)
	}
	return t
}

// basinRows collects heights and what they have of their own.
type basinRows struct {
	own   []float64
	below []bool
}

// basinSpec is the basin as it was read; heights below the water share the error of its surface, which is row 0.
func basinSpec(s *simulate.Basin) (basin.Spec, basin.Height) {
	rows := &basinRows{}
	water := rows.height(s.Water)
	spec := basin.Spec{Rim: s.Rim, Breaks: s.Breaks, Pad: s.Pad, Waters: []basin.Surface{{Name: "w1", Height: water}}}
	for _, l := range s.Levels {
		spec.Levels = append(spec.Levels, basin.Level{S: l.S, Height: rows.height(l.Height)})
	}
	for i, p := range s.Floor {
		spec.Floor = append(spec.Floor, basin.Sounding{Name: fmt.Sprint("f", i+1), At: p.At, Height: rows.height(p.Height), Place: p.Place})
	}
	for _, f := range s.Feet {
		spec.Walls = append(spec.Walls, basin.Foot{S: f.S, Height: rows.height(f.Height)})
	}
	for _, f := range s.Faces {
		p := basin.Profile{S: f.S}
		for i := range f.Down {
			p.Points = append(p.Points, basin.Out{Down: f.Down[i], Outward: f.Outward[i], SD: f.SD[i]})
		}
		spec.Profiles = append(spec.Profiles, p)
	}
	if s.Cove > 0 {
		spec.Coves = []basin.Cove{{Size: s.Cove, Round: s.Round}}
	}
	steps := basin.Step{Name: "entry"}
	for _, t := range s.Treads {
		steps.Treads = append(steps.Treads, basin.Tread{Ring: t.Ring, Height: rows.height(t.Height)})
	}
	if len(steps.Treads) > 0 {
		spec.Steps = []basin.Step{steps}
	}
	for _, t := range s.Ledges {
		spec.Ledges = append(spec.Ledges, basin.Ledge{Name: "bench", Kind: "bench", Ring: t.Ring, Height: rows.height(t.Height)})
	}
	spec.Cov = rows.cov()
	spec.Outline = func(pushes []basin.Push) float64 { return pushed(s.Modes, pushes) }
	if s.Exact != nil {
		return spec, basin.Exact(*s.Exact)
	}
	return spec, water
}

func (r *basinRows) height(h simulate.BasinHeight) basin.Height {
	r.own, r.below = append(r.own, h.Own), append(r.below, h.Below)
	return basin.Height{Z: h.Z, Index: len(r.own) - 1}
}

func (r *basinRows) cov() []float64 {
	n := len(r.own)
	out := make([]float64, n*n)
	for i := range n {
		for j := range n {
			if r.below[i] && r.below[j] {
				out[i*n+j] = simulate.BasinWater * simulate.BasinWater
			}
		}
		out[i*n+i] += r.own[i] * r.own[i]
	}
	return out
}

// pushed is the variance that the modes of the rim give a figure.
func pushed(modes []simulate.RimMode, pushes []basin.Push) float64 {
	sum := 0.0
	for _, m := range modes {
		by := 0.0
		for _, p := range pushes {
			by += p.By.Dot(m.Move(p.S))
		}
		sum += m.SD * m.SD * by * by
	}
	return sum
}
