package mistake

import (
	"math"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/network"
)

// Hypothesis is a listed human mistake of known size: the error that it would have left in each part
// (written − true), with the log of its prior.
type Hypothesis struct {
	Code    string
	Parts   []int
	Size    []float64
	LnPrior float64
	Cause   string
}

// Listed gives every listed mistake that the readings of a solution, and the checks that agree with
// it, could still hold: in single readings, and in groups (two columns swapped in a row, a tape's
// zero, a peg moved half-way).
func Listed(s *adjust.Solution, b *fieldbook.Book) []Hypothesis {
	var out []Hypothesis
	for i := range s.Net.Obs {
		o := &s.Net.Obs[i]
		for p := s.First[i]; p < s.First[i+1]; p++ {
			if !counts(s, i, p) {
				continue
			}
			for _, c := range possible(s, b, p) {
				out = append(out, Hypothesis{c.code, []int{p}, []float64{o.Values[p-s.First[i]] - c.metres}, c.ln, c.cause})
			}
		}
	}
	f := &finder{s: s, book: b, cand: make([][]candidate, s.First[len(s.In)])}
	f.findColumns()
	out = append(out, f.listedSwaps()...)
	out = append(out, f.listedZeros()...)
	return append(out, f.listedMoves()...)
}

// counts says whether a part speaks for the solution.
func counts(s *adjust.Solution, i, p int) bool {
	return s.In[i] && !s.Out[p] && !s.Net.Obs[i].Computed || s.Agrees[i]
}

// listedSwaps are the rows with two columns swapped; the pairs of columns share the odds of a row.
func (f *finder) listedSwaps() []Hypothesis {
	var out []Hypothesis
	ln := math.Log(odds(f.book, "columns") / float64(max(len(f.cols)*(len(f.cols)-1)/2, 1)))
	for a := range f.cols {
		for b := a + 1; b < len(f.cols); b++ {
			second := map[int]int{}
			for k, m := range f.cols[b].mark {
				second[m] = f.cols[b].obs[k]
			}
			for k, m := range f.cols[a].mark {
				i := f.cols[a].obs[k]
				j, ok := second[m]
				p, q := f.s.First[i], 0
				if ok {
					q = f.s.First[j]
				}
				if !ok || !counts(f.s, i, p) || !counts(f.s, j, q) {
					continue
				}
				d := f.value(p) - f.value(q)
				if math.Abs(d) > 2*same {
					out = append(out, Hypothesis{"columns", []int{p, q}, []float64{d, -d}, ln, "columns swapped in this row"})
				}
			}
		}
	}
	return out
}

// listedZeros are the zeros of each tool's tapes.
func (f *finder) listedZeros() []Hypothesis {
	var parts [][]int
	at := map[string]int{}
	for i := range f.s.Net.Obs {
		o := &f.s.Net.Obs[i]
		p := f.s.First[i]
		if _, tie := o.Kind.(network.Tie); !tie || !counts(f.s, i, p) {
			continue
		}
		tool := ""
		if f.book != nil {
			tool = f.book.Readings[o.Reading].Tool
		}
		k, ok := at[tool]
		if !ok {
			k = len(parts)
			at[tool] = k
			parts = append(parts, nil)
		}
		parts[k] = append(parts[k], p)
	}
	var out []Hypothesis
	ln := math.Log(odds(f.book, "tape-zero") / float64(len(zeroSizes)))
	for _, ps := range parts {
		for _, z := range zeroSizes {
			size := make([]float64, len(ps))
			for k := range size {
				size[k] = z
			}
			if len(ps) > 1 {
				out = append(out, Hypothesis{"tape-zero", ps, size, ln, "the tape's zero"})
			}
		}
	}
	return out
}

// usualMove is how far a peg is taken to be kicked, metres: common practice, no source.
const usualMove = 0.1

// listedMoves are the pegs kicked half-way, each in four directions.
func (f *finder) listedMoves() []Hypothesis {
	var out []Hypothesis
	ln := math.Log(odds(f.book, "peg-moved") / 4)
	for _, c := range f.cols {
		half := c.obs[len(c.obs)/2:]
		for _, d := range [][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
			var h Hypothesis
			for k, i := range half {
				if p := f.s.First[i]; counts(f.s, i, p) {
					u := f.s.X.Point(c.peg).Sub(f.s.X.Point(c.mark[len(c.obs)/2+k])).Unit()
					h.Parts = append(h.Parts, p)
					h.Size = append(h.Size, usualMove*(u.X*d[0]+u.Y*d[1]))
				}
			}
			if len(h.Parts) > 1 {
				h.Code, h.LnPrior, h.Cause = "peg-moved", ln, "the peg kicked half-way"
				out = append(out, h)
			}
		}
	}
	return out
}
