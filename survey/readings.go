package survey

import (
	"math"
	"sort"

	"brimline/fieldbook"
	"brimline/finding"
	"brimline/network"
)

// readings lists every reading with what the solution says of it, in book order.
func (g *gather) readings(r *Result) {
	defer g.idle()
	defer func() { g.noFit(r.Readings) }()
	of := make([][]int, len(g.book.Readings))
	for i := range g.net.Obs {
		of[g.net.Obs[i].Reading] = append(of[g.net.Obs[i].Reading], i)
	}
	for i := range g.book.Readings {
		t := &g.book.Readings[i]
		out := Reading{N: t.N, ID: string(t.ID), Kind: t.Kind, Marks: t.Marks, Line: t.Line, Until: t.Until, Setup: t.Setup, Tool: t.Tool,
			Likely: []Likely{}, Parts: []Part{}, Why: t.Why, State: "lone"}
		if len(of[i]) > 0 {
			g.reading(&out, of[i])
		} else if len(t.Values) > 0 { // free deck, or a line that waits: shown as it was read
			out.Value, out.Text, out.SD = t.Values[0].Metres, t.Values[0].Text, g.saidSD(t)
		}
		out.Check, out.Computed, out.As = t.Check, t.Computed, t.As
		for _, k := range of[i] {
			g.state(&out, k)
		}
		if t.Struck {
			out.State = "struck"
		} else if t.Class == "owner" || t.Class == "drawing" {
			out.State, out.Why = "struck", "class "+t.Class+": shown, not used"
		}
		r.Readings = append(r.Readings, out)
	}
}

// saidSD is the standard deviation of a reading that has no part in the network: its own, else the
// book's rule or the default of its kind.
func (g *gather) saidSD(t *fieldbook.Taken) float64 {
	if len(t.Sigma) > 0 {
		return t.Sigma[0]
	}
	if s := g.book.Rules.Sigma[t.Kind]; s > 0 {
		return s
	}
	return fieldbook.DefaultSigma(t.Kind, t.Values[0].Part, t.Class, t.Values[0].Metres, 0)
}

// textOf is part k as typed; asserted kinds have no values.
func textOf(t *fieldbook.Taken, k int) string {
	if k < len(t.Values) {
		return t.Values[k].Text
	}
	return ""
}

// reading fills what the observations of one reading say: one, or two of a reading of plan and height.
func (g *gather) reading(out *Reading, obs []int) {
	var parts []Part
	t := &g.book.Readings[g.net.Obs[obs[0]].Reading]
	top := 0
	for _, i := range obs {
		o := &g.net.Obs[i]
		for k, name := range o.Kind.Parts(o) {
			p := g.part(i, k)
			if fieldbook.Angular(o.Kind.Name()) {
				inDegrees(&p)
			}
			p.Part, p.Text = name, textOf(t, k+o.Skip)
			parts = append(parts, p)
			if w := p.W; w != nil && (parts[top].W == nil || math.Abs(*w) > math.Abs(*parts[top].W)) {
				top = len(parts) - 1
			}
		}
	}
	p := parts[top]
	out.Value, out.Adjusted, out.Residual, out.SD, out.W = p.Value, p.Adjusted, p.Residual, p.SD, p.W
	out.Text = textOf(t, 0)
	out.Redundancy, out.Detectable = p.Redundancy, p.Detectable
	if len(parts) > 1 {
		out.Text = p.Text
		out.Parts = parts
		out.Redundancy, out.Detectable = total(parts)
	}
	if out.Redundancy != nil && *out.Redundancy >= 0.01 {
		out.State = "good"
	}
}

// total is the sum of redundancies and the largest detectable error of the parts.
func total(parts []Part) (red, detectable *float64) {
	for _, p := range parts {
		if p.Redundancy != nil {
			v := *p.Redundancy
			if red != nil {
				v += *red
			}
			red = &v
		}
		if p.Detectable != nil && (detectable == nil || *p.Detectable > *detectable) {
			detectable = p.Detectable
		}
	}
	return red, detectable
}

func (g *gather) part(i, k int) Part {
	o := &g.net.Obs[i]
	p := Part{Value: o.Values[k], SD: o.SD[k]}
	if len(g.sol.SD) > 0 {
		p.SD = g.sol.SD[g.sol.First[i]+k]
	}
	if !g.solved() || !g.net.Ready(g.sol.X, o) {
		zero := 0.0
		p.Redundancy = &zero
		return p
	}
	at := g.sol.First[i] + k
	p.Adjusted, p.Residual = some(g.sol.Adjusted[at]), some(g.sol.Residual[at])
	if v := g.sol.Net.Obs[i].Values[k]; v != o.Values[k] && !g.sol.Out[at] && p.Adjusted != nil { // held by what it was
		p.Residual = some(*p.Adjusted - o.Values[k])
	}
	p.W, p.Redundancy, p.Detectable = some(g.sol.W[at]), some(g.sol.Redund[at]), some(g.sol.Detectable[at])
	return p
}

// noFit names the readings in the solution whose w passes its limit, the largest first.
func (g *gather) noFit(all []Reading) {
	const limit = 3.29 // W. Baarda 1968: significance 0.001, two-sided
	var off []Reading
	for _, r := range all {
		if r.State == "good" && r.W != nil && math.Abs(*r.W) > limit {
			off = append(off, r)
		}
	}
	if len(off) == 0 {
		return
	}
	sort.SliceStable(off, func(i, j int) bool { return math.Abs(*off[i].W) > math.Abs(*off[j].W) })
	f := finding.Finding{Code: "no-fit"}
	for _, r := range off {
		f.Readings = append(f.Readings, r.N)
	}
	g.found = append(g.found, f)
}

// idle reports readings that cannot take part because a mark of theirs has no place yet.
func (g *gather) idle() {
	var n, marks []string
	seen := map[int]bool{}
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if !o.Use || g.net.Ready(g.sol.X, o) || o.Upright && o.Foot == nil { // heights apart have a word of their own
			continue
		}
		n = append(n, g.book.Readings[o.Reading].N)
		for _, m := range seenInPlan(o) {
			if !seen[m] && !g.net.Placed(g.sol.X, network.Unknown(m)) {
				seen[m] = true
				marks = append(marks, g.net.Marks[m])
			}
		}
	}
	if len(n) > 0 && len(marks) > 0 {
		g.found = append(g.found, finding.Finding{Code: "not-used", Readings: n, Marks: marks})
	}
}

// seenInPlan are the marks whose places a reading needs.
func seenInPlan(o *network.Obs) []int {
	if o.Foot == nil {
		return o.Marks
	}
	return append([]int{o.Foot.Mark}, o.Foot.Marks...)
}

// inDegrees turns a part that is an angle into degrees.
func inDegrees(p *Part) {
	p.Value *= degree
	p.SD *= degree
	for _, v := range []*float64{p.Adjusted, p.Residual, p.Detectable} {
		if v != nil {
			*v *= degree
		}
	}
}
