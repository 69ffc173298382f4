package survey

import (
	"math"

	"brimline/outline"
	"brimline/plane"
)

// drawnOn joins straights that run on in one direction, as those to a sharp corner do; of tells where
// each comes from, −1 from none.
func drawnOn(p plane.Path, of []int) (plane.Path, []int) {
	on := func(a, b plane.Segment) bool {
		return a.Straight() && b.Straight() && math.Abs(plane.Between(a.Tangent(1), b.Tangent(0))) < 1e-9
	}
	out := plane.Path{Closed: p.Closed}
	var from []int
	for i, s := range p.Segs {
		if n := len(out.Segs); n > 0 && on(out.Segs[n-1], s) && (from[n-1] < 0 || of[i] < 0) {
			out.Segs[n-1].B, from[n-1] = s.B, max(from[n-1], of[i])
			continue
		}
		out.Segs, from = append(out.Segs, s), append(from, of[i])
	}
	n := len(out.Segs)
	if p.Closed && n > 3 && on(out.Segs[n-1], out.Segs[0]) && (from[n-1] < 0 || from[0] < 0) {
		out.Segs[0].A, from[0] = out.Segs[n-1].A, max(from[0], from[n-1])
		out.Segs, from = out.Segs[:n-1], from[:n-1]
	}
	return out, from
}

// vanished names the runs of which a piece has nothing beside it, by their first and last marks.
func vanished(gone []int, runs []outline.Run) []string {
	var out []string
	for _, r := range runs {
		for _, k := range gone {
			if k >= r.First && k < r.First+r.Pieces {
				out = append(out, r.From+"–"+r.To)
				break
			}
		}
	}
	return out
}

// runsBeside gives the stretches of a parallel that run beside one run each; round a corner an arc
// between two runs stands by itself, from the mark at the corner to the same.
func runsBeside(p plane.Path, of []int, runs []outline.Run, sigma float64) []outline.Run {
	at := func(seg int) int {
		for i, r := range runs {
			if of[seg] >= r.First && of[seg] < r.First+r.Pieces {
				return i
			}
		}
		return -1
	}
	var out []outline.Run
	last, inside := -2, false
	for k := range p.Segs {
		i := at(k)
		if inside && i == last && i >= 0 && (runs[i].Kind == "curve" || runs[i].Kind == "soft") {
			out[len(out)-1].Pieces++
			out[len(out)-1].Length += p.Segs[k].Length()
			continue
		}
		out = append(out, besides(p.Segs[k], i, runs, out, sigma))
		out[len(out)-1].First = k
		last, inside = i, true
	}
	turns(p, out)
	return out
}

// besides is the run of one segment beside run i, −1 round a corner, at a distance known to sigma.
func besides(s plane.Segment, i int, runs, before []outline.Run, sigma float64) outline.Run {
	r := outline.Run{Kind: "arc"}
	if i >= 0 {
		r = runs[i]
	} else if n := len(before); n > 0 {
		r.From, r.To = before[n-1].To, before[n-1].To
	}
	r.Pieces, r.Joint, r.Turn, r.Length = 1, "", math.NaN(), s.Length()
	switch r.Kind {
	case "straight":
		r.Bearing = plane.Bearing(s.B.Sub(s.A))
	case "arc":
		r.Radius, r.Centre, r.Sweep, r.Sagitta = math.Abs(s.Radius()), s.Centre(), s.Sweep(), math.Abs(s.Sagitta())
		r.RadiusSD, r.LengthSD = math.Hypot(r.RadiusSD, sigma), math.Hypot(r.LengthSD, s.Sweep()*sigma)
	}
	return r
}

// turns fills the turn at the start of every run against the run before.
func turns(p plane.Path, runs []outline.Run) {
	n := len(p.Segs)
	for i := range runs {
		if k := runs[i].First; k > 0 || p.Closed {
			runs[i].Turn = plane.Between(p.Segs[(k+n-1)%n].Tangent(1), p.Segs[k].Tangent(0))
		}
	}
}
