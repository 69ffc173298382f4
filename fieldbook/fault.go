package fieldbook

import (
	"fmt"
	"sort"
	"strings"
)

// Fault is one thing for which a book is refused. Line and Column count from 1, columns in
// characters. Code is one of FaultCodes. Expected says what to write instead, where that can
// be said.
type Fault struct {
	File     string `json:"file"`
	Line     int    `json:"line"`
	Column   int    `json:"column"`
	Code     string `json:"code"`
	Text     string `json:"text"`
	Expected string `json:"expected"`
}

// Faults is every fault of one book, sorted by place.
type Faults []Fault

// Error gives one line a fault: FILE:LINE:COLUMN: CODE: text.
func (fs Faults) Error() string {
	var b strings.Builder
	for i, f := range fs {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s:%d:%d: %s: %s", f.File, f.Line, f.Column, f.Code, f.Text)
		if f.Expected != "" {
			b.WriteString("; expected " + f.Expected)
		}
	}
	return b.String()
}

// sorted orders faults by place, then code, and names the file in each.
func (fs Faults) sorted(file string) Faults {
	for i := range fs {
		fs[i].File = file
	}
	sort.SliceStable(fs, func(i, j int) bool {
		a, b := fs[i], fs[j]
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		if a.Column != b.Column {
			return a.Column < b.Column
		}
		return a.Code < b.Code
	})
	return fs
}

// FaultCodes is the closed list of fault codes, each with what it means. The codes of package
// unit for unreadable figures are among them.
var FaultCodes = []struct{ Code, Meaning string }{
	{"too-big", "the file is larger than any field book"},
	{"too-many", "more signs, keys or entries than any field book"},
	{"not-utf8", "bytes that are no UTF-8 text"},
	{"control", "a control character"},
	{"line-break", "a carriage return without a line feed"},
	{"nesting", "blocks in blocks more than 64 deep"},
	{"anchor", "a YAML anchor"},
	{"alias", "a YAML alias"},
	{"merge", "a YAML merge key"},
	{"tag", "a YAML tag"},
	{"directive", "a YAML directive"},
	{"complex-key", "a YAML key introduced by a question mark"},
	{"documents", "more than one YAML document"},
	{"tab", "a tab where only spaces may indent"},
	{"syntax", "not YAML"},
	{"not-a-book", "no mapping of keys at the top"},
	{"version", "not version 1 of the format"},
	{"unknown-key", "a key that the format does not have"},
	{"later", "a key of the format that is not yet built here"},
	{"duplicate-key", "the same key twice in one place"},
	{"missing-key", "a key that must be there"},
	{"wrong-type", "a list, a mapping or a single value in place of another"},
	{"bad-choice", "none of the words that may stand there"},
	{"bad-name", "a name with white space, or none"},
	{"bad-pair", "not two names"},
	{"bad-row", "a row of a column that is no mark with its length"},
	{"no-rows", "a column without rows"},
	{"not-here", "a key that means nothing for this kind of reading"},
	{"bad-number", "no plain number"},
	{"bad-time", "no time of RFC 3339"},
	{"bad-date", "no date or time of day"},
	{"bad-set", "`set` names no block"},
	{"no-kind", "an item of the readings without a kind"},
	{"two-kinds", "an item of the readings with two kinds"},
	{"one-of", "none or several of keys of which exactly one must be there"},
	{"count", "too few or too many figures or marks in a list"},
	{"empty", "no text"},
	{"unreadable", "no figure in any known spelling"},
	{"decimal-comma", "a comma where a point is meant"},
	{"inches-over", "twelve inches or more beside feet"},
	{"fraction", "a fraction that no rule shows"},
	{"ambiguous", "a figure, or the name of an entry, that could mean two things"},
	{"not-finite", "no number, or infinite"},
	{"too-large", "beyond what a survey can hold"},
	{"minutes-over", "sixty minutes of arc or more"},
	{"negative", "a sign where it has no meaning"},
	{"not-positive", "zero where something must be"},
	{"zero-length", "a length of zero between two marks"},
	{"self", "a reading of a mark to itself"},
	{"short-line", "a line of fewer than two marks"},
	{"runs-apart", "a run that does not begin where the one before ends"},
	{"duplicate-id", "an id that another entry has"},
	{"no-such", "a reference to nothing"},
	{"not-on-line", "a reading along a line between marks that the line has not"},
	{"cycle", "lines that derive from each other in a circle"},
	{"forward", "a number that means an entry further down"},
}
