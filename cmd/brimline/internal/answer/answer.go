// Package answer turns a result into the plain text that a measurer reads standing at the pool:
// the word first, then the three questions (may I go, good so far, what next), then what is open,
// how sure the figures are, and the tables. It takes the result as data and the job's unit, and
// gives text of at most 80 columns where the names allow it. It computes nothing that the result
// does not hold; it rounds: lengths to the step of the job's unit, every ± upwards.
package answer

import (
	"strings"

	"brimline/survey"
	"brimline/unit"
)

// columns is the width that sentences are wrapped to.
const columns = 80

// Text is the answer. The unit is the book's `units.length`; metric jobs read small lengths in
// millimetres, jobs in feet or inches to 1/16 in. book is the name of the book's file, for the
// command that accepts a correction; "" where there is no file.
func Text(r *survey.Result, u unit.Unit, book string) string {
	m := measure{style: unit.StyleFor(u)}
	return join(
		head(r, m),
		good(r, m, book),
		next("What next?", r.Next, solvedNext, m),
		todo(r),
		sure(r, m),
		lines(r, m),
		levels(r, m),
		water(r, m),
		marks(r, m),
		readings(r, m),
	)
}

// join puts an empty line between the parts that say something.
func join(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, "\n")
}
