package mistake

import (
	"math"
	"slices"

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
	shared    [][]shared
}

// mostGain keeps one row, bent by another mistake, from carrying a whole run.
const mostGain = 400.0

// try places the rows of a variant one by one.
func (f *finder) try(sc *scene, v *variant) *trial {
	n := len(v.mark)
	t := &trial{v: v, gain: make([]float64, n), home: make([]plane.Point, n), new: make([]plane.Point, n),
		plain: make([]float64, n), both: make([]float64, n), into: make([]float64, n), off: make([]float64, n), shared: make([][]shared, n)}
	ties, back := sc.apart(v)
	placed := make([]placedRow, n)
	for r, m := range v.mark {
		sc.asRead()
		home := sc.x.Point(m)
		was := sc.asWritten(m)
		t.home[r], t.new[r] = was.at, was.at
		placed[r] = placedRow{[2]plane.Point{was.at, was.at}, [2][3]float64{was.cov, was.cov}}
		if len(v.parts[r]) == 0 {
			t.gain[r] = math.Inf(-1)
			continue
		}
		for k, p := range v.parts[r] {
			sc.take(p, v.values[r][k])
		}
		c1, p1 := sc.best(m, f.imagined(sc, v, r, home))
		t.gain[r], t.new[r] = math.Max(math.Min((was.cost-c1)/2, mostGain), -mostGain), p1
		placed[r].at[1], placed[r].cov[1] = p1, sc.cov(m, p1)
	}
	sc.asRead()
	back()
	t.tied(f, ties, placed)
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

// runs gives the best stretches of rows, at most so many, none with a score below 2; of equals the first.
func (t *trial) runs(most int) []run {
	n := len(t.gain)
	smooth := make([]float64, n+1) // of the steps before row r: by how much moving both is less odd
	for r := range n {
		smooth[r+1] = smooth[r] + t.plain[r] - t.both[r]
	}
	best := make([]run, 0, most+1)
	for i := range n {
		gain, speak := 0.0, 0
		for j := i; j < n && !math.IsInf(t.gain[j], -1); j++ {
			more := t.joins(i, j)
			gain += more
			if more > speaks {
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
				best = ranked(best, run{i, j, s}, most)
			}
		}
	}
	return best
}

// ranked puts a run in its place among the best.
func ranked(best []run, r run, most int) []run {
	k := len(best)
	for k > 0 && best[k-1].score < r.score {
		k--
	}
	if k == most {
		return best
	}
	best = slices.Insert(best, k, r)
	return best[:min(len(best), most)]
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
		runs := t.runs(ended)
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
			for _, o := range runs[most:] { // the same mistake with other ends
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
	for k, m := range t.v.mark {
		if k >= r.from && k <= r.to {
			x.SetPoint(m, t.new[k])
		} else if t.v.code == "columns" { // the rows exchanged may have drawn them far off
			x.SetPoint(m, t.home[k])
		}
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

// lostLn is the log density of a length that belongs to no row of the book: about 5 mm in 10 m.
const lostLn = -6.5

// speaks is the gain from which a row speaks for a variant by itself.
const speaks = 4.0

// leastSlip is how many rows must speak for a slipped numbering to be told from single mistakes.
const leastSlip = 3
