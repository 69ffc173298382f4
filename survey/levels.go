package survey

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/finding"
	"brimline/network"
)

// levels fills the heights of the marks, the loops of level readings and the heights along the lines.
func (g *gather) levels(r *Result) {
	if _, ok := g.net.Datum(); !ok || !g.solved() {
		return
	}
	g.upDatum()
	out := &Levels{Loops: []LevelLoop{}, Stations: []Station{}, Surfaces: []Surface{}, Collimations: []Collimation{}}
	r.Levels = out
	for i, name := range g.net.Marks {
		if b, ok := adjust.HeightBlock(g.net, i); ok {
			r.Marks[name].Z, r.Marks[name].SZ = g.height(b)
		}
	}
	for i := range g.net.Free {
		f := &g.net.Free[i]
		switch b := g.net.FreeBlock(i); f.Kind {
		case "water":
			s := Surface{Name: f.Name}
			s.Z, s.SZ = g.height(b)
			out.Surfaces = append(out.Surfaces, s)
		case "collimation":
			c := Collimation{Tool: f.Name}
			if slices.Contains(g.sol.Held, i) {
				c.Value = some(0)
			} else if v, ok := g.sol.Height(b); ok {
				c.Value, c.SD = some(v), some(g.factor*g.sol.BlockSD(int(b), 0))
			}
			out.Collimations = append(out.Collimations, c)
		case "sight":
			if r.Setups[f.Name] == nil { // an instrument of the same name keeps its own
				z, _ := g.height(b)
				r.Setups[f.Name] = &Setup{Scale: 1, Z: z}
			}
		case "pole":
			if s := r.Setups[f.Name]; s != nil {
				s.Z, _ = g.height(b)
			}
		}
	}
	g.loops(out)
	g.stations(out)
	g.heightFindings()
}

// upDatum picks what heights are counted from: the height held, or those that the book wants, whose mean
// misfit is then nothing.
func (g *gather) upDatum() {
	g.upAt, g.upFrom = 0, []network.Unknown{g.net.FreeBlock(g.net.Level)}
	var blocks []network.Unknown
	sum, worst, mark := 0.0, 0.0, ""
	var wanted []network.WantedHeight
	for _, w := range g.net.Heights {
		b, ok := adjust.HeightBlock(g.net, w.Mark)
		z, held := g.sol.Height(b)
		if ok && held {
			blocks, wanted, sum = append(blocks, b), append(wanted, w), sum+w.Z-z
		}
	}
	if len(blocks) == 0 {
		return
	}
	g.upAt, g.upFrom = sum/float64(len(blocks)), blocks
	firm := 0.001
	for k, w := range wanted {
		z, sd := g.height(blocks[k])
		if sd == nil || z == nil {
			continue
		}
		firm = math.Max(firm, adjust.WLimit**sd)
		if off := math.Abs(*z - w.Z); off > worst {
			worst, mark = off, g.net.Marks[w.Mark]
		}
	}
	if worst > firm {
		g.found = append(g.found, finding.Finding{Code: "height-misfit", Marks: []string{mark}, Figures: map[string]float64{"misfit": worst}})
	}
}

// height is the height of a block in the book's frame, with its standard deviation against what heights
// are counted from; nil where nothing holds it.
func (g *gather) height(b network.Unknown) (z, sd *float64) {
	v, ok := g.sol.Height(b)
	if !ok {
		return nil, nil
	}
	weights := map[network.Unknown]float64{b: 1}
	all := []network.Unknown{b}
	for _, d := range g.upFrom {
		if _, have := weights[d]; !have {
			all = append(all, d)
		}
		weights[d] -= 1 / float64(len(g.upFrom))
	}
	c := g.sol.HeightCov(all...)
	variance := 0.0
	for i, a := range all {
		for j, d := range all {
			variance += weights[a] * c[i*len(all)+j] * weights[d]
		}
	}
	return some(still(v + g.upAt)), some(g.factor * math.Sqrt(clean(variance)))
}

// loops compares every loop with the book's rule.
func (g *gather) loops(out *Levels) {
	rule := g.book.LevelRule()
	out.Rule, out.RuleSource = rule.Name, rule.Source
	for _, l := range g.net.Loops() {
		c := LevelLoop{Marks: []string{}, Readings: []string{}, Setups: l.Setups, Misclosure: l.Misclosure, Rule: rule.Name}
		for _, m := range l.Marks {
			c.Marks = append(c.Marks, g.net.Marks[m])
		}
		for _, i := range l.Obs {
			c.Readings = append(c.Readings, g.n(i))
		}
		length := g.loopLength(l)
		c.Length = some(length)
		if rule.PerRootKM == 0 || length > 0 {
			limit := rule.Limit(length)
			within := math.Abs(l.Misclosure) <= limit
			c.Limit, c.Within = some(limit), &within
			if !within {
				g.found = append(g.found, finding.Finding{Code: "loop-open", Marks: c.Marks, Readings: c.Readings,
					Figures: map[string]float64{"open": math.Abs(l.Misclosure), "limit": limit}, Words: map[string]string{"rule": rule.Name}})
			}
		}
		if out.Closure == nil || math.Abs(l.Misclosure) > *out.Closure {
			out.Closure = some(math.Abs(l.Misclosure))
		}
		out.Loops = append(out.Loops, c)
	}
}

// loopLength is the sum of the sights, else the way round the marks in plan; NaN where neither is known.
func (g *gather) loopLength(l network.Loop) float64 {
	if !math.IsNaN(l.Sights) {
		return l.Sights
	}
	sum := 0.0
	for k, m := range l.Marks {
		sum += g.sol.X.Point(m).Dist(g.sol.X.Point(l.Marks[(k+1)%len(l.Marks)]))
	}
	return sum
}

// stations lists the heights along the lines against the mean of each; the rim is the first closed line
// that has any.
func (g *gather) stations(out *Levels) {
	rim := false
	for _, l := range g.book.Lines {
		var here []Station
		mean := 0.0
		for _, m := range l.MarkNames() {
			i, ok := g.net.ByName[m]
			b, has := adjust.HeightBlock(g.net, i)
			if !ok || !has {
				continue
			}
			s := Station{Line: l.Name, Mark: m}
			if s.Z, s.SZ = g.height(b); s.Z != nil && !listed(here, m) {
				here, mean = append(here, s), mean+*s.Z
			}
		}
		if len(here) == 0 {
			continue
		}
		mean /= float64(len(here))
		high, low := 0.0, 0.0
		for k := range here {
			here[k].Off = *here[k].Z - mean
			high, low = math.Max(high, here[k].Off), math.Min(low, here[k].Off)
		}
		out.Stations = append(out.Stations, here...)
		if l.Closed && !rim {
			rim = true
			out.RimHigh, out.RimLow = &high, &low
		}
	}
}

func listed(all []Station, mark string) bool {
	for _, s := range all {
		if s.Mark == mark {
			return true
		}
	}
	return false
}

// heightFindings names the heights that nothing holds once mistaken readings are out, and compares
// water surfaces.
func (g *gather) heightFindings() {
	var open []string
	for i := range g.net.Free {
		f := &g.net.Free[i]
		b := g.net.FreeBlock(i)
		if _, ok := g.sol.Height(b); f.Kind == "height" && g.net.Placed(g.sol.X, b) && !ok {
			open = append(open, f.Name)
		}
	}
	if len(open) > 0 {
		g.found = append(g.found, finding.Finding{Code: "height-open", Marks: open})
	}
	g.waters()
}
