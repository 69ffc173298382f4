package network

import (
	"math"
	"slices"
)

// Track is what a reading along or to a line sees of it: the runs that bear on it, in the order of
// the line, and where the stretch begins and ends.
type Track struct {
	Marks   []int // those of the reading, then all others that bear on it
	Runs    []TrackRun
	Corners []TrackCorner
	Whole   bool    // the whole loop: the last run goes over into the first
	Outward float64 // distance of a derived line, metres; negative inward
	Mitre   bool    // its corners are sharp
	Ring    []int   // marks of the line in order, which tell its hand; nil: an open line
}

// TrackRun is one run. At are places in Track.Marks, −1−k is Corners[k]. A loop does
// not repeat its first mark, and Last may pass its length.
type TrackRun struct {
	Kind        string // straight, arc, curve
	At          []int
	Loop        bool
	Tangent     bool
	Rise        int  // arc of two marks: which of the rises that the reading brings along, −1 none
	Water       bool // that rise bulges towards the water
	In          bool // the stretch goes along it, from First to Last
	First, Last int  // places in At
}

// TrackCorner is a corner by places in Track.Marks.
type TrackCorner struct {
	Meet  [4]int
	Round float64
}

// tracker builds a track for a reading.
type tracker struct {
	g    *builder
	o    *Obs
	l    *Line
	t    *Track
	open bool // something that it needs is not read
	rise map[int]int
	met  []int   // unreached corners on the way
	soft float64 // their variance
}

// track gives a reading its view of a line; false where a mark that it needs is not read yet. from
// and to are marks of the line, −1 for the whole loop or, open, the whole line. soft is the sd of the
// unreached corners on the way.
func (g *builder) track(o *Obs, l *Line, from, to int) (soft float64, ok bool) {
	k := &tracker{g: g, o: o, l: l, t: o.Track, rise: map[int]int{}}
	if l.Closed {
		for _, r := range l.Runs {
			for _, m := range r.Marks[:len(r.Marks)-1] {
				if m >= 0 {
					k.t.Ring = append(k.t.Ring, m)
				}
			}
		}
	}
	runs := k.split()
	if from < 0 {
		k.t.Whole = l.Closed
		for i := range runs {
			k.add(runs[i], 0, len(runs[i].Marks)-1, true)
		}
	} else if !k.stretch(runs, from, to) {
		return 0, false
	}
	return math.Sqrt(k.soft), !k.open
}

// split gives the runs of the line with a whole circle as two arcs, and a found joint that no mark
// has as the corner of two straights or, else, at the last mark of the earlier run.
func (k *tracker) split() []Run {
	var out []Run
	for _, r := range k.l.Runs {
		n := len(r.Marks)
		if r.Kind == "arc" && n > 4 && r.Marks[0] == r.Marks[n-1] {
			h := n / 2
			out = append(out, Run{"arc", r.Marks[:h+1], r.Tangent}, Run{"arc", r.Marks[h:], true})
			continue
		}
		out = append(out, r)
	}
	corners := append([]Corner(nil), k.l.Corners...)
	for i := range out {
		p, q := &out[(i+len(out)-1)%len(out)], &out[i]
		last := len(p.Marks) - 1
		if i == 0 && !k.l.Closed || p.Marks[last] == q.Marks[0] {
			continue
		}
		joint := p.Marks[last]
		if p.Kind == "straight" && q.Kind == "straight" && last > 0 && len(q.Marks) > 1 {
			corners = append(corners, Corner{Meet: [4]int{p.Marks[0], p.Marks[last], q.Marks[0], q.Marks[len(q.Marks)-1]}})
			joint = -len(corners)
			p.Marks = append(append([]int(nil), p.Marks...), joint)
		}
		q.Marks = append([]int{joint}, q.Marks...)
	}
	for _, c := range corners {
		k.t.Corners = append(k.t.Corners, TrackCorner{Round: c.Round, Meet: c.Meet})
	}
	k.corners(corners)
	return out
}

// corners keeps the whole of them for their sd.
func (k *tracker) corners(all []Corner) {
	l := *k.l
	l.Corners = all
	k.l = &l
}

// add puts one run into the track.
func (k *tracker) add(r Run, first, last int, in bool) {
	out := TrackRun{Kind: r.Kind, Tangent: r.Tangent, Rise: -1, In: in, First: first, Last: last}
	if r.bends() {
		out.Kind = "curve"
	}
	marks := r.Marks
	if loop(r) {
		out.Loop, marks = true, marks[:len(marks)-1]
	}
	for p, m := range marks {
		switch {
		case m == Unread:
			k.open = true
		case m < 0:
			out.At = append(out.At, m)
			c := &k.l.Corners[-1-m]
			if in && p >= first && p <= last && !slices.Contains(k.met, m) {
				k.met = append(k.met, m)
				k.soft += c.Sigma * c.Sigma
			}
			k.corner(-1-m, c)
		default:
			out.At = append(out.At, k.place(m))
		}
	}
	if !k.open && r.Kind == "arc" && len(marks) == 2 {
		k.risen(&out, marks)
	}
	k.t.Runs = append(k.t.Runs, out)
}

// corner brings in the marks that a corner is found from.
func (k *tracker) corner(i int, c *Corner) {
	for e, m := range c.Meet {
		if m < 0 {
			k.open = true
			return
		}
		k.t.Corners[i].Meet[e] = k.place(m)
	}
}

// place is that of a mark in the track's list, which it joins if need be.
func (k *tracker) place(m int) int {
	if p := slices.Index(k.t.Marks, m); p >= 0 {
		return p
	}
	k.t.Marks = append(k.t.Marks, m)
	return len(k.t.Marks) - 1
}

// risen gives an arc of two marks the rise that a bow of its chord reads; without one it is drawn
// straight.
func (k *tracker) risen(r *TrackRun, marks []int) {
	for i, f := range k.g.n.Free {
		if f.Kind != "bow" || !(f.Marks[0] == marks[0] && f.Marks[1] == marks[1] || f.Marks[0] == marks[1] && f.Marks[1] == marks[0]) {
			continue
		}
		if _, have := k.rise[i]; !have {
			k.rise[i] = len(k.rise)
			k.o.Extra = append(k.o.Extra, k.g.n.FreeBlock(i))
		}
		r.Rise, r.Water = k.rise[i], f.Toward == "water"
		return
	}
	r.Kind = "straight"
}
