package draft

import (
	"math"
	"sort"

	"brimline/basin"
	"brimline/fieldbook"
	"brimline/survey"
	"brimline/unit"
)

// HeightsOf takes the heights of a result: levels where any are read, depths where a floor is and a water
// surface over it.
func HeightsOf(b *fieldbook.Book, r *survey.Result) Heights {
	var h Heights
	if r.Levels != nil {
		h.Levels = levelsOf(r)
	}
	if r.Basin == nil || r.Water == nil {
		return h
	}
	for _, s := range r.Basin.Surfaces() {
		if s.Name == r.Water.Surface {
			h.Depths = DepthsOf(r.Basin, s, unit.StyleFor(b.Units.Length))
			h.Depths.EdgeProfiles = profilesOf(b)
			h.Depths.Compared = comparedOf(r.Water)
		}
	}
	return h
}

// heights are those given, else those of the result.
func (o Options) heights(b *fieldbook.Book, r *survey.Result) Heights {
	if o.Heights != (Heights{}) {
		return o.Heights
	}
	return HeightsOf(b, r)
}

func levelsOf(r *survey.Result) *Levels {
	l := r.Levels
	v := &Levels{Rule: l.Rule, Source: l.RuleSource, Datum: datumOf(r)}
	for _, s := range l.Surfaces {
		if s.Z != nil {
			v.Waters = append(v.Waters, Water{s.Name, *s.Z, s.SZ})
		}
	}
	if n := len(v.Waters); n > 0 {
		v.Latest = v.Waters[n-1].Name
	}
	if r.Water != nil {
		v.Latest = r.Water.Surface
	}
	for _, c := range l.Collimations {
		if c.Value != nil {
			v.Sightings = append(v.Sightings, Sighting{c.Tool, *c.Value, c.SD})
		}
	}
	for _, x := range l.Loops {
		v.Loops = append(v.Loops, Loop{x.Marks, x.Setups, x.Length, x.Misclosure, x.Limit, x.Within})
	}
	for _, name := range ordered(r.LineOrder, r.Lines) {
		if p, ok := profileOf(r, v, name); ok {
			v.Profiles = append(v.Profiles, p)
		}
	}
	return v
}

// datumOf is the first mark whose height is without doubt: what the others are counted from.
func datumOf(r *survey.Result) string {
	for _, name := range ordered(r.MarkOrder, r.Marks) {
		if m := r.Marks[name]; m.Z != nil && m.SZ != nil && *m.SZ == 0 {
			return name
		}
	}
	return ""
}

// profileOf is the profile of a line that has a place and heights.
func profileOf(r *survey.Result, v *Levels, name string) (Profile, bool) {
	line := r.Lines[name]
	path := pathOf(line)
	if len(path.Segs) == 0 {
		return Profile{}, false
	}
	p := Profile{Line: name, Edge: line.Edge, Closed: line.Closed, Length: path.Length()}
	j := &job{result: r}
	for _, s := range r.Levels.Stations {
		q, ok := j.place(s.Mark)
		if s.Line != name || s.Z == nil || !ok {
			continue
		}
		at := Station{Mark: s.Mark, Along: path.Foot(q).Along, Z: *s.Z, Off: s.Off, SD: s.SZ}
		for _, w := range v.Waters {
			if w.Name == v.Latest {
				up := *s.Z - w.Z
				at.Freeboard = &up
			}
		}
		if p.Closed && p.Length-at.Along < seam {
			at.Along = 0
		}
		p.Stations = append(p.Stations, at)
	}
	sort.SliceStable(p.Stations, func(a, b int) bool { return p.Stations[a].Along < p.Stations[b].Along })
	return p, len(p.Stations) > 0
}

// seam is how near to the end of a ring a mark counts as at its start (metres).
const seam = 1e-4

// profilesOf are the shapes of the edge as read, by mark in book order: each reading goes on from the edge that
// an earlier one at its mark came to, else from the first.
func profilesOf(b *fieldbook.Book) []EdgeProfile {
	var out []EdgeProfile
	for i := range b.Readings {
		r := &b.Readings[i]
		if r.Kind != "profile" || r.Struck || len(r.Marks) == 0 {
			continue
		}
		k := -1
		for n := range out {
			if out[n].Mark == r.Marks[0] {
				k = n
			}
		}
		if k < 0 {
			out, k = append(out, EdgeProfile{Mark: r.Marks[0], Points: []EdgePoint{{Edge: r.From}}}), len(out)
		}
		out[k].add(r.Reading)
	}
	return out
}

// add adds where a reading comes to, unless it starts at an edge that the profile has not.
func (e *EdgeProfile) add(r fieldbook.Reading) {
	for _, from := range e.Points {
		if from.Edge != r.From {
			continue
		}
		to := EdgePoint{Edge: r.To, Outward: math.NaN(), Down: math.NaN()}
		for _, v := range r.Values {
			switch v.Part {
			case "outward":
				to.Outward = from.Outward + v.Metres
			case "down":
				to.Down = from.Down + v.Metres
			}
		}
		e.Points = append(e.Points, to)
		return
	}
}

// comparedOf are the figures beside those of the rule set that the book names.
func comparedOf(w *survey.Water) []Compared {
	var out []Compared
	for _, x := range w.Rules {
		c := Compared{Set: w.Edition, Clause: x.Clause, Figure: ruleWord(x.What), Source: x.Source, Limit: x.Figure, Verdict: x.Verdict,
			Slope: x.What == fieldbook.ShallowSlope || x.What == fieldbook.DeepSlope}
		if x.Value == nil {
			continue
		}
		if c.Value = *x.Value; x.SD != nil {
			c.SD = *x.SD
		}
		if c.Verdict == "" {
			c.Verdict = string(basin.Undecided)
		}
		out = append(out, c)
	}
	return out
}

// ruleWord says in words what a limit speaks of.
func ruleWord(what string) string {
	switch what {
	case fieldbook.ShallowSlope:
		return "steepest floor of the shallow part"
	case fieldbook.DeepSlope:
		return "steepest floor of the deep part"
	case fieldbook.FirstChange:
		return "from the shallow end wall to the first change of slope"
	case fieldbook.LeastDepth:
		return "least depth"
	case fieldbook.AdvisedDepth:
		return "least depth, beside the depth advised"
	}
	return what
}
