package mistake

import (
	"math"
	"slices"

	"brimline/adjust"
	"brimline/network"
)

// hypothesis is one mistake, or several readings wrong by one, with its log posterior (not
// normalised; none at all scores 0).
type hypothesis struct {
	Mistake
	parts  []int
	values []float64 // what they were; NaN unknown
	score  float64
	half   float64       // half the drop of the sum of squares that the score rests on
	ln     float64       // the rest of the score: odds, misfit of a known size, width of a free one
	x      network.State // where the marks are if it is so; nil: only the linear model was asked
	bound  bool          // the others only say that the error is at least so large
	margin float64       // of a group, or of a reading beside a common lack of precision: by how much it explains the book better than what was found without it
	judged bool          // a reading with a margin
	rival  []*hypothesis // what that was, where it differs
	v      *variant      // of a run of rows: what it is a run of
	r      run
	why    []option // of a single reading: each explanation with its own score
}

// option is one explanation of a single reading.
type option struct {
	candidate
	peg   int
	score float64
}

// Range of an error of unknown size: common practice, no source. A turn may be wrong by anything.
const (
	lengthRange = 10.0
	angleRange  = 2 * math.Pi
)

// singles weighs every reading of the model by itself. Only readings whose test exceeds leastW are
// listed; the others cannot matter beside them.
func (f *finder) singles(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	const leastW = 2.5
	var all []*hypothesis
	for p, in := range sp.Member {
		if !in || sp.R[p] < adjust.LeastRed || math.Abs(sp.W(p)) < leastW {
			continue
		}
		w := sp.W(p)
		e, s := sp.Estimate(p)
		h := &hypothesis{parts: f.outWith(p), score: w * w / 2}
		h.Obs, h.Peg, h.Other, h.From, h.To = []int{f.s.ObsOf(p)}, -1, -1, -1, -1
		f.explain(h, p, e, s, w*w/2, sp.X)
		all = append(all, h)
	}
	slices.SortStableFunc(all, func(a, b *hypothesis) int { return higher(a.score, b.score) })
	f.sharpen(sp, all, taken)
	if extra := f.overlooked(sp, all, taken); len(extra) > 0 {
		all = append(all, extra...)
		slices.SortStableFunc(all, func(a, b *hypothesis) int { return higher(a.score, b.score) })
	}
	return all
}

// overlooked weighs the readings at the marks of the best hypothesis that seem to prove nothing where
// the mistake has drawn these marks: without them the marks may stand where they do.
func (f *finder) overlooked(sp *adjust.Space, all, taken []*hypothesis) []*hypothesis {
	if len(all) == 0 || all[0].score < shown || len(all[0].parts) > 1 {
		return nil
	}
	var out []*hypothesis
	for _, i := range f.neighbours(all[0].Obs[0]) {
		p := f.s.First[i]
		if !sp.Member[p] || sp.R[p] >= adjust.LeastRed || len(f.outWith(p)) > 1 {
			continue
		}
		h := &hypothesis{parts: []int{p}, score: math.Inf(-1)}
		h.Obs, h.Peg, h.Other, h.From, h.To = []int{i}, -1, -1, -1, -1
		h.why = []option{{score: math.Inf(-1)}}
		f.exact(sp, h, taken)
		if !math.IsInf(h.score, -1) && len(h.why) > 1 {
			out = append(out, h)
		}
	}
	return out
}

// outWith lists the parts that go when p is wrong: an offset may lose one part, an instrument's
// point goes whole.
func (f *finder) outWith(p int) []int {
	i := f.s.ObsOf(p)
	if !f.isSeen(p) {
		return []int{p}
	}
	all := span(f.s, i)
	for _, j := range []int{i - 1, i + 1} { // its height is an observation beside it
		if j >= 0 && j < len(f.s.Net.Obs) && f.s.Net.Obs[j].Reading == f.s.Net.Obs[i].Reading {
			all = append(all, span(f.s, j)...)
		}
	}
	return all
}

func span(s *adjust.Solution, i int) []int {
	var all []int
	for q := s.First[i]; q < s.First[i+1]; q++ {
		all = append(all, q)
	}
	return all
}

// way is one thing that may have been done to a part: an error of a size; one that another place
// of the mark would change as well (loose); or one of any size within a width (open).
type way struct {
	candidate
	peg         int
	size, width float64
	loose, open bool
	over        bool // the reading can only be too long so
}

// ways lists what may have been done to part p; the place x gives the lengths to other pegs.
func (f *finder) ways(p int, x network.State) []way {
	o := &f.s.Net.Obs[f.s.ObsOf(p)]
	known := f.candidatesOf(p)
	out := make([]way, 0, len(known)+2*len(f.pegs)+1)
	for _, c := range known {
		out = append(out, way{candidate: c, peg: -1, size: f.value(p) - c.metres})
	}
	if _, tie := o.Kind.(network.Tie); tie {
		out = f.otherPegs(out, o, x)
	}
	out = f.slants(out, o)
	width := lengthRange
	if !isLength(o.Kind.Name()) {
		width = angleRange
	}
	unknown := candidate{"unknown", "no listed mistake fits", math.NaN(), math.Log(odds(f.book, "unknown"))}
	return append(out, way{candidate: unknown, peg: -1, width: width, open: true})
}

// otherPegs adds that a tie was taped to another peg than the one written.
func (f *finder) otherPegs(out []way, o *network.Obs, x network.State) []way {
	ln := math.Log(odds(f.book, "wrong-peg") / float64(max(len(f.pegs)-1, 1)))
	for side, m := range o.Marks {
		if !f.isPeg[m] {
			continue
		}
		far := x.Point(o.Marks[1-side])
		for _, q := range f.pegs {
			if q == m || q == o.Marks[1-side] {
				continue
			}
			size := o.Scale * (far.Dist(x.Point(q)) - far.Dist(x.Point(m)))
			out = append(out, way{candidate: candidate{"wrong-peg", "", math.NaN(), ln}, peg: q, size: size, loose: true})
		}
	}
	return out
}

// misfit is the log of a normal density over its peak, for an error d off its size; a loose one has
// twice the variance.
func misfit(d, s float64, loose bool) float64 {
	if loose {
		return -d*d/(4*s*s) - math.Ln2/2
	}
	return -d * d / (2 * s * s)
}

// explain scores what may have been done to part p, its error being e with standard deviation s
// and half the drop of the sum of squares half; the place x gives the lengths to other pegs.
func (f *finder) explain(h *hypothesis, p int, e, s, half float64, x network.State) {
	o := &f.s.Net.Obs[f.s.ObsOf(p)]
	ways := f.ways(p, x)
	if h.why = h.why[:0]; cap(h.why) < len(ways) {
		h.why = make([]option, 0, len(ways))
	}
	for _, w := range ways {
		if h.bound && !w.loose && !w.open && (w.size*e < 0 || math.Abs(w.size) < math.Abs(e)-3*o.SD[0]) {
			continue
		}
		if w.over {
			if e <= 0 || e > w.width {
				continue
			}
			w.metres = f.value(p) - e
		}
		score := half + w.ln
		if w.open {
			score += narrowed(s * math.Sqrt(2*math.Pi) / w.width)
		} else {
			score += misfit(e-w.size, s, w.loose)
		}
		h.why = append(h.why, option{w.candidate, w.peg, score})
	}
	slices.SortStableFunc(h.why, func(a, b option) int { return higher(a.score, b.score) })
	h.score = math.Inf(-1)
	for _, w := range h.why {
		h.score = addLog(h.score, w.score)
	}
	h.half, h.ln = half, h.score-half
	h.Code, h.Cause, h.values = h.why[0].code, h.why[0].cause, []float64{h.why[0].metres}
	h.Size = e
}

// narrowed is the log of the share of a range that the readings leave to a size; at most 0.
func narrowed(share float64) float64 { return math.Min(0, math.Log(share)) }

func isLength(kind string) bool { return kind != "turn" && kind != "square" }

// sharpen asks the best hypotheses again by solutions of their own: with an error of many times
// the precision the linear model puts marks, and so the size of the error, a little off.
func (f *finder) sharpen(sp *adjust.Space, all []*hypothesis, taken []*hypothesis) {
	const (
		most   = 8
		within = 14.0  // of the best score
		from   = 0.015 // metres
	)
	for n, h := range all {
		if n >= most || h.score < all[0].score-within {
			break
		}
		p := h.parts[0]
		if math.Abs(h.Size) < from || len(h.parts) > 1 && !f.isSeen(p) {
			continue
		}
		f.exact(sp, h, taken)
	}
	slices.SortStableFunc(all, func(a, b *hypothesis) int { return higher(a.score, b.score) })
}

func (f *finder) isSeen(p int) bool { return f.s.Net.Obs[f.s.ObsOf(p)].Kind.Name() == "seen" }

// exact weighs one reading by the solution that leaves it out.
func (f *finder) exact(sp *adjust.Space, h *hypothesis, taken []*hypothesis) {
	p := h.parts[0]
	if f.alone(sp, h) && sp.R[p] >= adjust.LeastRed {
		w := sp.W(p)
		e, _ := sp.Estimate(p)
		h.bound = true
		f.explain(h, p, e, sp.SD[p]/math.Sqrt(leastR), w*w/2, sp.X)
		return
	}
	c := f.change(taken, f.replaced(sp, h))
	c.Out = append(c.Out, h.parts...)
	cost, x, ok := f.s.Try(f.ctx, c)
	if !ok {
		return
	}
	e := f.misclosure(x, p)
	_, s := sp.Estimate(p)
	h.x = x
	if f.shifted(sp.X, x, h) > farMove || sp.R[p] < adjust.LeastRed { // what the others know of it depends on where they put it
		there := f.model(x, append(append([]*hypothesis(nil), taken...), h))
		h.bound = there.R[p] < adjust.LeastRed
		s = there.SD[p] / math.Sqrt(math.Max(there.R[p], leastR))
		if !h.bound {
			e, _ = there.Estimate(p)
		}
	}
	f.explain(h, p, e, s, (sp.Cost-cost)/2, x)
}

// alone says whether a mark of the reading would hang on one other: two ties that cannot meet say only
// that one of them is wrong by as much as they miss each other, or by more.
func (f *finder) alone(sp *adjust.Space, h *hypothesis) bool {
	for _, m := range f.s.Net.Obs[h.Obs[0]].Marks {
		if f.isPeg[m] {
			continue
		}
		n := 0
		for i := range f.s.Net.Obs {
			o := &f.s.Net.Obs[i]
			if i == h.Obs[0] || !sp.Member[f.s.First[i]] {
				continue
			}
			for _, k := range o.Marks {
				if k == m {
					n += len(o.Values)
				}
			}
		}
		if n < 2 {
			return true
		}
	}
	return false
}

// leastR keeps the standard deviation of an error that nothing measures from being infinite.
const leastR = 1e-8

// farMove is a move of a mark after which the linear model is made anew, metres.
const farMove = 0.1

// shifted is the largest move of a mark of the reading.
func (f *finder) shifted(x, y network.State, h *hypothesis) float64 {
	most := 0.0
	for _, m := range f.s.Net.Obs[h.Obs[0]].Marks {
		most = math.Max(most, x.Point(m).Dist(y.Point(m)))
	}
	return most
}

// replaced is the model's place with the marks of the readings put where their other readings have
// them: a wrong reading may have drawn a mark to the far side of a crossing.
func (f *finder) replaced(sp *adjust.Space, wrong ...*hypothesis) network.State {
	member := append([]bool(nil), sp.Member...)
	for _, h := range wrong {
		for _, p := range h.parts {
			member[p] = false
		}
	}
	sc := f.scene(sp.X, member)
	x := append(network.State(nil), sp.X...)
	for _, h := range wrong {
		for _, m := range f.s.Net.Obs[h.Obs[0]].Marks {
			if f.isPeg[m] || len(sc.of[m]) < 2 {
				continue
			}
			if _, at := sc.best(m, sp.X.Point(m)); !math.IsNaN(at.X) {
				x.SetPoint(m, at)
			}
		}
	}
	return x
}

// misclosure is value − predicted of one part at a place.
func (f *finder) misclosure(x network.State, p int) float64 {
	i := f.s.ObsOf(p)
	o := &f.s.Net.Obs[i]
	v, j := make([]float64, len(o.Values)), make([]float64, len(o.Values)*o.Size)
	o.Kind.Predict(x, o, v, j)
	k := p - f.s.First[i]
	return o.Values[k] - v[k]
}

// higher orders the higher score first.
func higher(a, b float64) int {
	switch {
	case a > b:
		return -1
	case b > a:
		return 1
	}
	return 0
}

func addLog(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	if math.IsInf(b, -1) {
		return a
	}
	return a + math.Log1p(math.Exp(b-a))
}
