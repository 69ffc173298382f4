package survey

import (
	"math"
	"strconv"
	"time"

	"brimline/adjust"
	"brimline/finding"
	"brimline/network"
)

// waters compares what was read of water surfaces: every two that are read under one mark, and one
// surface with itself at different times.
func (g *gather) waters() {
	var names []string
	for i := range g.net.Free {
		if g.net.Free[i].Kind == "water" {
			names = append(names, g.net.Free[i].Name)
		}
	}
	for k, a := range names {
		g.steady(a)
		for _, b := range names[k+1:] {
			g.twoWaters(a, b)
		}
	}
}

// twoWaters says by how much two surfaces differ in the solution.
func (g *gather) twoWaters(a, b string) {
	if !g.shared(a, b) {
		return
	}
	p, _ := adjust.UpBlock(g.net, "water", a)
	q, _ := adjust.UpBlock(g.net, "water", b)
	za, okA := g.sol.Height(p)
	zb, okB := g.sol.Height(q)
	if !okA || !okB {
		return
	}
	c := g.sol.HeightCov(p, q)
	sd := g.factor * math.Sqrt(math.Max(c[0]-2*c[1]+c[3], 0))
	d := zb - za
	if sd == 0 {
		return
	}
	word := "higher"
	if d < 0 {
		word = "lower"
	}
	code := "waters-equal"
	if math.Abs(d) > adjust.WLimit*sd {
		code = "waters-differ"
	}
	g.found = append(g.found, finding.Finding{Code: code, Words: map[string]string{"first": a, "second": b, "hand": word},
		Figures: map[string]float64{"by": math.Abs(d), "sd": sd, "w": math.Abs(d) / sd}})
}

// shared says that both surfaces were read under one mark.
func (g *gather) shared(a, b string) bool {
	for _, i := range g.boards(a) {
		for _, j := range g.boards(b) {
			if g.net.Obs[i].Of[0] == g.net.Obs[j].Of[0] {
				return true
			}
		}
	}
	return false
}

// boards are the freeboards of a surface in use.
func (g *gather) boards(water string) []int {
	var out []int
	for i := range g.net.Obs {
		o := &g.net.Obs[i]
		if _, ok := o.Kind.(network.Water); ok && o.Use && g.book.Readings[o.Reading].Water == water {
			out = append(out, i)
		}
	}
	return out
}

// steady compares the first and the last freeboard of each mark that was read under one surface at
// different times, by their weighted mean.
func (g *gather) steady(water string) {
	from, to := -1, -1
	num, den := 0.0, 0.0
	first := map[int]int{} // looked up only
	last := map[int]int{}
	var marks []int
	for _, i := range g.boards(water) {
		m := g.net.Obs[i].Of[0]
		if g.at(i).IsZero() {
			continue
		}
		if _, ok := first[m]; !ok {
			first[m], marks = i, append(marks, m)
		}
		last[m] = i
	}
	for _, m := range marks {
		i, j := first[m], last[m]
		if !g.at(j).After(g.at(i)) {
			continue
		}
		if from < 0 || g.at(i).Before(g.at(from)) {
			from = i
		}
		if to < 0 || g.at(j).After(g.at(to)) {
			to = j
		}
		w := 1 / (g.net.Obs[i].SD[0]*g.net.Obs[i].SD[0] + g.net.Obs[j].SD[0]*g.net.Obs[j].SD[0])
		num, den = num+w*(g.net.Obs[j].Values[0]-g.net.Obs[i].Values[0]), den+w
	}
	if den == 0 {
		return
	}
	d, sd := num/den, 1/math.Sqrt(den)
	word := "fell"
	if d < 0 {
		word = "rose"
	}
	code := "water-steady"
	if math.Abs(d) > adjust.WLimit*sd {
		code = "water-moved"
	}
	g.found = append(g.found, finding.Finding{Code: code, Readings: []string{g.n(from), g.n(to)}, Words: map[string]string{"water": water, "moved": word, "apart": apart(g.at(to).Sub(g.at(from)))},
		Figures: map[string]float64{"by": math.Abs(d), "sd": sd, "w": math.Abs(d) / sd}})
}

// at is when an observation was read.
func (g *gather) at(i int) time.Time { return g.book.Readings[g.net.Obs[i].Reading].Time }

// apart prints a time between readings to the minute. The time of day is not printed: the book keeps
// no zone.
func apart(d time.Duration) string {
	minutes := int(math.Round(d.Minutes()))
	if minutes < 100 {
		return strconv.Itoa(minutes) + " min"
	}
	return strconv.Itoa(minutes/60) + " h " + strconv.Itoa(minutes%60) + " min"
}

// waterSaid puts a surface that moved in words: between the last reading before and the first after.
func (g *gather) waterSaid(surface int, obs []int, size float64) string {
	word := "rose"
	if size < 0 {
		word = "fell"
	}
	block := g.net.FreeBlock(surface)
	before := -1
	for i := 0; i < obs[0]; i++ {
		if o := &g.net.Obs[i]; o.Use && len(o.Extra) > 1 && o.Upright && o.Extra[1] == block {
			before = i
		}
	}
	text := "water " + g.net.Free[surface].Name + " " + word + " " + g.show()(math.Abs(size))
	if before < 0 {
		return text
	}
	text += " between readings " + g.n(before) + " and " + g.n(obs[0])
	if a, b := g.at(before), g.at(obs[0]); !a.IsZero() && !b.IsZero() {
		text += ", " + apart(b.Sub(a)) + " apart"
	}
	return text
}
