package mistake

import (
	"math"
	"slices"
	"sort"

	"brimline/adjust"
	"brimline/network"
	"brimline/plane"
)

// variant is another way of reading rows of the book: what each row's parts would be if it held
// from some row to some other. A row without parts cannot take part.
type variant struct {
	code   string
	peg    int
	other  int
	step   int   // slip: which way
	mark   []int // by row
	parts  [][]int
	values [][]float64
	lost   func(from, to int) []int // parts that have no reading then
	ln     float64                  // prior of one run, without its ends
}

// run is a stretch of rows with its score by single marks, everything else held.
type run struct {
	from, to int
	score    float64
}

// trial is the rows of a variant, each placed as written and as the variant says.
type trial struct {
	v         *variant
	gain      []float64
	home, new []plane.Point
	plain     []float64 // by row r: oddness of the step from row r to r+1 as written
	both      []float64 // both moved
	into, off []float64 // only r+1 moved; only r moved
}

// mostGain keeps one row, bent by another mistake, from carrying a whole run.
const mostGain = 400.0

// try places the rows of a variant one by one.
func (f *finder) try(sc *scene, v *variant) *trial {
	n := len(v.mark)
	t := &trial{v: v, gain: make([]float64, n), home: make([]plane.Point, n), new: make([]plane.Point, n),
		plain: make([]float64, n), both: make([]float64, n), into: make([]float64, n), off: make([]float64, n)}
	for r, m := range v.mark {
		clear(sc.over)
		home := sc.x.Point(m)
		c0, p0 := sc.best(m, home)
		t.home[r], t.new[r] = p0, p0
		if len(v.parts[r]) == 0 {
			t.gain[r] = math.Inf(-1)
			continue
		}
		for k, p := range v.parts[r] {
			sc.over[p] = v.values[r][k]
		}
		c1, p1 := sc.best(m, f.imagined(sc, v, r, home))
		t.gain[r], t.new[r] = math.Max(math.Min((c0-c1)/2, mostGain), -mostGain), p1
	}
	clear(sc.over)
	f.steps(t)
	return t
}

// imagined is where a row begins to be placed: swapped columns put it at the image across the
// middle of both pegs.
func (f *finder) imagined(sc *scene, v *variant, _ int, home plane.Point) plane.Point {
	if v.code != "columns" {
		return home
	}
	a, b := sc.x.Point(v.peg), sc.x.Point(v.other)
	u := b.Sub(a).Unit()
	mid := plane.Lerp(a, b, 0.5)
	return home.Sub(u.Mul(2 * u.Dot(home.Sub(mid))))
}

// steps weighs how odd the steps along a line are: a run of rows read wrongly makes the edge leap.
func (f *finder) steps(t *trial) {
	next := map[[2]int]float64{} // usual step of the line by neighbours
	for _, p := range f.s.Net.Paths {
		usual := f.usualStep(p, t)
		for k := range p.Marks {
			if k+1 < len(p.Marks) || p.Closed {
				a, b := p.Marks[k], p.Marks[(k+1)%len(p.Marks)]
				next[[2]int{a, b}], next[[2]int{b, a}] = usual, usual
			}
		}
	}
	for r := range len(t.gain) - 1 {
		usual := next[[2]int{t.v.mark[r], t.v.mark[r+1]}]
		if usual == 0 {
			continue
		}
		t.plain[r] = leap(t.home[r].Dist(t.home[r+1]), usual)
		t.both[r] = leap(t.new[r].Dist(t.new[r+1]), usual)
		t.into[r] = leap(t.home[r].Dist(t.new[r+1]), usual)
		t.off[r] = leap(t.new[r].Dist(t.home[r+1]), usual)
	}
}

// usualStep is the median distance of neighbours on a line, its marks where the rows put them.
func (f *finder) usualStep(p network.Path, t *trial) float64 {
	at := map[int]plane.Point{}
	for r, m := range t.v.mark {
		at[m] = t.home[r]
	}
	var d []float64
	for k := range len(p.Marks) - 1 {
		a, ok1 := at[p.Marks[k]]
		b, ok2 := at[p.Marks[k+1]]
		if ok1 && ok2 {
			d = append(d, a.Dist(b))
		}
	}
	if len(d) == 0 {
		return 0
	}
	sort.Float64s(d)
	return d[len(d)/2]
}

// leap is how odd a step is, as a log odds, never more than mostLeap: common practice, no source.
func leap(d, usual float64) float64 {
	const (
		mostLeap = 6.0
		from     = 2.5 // times the usual step
		spread   = 0.3 // of its logarithm
	)
	z := math.Max(0, math.Log(math.Max(d, 1e-6)/(from*usual))/spread)
	return math.Min(mostLeap, z*z/2)
}

// runs gives the best stretches of rows, at most three, none with a score below 2.
func (t *trial) runs() []run {
	n := len(t.gain)
	smooth := make([]float64, n+1) // of the steps before row r: by how much moving both is less odd
	for r := range n {
		smooth[r+1] = smooth[r] + t.plain[r] - t.both[r]
	}
	var all []run
	for i := range n {
		gain, speak := 0.0, 0
		for j := i; j < n && !math.IsInf(t.gain[j], -1); j++ {
			gain += t.gain[j]
			if t.gain[j] > speaks {
				speak++
			}
			s := gain + smooth[j] - smooth[i]
			if i > 0 {
				s += t.plain[i-1] - t.into[i-1]
			}
			if j+1 < n {
				s += t.plain[j] - t.off[j]
			}
			if s > 2 && (t.v.code != "slip" || speak >= leastSlip) {
				all = append(all, run{i, j, s})
			}
		}
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].score > all[b].score })
	return all
}

// sequences weighs the runs of all variants of rows, the best by solutions of their own.
func (f *finder) sequences(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	const (
		most  = 2
		ended = 24 // stretches near the best, for what cannot be told apart
	)
	sc := f.scene(sp.X, sp.Member)
	var out []*hypothesis
	for _, v := range f.variants(sp) {
		t := f.try(sc, v)
		runs := t.runs()
		for k, r := range runs {
			if k >= most {
				break
			}
			h := f.ofRun(sp, t, r, taken)
			if h == nil {
				continue
			}
			out = append(out, h)
			if k > 0 || len(runs) <= most {
				continue
			}
			for _, o := range runs[most:min(len(runs), ended)] { // the same mistake with other ends
				if math.Abs(o.score-r.score) < 8 {
					g := f.plainRun(t.v, o)
					g.score = h.score + o.score - r.score
					g.x = h.x
					out = append(out, g)
				}
			}
		}
	}
	return out
}

// plainRun is the hypothesis of a run of a variant, without its score.
func (f *finder) plainRun(v *variant, r run) *hypothesis {
	h := &hypothesis{v: v, r: r, ln: v.ln - math.Log(float64(len(v.mark)))}
	h.Code, h.Peg, h.Other, h.From, h.To = v.code, v.peg, v.other, v.mark[r.from], v.mark[r.to]
	for k := r.from; k <= r.to; k++ {
		h.parts, h.values = append(h.parts, v.parts[k]...), append(h.values, v.values[k]...)
	}
	if v.lost != nil {
		for _, p := range v.lost(r.from, r.to) {
			h.parts, h.values = append(h.parts, p), append(h.values, math.NaN())
			h.ln += lostLn
		}
	}
	for k, p := range h.parts {
		i := f.s.ObsOf(p)
		h.Obs = append(h.Obs, i)
		h.Edits = append(h.Edits, Edit{p, h.values[k], [2]int{-1, -1}})
	}
	return h
}

// ofRun scores a run by the solution with its lengths; nil where that does not settle.
func (f *finder) ofRun(sp *adjust.Space, t *trial, r run, taken []*hypothesis) *hypothesis {
	h := f.plainRun(t.v, r)
	x := append(network.State(nil), sp.X...)
	for k := r.from; k <= r.to; k++ {
		x.SetPoint(t.v.mark[k], t.new[k])
	}
	c := f.change(append(append([]*hypothesis(nil), taken...), h), x)
	cost, x, ok := f.s.Try(f.ctx, c)
	if !ok {
		return nil
	}
	h.x = x
	h.half = (sp.Cost - cost) / 2
	h.score = h.half + h.ln + f.oddness(sp.X) - f.oddness(x)
	return h
}

// nearEnds are the changes of both ends of a run that are tried.
var nearEnds = [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, 1}, {-1, 1}, {1, -1}}

// ends looks for better ends of the runs found, a row at a time.
func (f *finder) ends(s setting) setting {
	for range 2 * len(f.s.Net.Marks) {
		top := s
		groups := groupsOf(s.taken)
		for _, j := range f.joined(s, groups) {
			if n := f.singly(j); n.score-n.odd > top.score-top.odd {
				top = n
			}
		}
		for k, h := range groups {
			if h.v == nil {
				continue
			}
			for _, d := range nearEnds {
				r := run{from: h.r.from + d[0], to: h.r.to + d[1]}
				if g, x, ok := f.regrown(s, h, r); ok {
					others := without(groups, k)
					if n := f.singly(setting{taken: append(others[:len(others):len(others)], g), x: x}); n.score-n.odd > top.score-top.odd {
						top = n
					}
				}
			}
		}
		if top.score-top.odd <= s.score-s.odd+1e-6 || f.ctx.Err() != nil {
			break
		}
		s = top
	}
	return s
}

// joined are the settings in which two runs of one variant, a few rows apart, are one.
func (f *finder) joined(s setting, groups []*hypothesis) []setting {
	const near = 3 // rows between them
	var out []setting
	for a, h := range groups {
		for b, g := range groups {
			if h.v == nil || g.v == nil || !sameVariant(h, g) {
				continue
			}
			gap := slices.Index(h.v.mark, g.v.mark[g.r.from]) - h.r.to
			to := slices.Index(h.v.mark, g.v.mark[g.r.to])
			if gap < 1 || gap > near+1 || to < h.r.to {
				continue
			}
			if n, x, ok := f.regrown(s, h, run{from: h.r.from, to: to}); ok {
				rest := without(groups, a, b)
				out = append(out, setting{taken: append(rest[:len(rest):len(rest)], n), x: x})
			}
		}
	}
	return out
}

func sameVariant(h, g *hypothesis) bool {
	return h != g && h.Code == g.Code && h.Peg == g.Peg && h.Other == g.Other && h.v.step == g.v.step
}

// regrown is a run with one row more or less, with the state in which that row stands as it then
// was read.
func (f *finder) regrown(s setting, h *hypothesis, r run) (*hypothesis, network.State, bool) {
	v := h.v
	if r.from < 0 || r.to >= len(v.mark) || r.to < r.from || v.code == "slip" && r.to-r.from+1 < leastSlip {
		return nil, nil, false
	}
	for k := r.from; k <= r.to; k++ {
		if len(v.parts[k]) == 0 {
			return nil, nil, false
		}
	}
	sc := f.scene(s.x, f.model(s.x, nil).Member)
	x := append(network.State(nil), s.x...)
	for k := min(r.from, h.r.from); k <= max(r.to, h.r.to); k++ {
		was, is := k >= h.r.from && k <= h.r.to, k >= r.from && k <= r.to
		if was == is {
			continue
		}
		clear(sc.over)
		if is {
			for n, p := range v.parts[k] {
				sc.over[p] = v.values[k][n]
			}
		}
		_, at := sc.best(v.mark[k], f.imagined(sc, v, k, s.x.Point(v.mark[k])))
		x.SetPoint(v.mark[k], at)
	}
	return f.plainRun(v, r), x, true
}

// lostLn is the log density of a length that belongs to no row of the book: about 5 mm in 10 m.
const lostLn = -6.5

// oddness is how odd the steps along the lines are at a state, as a log odds.
func (f *finder) oddness(x network.State) float64 {
	sum := 0.0
	for _, p := range f.s.Net.Paths {
		var d []float64
		n := len(p.Marks)
		for k := range n {
			if k+1 == n && !p.Closed {
				break
			}
			if l := x.Point(p.Marks[k]).Dist(x.Point(p.Marks[(k+1)%n])); !math.IsNaN(l) {
				d = append(d, l)
			}
		}
		if len(d) < 3 {
			continue
		}
		sorted := append([]float64(nil), d...)
		sort.Float64s(sorted)
		for _, l := range d {
			sum += leap(l, sorted[len(d)/2])
		}
	}
	return sum
}

// speaks is the gain from which a row speaks for a variant by itself.
const speaks = 4.0

// leastSlip is how many rows must speak for a slipped numbering to be told from single mistakes.
const leastSlip = 3
