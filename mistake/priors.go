package mistake

import "brimline/fieldbook"

// Prior is how often a mistake is made: for each reading where Of is "reading", else for each
// group that could be wrong in this way. Every figure is common practice, no source.
type Prior struct {
	Code   string
	Odds   float64
	Of     string // reading, row, column, peg, session, mark
	Cause  string // in a few words
	Source string
}

const commonPractice = "common practice, no source"

// Priors is the table; a book or an office may set other odds (`rules: {priors: …}`).
var Priors = []Prior{
	{"foot", 0.003, "reading", "a foot misread", commonPractice},
	{"metre", 0.003, "reading", "a metre misread", commonPractice},
	{"tenth", 0.003, "reading", "100 mm misread", commonPractice},
	{"inch", 0.0005, "reading", "an inch misread", commonPractice},
	{"digits", 0.003, "reading", "two digits swapped", commonPractice},
	{"lookalike", 0.0005, "reading", "6 and 9, or 1 and 7, taken for each other", commonPractice},
	{"feet-tenths", 0.0005, "reading", "tenths of a foot taken for inches", commonPractice},
	{"feet-metres", 0.0002, "reading", "feet taken for metres", commonPractice},
	{"wrong-peg", 0.0005, "reading", "taped to another peg", commonPractice},
	{"unknown", 0.0015, "reading", "a mistake of no listed kind", commonPractice},
	{"columns", 0.003, "row", "two columns swapped", commonPractice},
	{"slip", 0.003, "column", "numbering slipped by one", commonPractice},
	{"peg-moved", 0.01, "peg", "a peg moved", commonPractice},
	{"tape-zero", 0.01, "session", "the tape's zero", commonPractice},
	{"wrong-edge", 0.005, "column", "another edge taped", commonPractice},
	{"mirrored", 0.002, "mark", "the other side of the line", commonPractice},
	{"water-moved", 0.01, "session", "the water moved", commonPractice},
	{"staff", 0.002, "reading", "a staff misread", commonPractice},
	{"depth-slope", 0.002, "reading", "a depth read along the slope", commonPractice},
}

// odds gives the prior of a code in this book.
func odds(b *fieldbook.Book, code string) float64 {
	if b != nil {
		if v, ok := b.Rules.Priors[code]; ok {
			return v
		}
	}
	for _, p := range Priors {
		if p.Code == code {
			return p.Odds
		}
	}
	return 0
}

// groupCause is the cause of a code in a few words.
func groupCause(code string) string {
	for _, p := range Priors {
		if p.Code == code {
			return p.Cause
		}
	}
	return code
}
