package mistake

import (
	"math"

	"brimline/adjust"
	"brimline/network"
)

// zeroSizes are the usual errors of a tape's zero: the hook end or the case counted or not (100 mm),
// a tape begun at its one-metre mark. Common practice, no source.
var zeroSizes = []float64{0.1, -0.1, 1, -1}

// zeroRange is the largest zero that is looked for, metres.
const zeroRange = 1.2

// session is a set of tapes that may share an error: of one tool, one person, or from some moment on.
type session struct {
	name  string
	parts []int // in the order read
	ends  bool  // any beginning within it may have been where the error began
}

// zeroAt is an error common to the last n readings of a session, weighed.
type zeroAt struct {
	t           *tail
	n           int
	name        string
	size        float64
	score, half float64
}

// zeros weighs an error common to the lengths of a session.
func (f *finder) zeros(sp *adjust.Space, taken []*hypothesis) []*hypothesis {
	var all []zeroAt
	best := math.Inf(-1)
	for _, s := range f.sessions(sp) {
		if len(s.parts) < 3 {
			continue
		}
		prior := math.Log(odds(f.book, "tape-zero"))
		if s.ends {
			prior -= math.Log(float64(len(s.parts)))
		}
		t := newTail(sp, 1)
		for k := len(s.parts) - 1; k >= 0; k-- {
			p := s.parts[k]
			t.add(p, []float64{1 / sp.SD[p]})
			if len(s.parts)-k < 3 || k > 0 && !s.ends {
				continue
			}
			if z, ok := zero(t, prior, s.name); ok {
				all, best = append(all, z), math.Max(best, z.score)
			}
		}
	}
	var out []*hypothesis
	for _, z := range all {
		if z.score > best-nearBest {
			out = append(out, f.zero(z))
		}
	}
	return f.settleBest(sp, out, taken)
}

// zero is the best explanation of an error common to a tail as it is grown now.
func zero(t *tail, prior float64, name string) (zeroAt, bool) {
	e, s := t.one()
	if math.IsInf(s, 1) || math.Abs(e) > zeroRange {
		return zeroAt{}, false
	}
	half := e * e / (2 * s * s)
	size := e
	score := half + prior + math.Log(0.2) + narrowed(s*math.Sqrt(2*math.Pi)/(2*zeroRange))
	for _, z := range zeroSizes {
		known := half - (e-z)*(e-z)/(2*s*s) + prior + math.Log(0.2)
		if known > score {
			score, size = known, z
		}
	}
	return zeroAt{t, len(t.part), name, size, score, half}, score > 0
}

// zero is the hypothesis of it.
func (f *finder) zero(z zeroAt) *hypothesis {
	parts, values := make([]int, z.n), make([]float64, z.n)
	for k, p := range z.t.part[:z.n] {
		parts[z.n-1-k], values[z.n-1-k] = p, f.value(p)-z.size
	}
	h := f.named("tape-zero", parts, values)
	h.Size, h.Tool, h.score, h.half, h.ln = z.size, z.name, z.score, z.half, z.score-z.half
	f.far(h, -1)
	return h
}

// sessions lists the sets: every tool, every person, every column, and all tapes from a moment on
// or up to one.
func (f *finder) sessions(sp *adjust.Space) []session {
	var all session
	by := map[string]int{}
	var out []session
	put := func(key, name string, p int) {
		k, ok := by[key]
		if !ok {
			k = len(out)
			by[key] = k
			out = append(out, session{name: name})
		}
		out[k].parts = append(out[k].parts, p)
	}
	for i := range f.s.Net.Obs {
		o := &f.s.Net.Obs[i]
		p := f.s.First[i]
		if _, tie := o.Kind.(network.Tie); !tie || !f.free(sp, p) {
			continue
		}
		all.parts = append(all.parts, p)
		if f.book == nil {
			continue
		}
		r := f.book.Readings[o.Reading]
		put("tool "+r.Tool, r.Tool, p)
		if r.By != "" {
			put("by "+r.By, r.Tool, p)
		}
	}
	all.ends = true
	back := session{ends: true}
	for k := len(all.parts) - 1; k >= 0; k-- {
		back.parts = append(back.parts, all.parts[k])
	}
	if len(out) == 1 { // one tape, one person: its own set is all of them
		out[0].name = f.onlyTool()
	}
	return append(out, all, back)
}

func (f *finder) onlyTool() string {
	if f.book != nil && len(f.book.Tools) == 1 {
		return f.book.Tools[0].Name
	}
	return ""
}

// nearBest is how far below the best of a family its others still count, in log odds.
const nearBest = 10

// settleBest asks the best of a family by its own solution and moves the others with it.
func (f *finder) settleBest(sp *adjust.Space, all []*hypothesis, taken []*hypothesis) []*hypothesis {
	best := -1
	for k, h := range all {
		if best < 0 || h.score > all[best].score {
			best = k
		}
	}
	if best < 0 {
		return nil
	}
	var near []*hypothesis
	for _, h := range all {
		if h.score > all[best].score-nearBest {
			near = append(near, h)
		}
	}
	if _, x, ok := f.s.Try(f.ctx, f.change(append(append([]*hypothesis(nil), taken...), all[best]), sp.X)); ok {
		for _, h := range near {
			h.x = x
		}
	}
	return near
}
