package draft

import (
	"sort"
	"time"

	"brimline/fieldbook"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
)

// Options of a set of sheets. The zero value draws on A3 in the units of the book.
type Options struct {
	Paper        string    // a name of sheet.Sizes, "" or unknown: A3
	Date         time.Time // of issue; zero: left open
	Version      string    // of the program, for the title block
	Revision     string    // letter of the issue, "" the first
	ShowTies     bool      // readings as grey hairlines
	Exaggeration float64   // of error ellipses against the plan; not above 0: chosen
	Heights      Heights   // levels and depths, for sheets of their own; none: those of the result
}

// Plan makes the sheets of the measured plan: the plan with the verdict first, then parts of it
// drawn larger where its figures find no room, then the words that found none, then the tables; then depths, sections
// and levels, where the result has them. It always gives at least one sheet, for an empty book one that says what is missing.
func Plan(b *fieldbook.Book, r *survey.Result, o Options) []sheet.Sheet {
	j := newJob(b, r, o)
	sheets, left, width := j.planSheet()
	sheets = append(sheets, j.tableSheets(left, width)...)
	sheets = append(sheets, j.heightSheets(o.heights(b, r))...)
	for i := range sheets {
		sheets[i].Items = append(sheets[i].Items, j.titleBlock(sheets[i], i+1, len(sheets))...)
	}
	return sheets
}

// job is one drawing in the making.
type job struct {
	book   *fieldbook.Book
	result *survey.Result
	opt    Options
	size   sheet.Size
	fig    figures
	all    []string // marks, in the order of tables
	marks  []string // those of this drawing: all, or those in the window of a detail
	lines  []string
}

func newJob(b *fieldbook.Book, r *survey.Result, o Options) *job {
	size, ok := sheet.Paper(o.Paper)
	if !ok {
		size, _ = sheet.Paper("A3")
	}
	j := &job{book: b, result: r, opt: o, size: size, fig: figures{unit.StyleFor(b.Units.Length)}}
	j.all = inTable(r, ordered(r.MarkOrder, r.Marks))
	j.marks = j.all
	j.lines = ordered(r.LineOrder, r.Lines)
	return j
}

// ordered is the order given, as far as it names what is there, with the rest by name after it.
func ordered[T any](given []string, have map[string]*T) []string {
	var out []string
	seen := map[string]bool{}
	for _, n := range given {
		if have[n] != nil && !seen[n] {
			seen[n] = true
			out = append(out, n)
		}
	}
	var rest []string
	for n, x := range have {
		if x != nil && !seen[n] {
			rest = append(rest, n)
		}
	}
	sort.Strings(rest)
	return append(out, rest...)
}
