package mistake

import (
	"math"

	"brimline/adjust"
)

// variants lists the ways in which rows may have been written wrongly: two columns swapped, or the
// numbering of one column, or of all, slipped by one.
func (f *finder) variants(sp *adjust.Space) []*variant {
	var out []*variant
	for a := range f.cols {
		for b := a + 1; b < len(f.cols); b++ {
			if v := f.swapped(sp, f.cols[a], f.cols[b]); v != nil {
				out = append(out, v)
			}
		}
	}
	for _, step := range []int{1, -1} {
		for _, c := range f.cols {
			out = append(out, f.slipped(sp, []column{c}, step))
		}
		if len(f.cols) > 1 {
			out = append(out, f.slipped(sp, f.cols, step))
		}
	}
	return out
}

// tieOf is the part of a mark's tie in a column, −1 without one in the model. Of several the first
// counts.
func (f *finder) tieOf(sp *adjust.Space, c column, mark int) int {
	for k, m := range c.mark {
		if p := f.s.First[c.obs[k]]; m == mark && f.free(sp, p) {
			return p
		}
	}
	return -1
}

// free says whether a part is in the model and no group found explains it.
func (f *finder) free(sp *adjust.Space, p int) bool { return sp.Member[p] && !f.busy[p] }

// swapped is the variant in which a's ties are b's and the other way round.
func (f *finder) swapped(sp *adjust.Space, a, b column) *variant {
	v := &variant{code: "columns", peg: a.peg, other: b.peg, ln: math.Log(odds(f.book, "columns"))}
	done := map[int]bool{}
	for k, m := range a.mark {
		p, q := f.s.First[a.obs[k]], f.tieOf(sp, b, m)
		if done[m] || q < 0 || !f.free(sp, p) {
			continue
		}
		done[m] = true
		v.mark = append(v.mark, m)
		v.parts = append(v.parts, []int{p, q})
		v.values = append(v.values, []float64{f.value(q), f.value(p)})
	}
	if len(v.mark) == 0 {
		return nil
	}
	return v
}

// slipped is the variant in which each row's length stands one row off: with step 1 the length of
// a row was written at the row after, with −1 at the row before.
func (f *finder) slipped(sp *adjust.Space, cols []column, step int) *variant {
	v := &variant{code: "slip", peg: cols[0].peg, other: -1, step: step, ln: math.Log(odds(f.book, "slip"))}
	if len(cols) > 1 {
		v.peg = -1
	}
	first := cols[0]
	parts := make([][]int, 0, len(first.mark))
	done := map[int]bool{}
	for _, m := range first.mark {
		if done[m] {
			continue
		}
		done[m] = true
		var ps []int
		for _, c := range cols {
			if p := f.tieOf(sp, c, m); p >= 0 {
				ps = append(ps, p)
			}
		}
		if len(ps) == len(cols) {
			v.mark, parts = append(v.mark, m), append(parts, ps)
		}
	}
	n := len(parts)
	v.parts, v.values = make([][]int, n), make([][]float64, n)
	for r := range n {
		if from := r + step; from >= 0 && from < n {
			v.parts[r] = parts[r]
			for _, p := range parts[from] {
				v.values[r] = append(v.values[r], f.value(p))
			}
		}
	}
	v.lost = func(from, to int) []int {
		if step > 0 && to+1 < n {
			return parts[to+1]
		}
		if step < 0 && from > 0 {
			return parts[from-1]
		}
		return nil
	}
	return v
}
