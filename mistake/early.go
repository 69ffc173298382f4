package mistake

import (
	"math"

	"brimline/fieldbook"
	"brimline/finding"
)

// byEye is how far a spacing said by eye may be short of the true distance of two marks, as a factor:
// common practice, no source.
const byEye = 1.4

// Early checks a column before there is any shape: two neighbours on a line, a known spacing apart,
// cannot differ in their tapes from one peg by more than they are apart (the triangle's sides). Each
// finding (code "neighbours") names both readings and, where one does, the listed mistake that
// would put it right. Lines without a spacing are not asked.
func Early(b *fieldbook.Book) []finding.Finding {
	var out []finding.Finding
	for _, l := range b.Lines {
		if l.Spacing <= 0 {
			continue
		}
		names := l.MarkNames()
		for _, peg := range columnsOf(b, names) {
			for k := range names {
				if k+1 == len(names) && !l.Closed {
					break
				}
				one, two := taped(b, peg, names[k]), taped(b, peg, names[(k+1)%len(names)])
				if one == nil || two == nil || one == two {
					continue
				}
				if f, odd := apart(b, one, two, l.Spacing); odd {
					f.Words["peg"], f.Marks = peg, []string{names[k], names[(k+1)%len(names)]}
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// columnsOf lists what the marks of a line are taped from, in the order of the book.
func columnsOf(b *fieldbook.Book, names []string) []string {
	on := map[string]bool{}
	for _, n := range names {
		on[n] = true
	}
	var pegs []string
	seen := map[string]bool{}
	for _, r := range b.Readings {
		if r.Kind != "tie" || r.Struck {
			continue
		}
		for side, m := range r.Marks {
			if on[m] && !on[r.Marks[1-side]] && !seen[r.Marks[1-side]] {
				seen[r.Marks[1-side]] = true
				pegs = append(pegs, r.Marks[1-side])
			}
		}
	}
	return pegs
}

// taped is the last tie in force between two marks; nil without one.
func taped(b *fieldbook.Book, peg, mark string) *fieldbook.Taken {
	var last *fieldbook.Taken
	for i := range b.Readings {
		r := &b.Readings[i]
		if r.Kind != "tie" || r.Struck || r.Bent || r.Class == "owner" || r.Class == "drawing" {
			continue
		}
		if r.Marks[0] == peg && r.Marks[1] == mark || r.Marks[1] == peg && r.Marks[0] == mark {
			last = r
		}
	}
	return last
}

// apart says whether two tapes differ by more than their marks can be apart, and what would cure it.
func apart(b *fieldbook.Book, one, two *fieldbook.Taken, spacing float64) (finding.Finding, bool) {
	d := two.Values[0].Metres - one.Values[0].Metres
	if math.Abs(d) <= byEye*spacing {
		return finding.Finding{}, false
	}
	f := finding.Finding{Code: "neighbours", Readings: []string{one.N, two.N},
		Figures: map[string]float64{"differ": math.Abs(d), "spacing": spacing}, Words: map[string]string{"guess": "one of them misread"}}
	best := math.Inf(-1)
	for k, r := range []*fieldbook.Taken{one, two} {
		for _, c := range candidates(b, Misreadings, r.Values[0], r.Values[0].Metres) {
			left := two.Values[0].Metres - c.metres
			if k == 1 {
				left = c.metres - one.Values[0].Metres
			}
			if math.Abs(left) <= spacing && c.ln > best {
				best = c.ln
				f.Words["guess"] = "reading " + r.N + " " + c.cause
			}
		}
	}
	return f, true
}
