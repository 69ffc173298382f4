// Package answer turns a result into the plain text that a measurer reads standing at the pool:
// the word first, then what is wrong and what to do about it, then how sure the figures are, then
// the tables. It takes the result as data and the job's unit, and gives text of at most 80 columns
// where the names allow it. It computes nothing that the result does not hold; it rounds: lengths
// to the step of the job's unit, every ± upwards.
package answer

import (
	"strings"

	"brimline/survey"
	"brimline/unit"
)

// columns is the width that sentences are wrapped to.
const columns = 80

// Text is the answer. The unit is the book's `units.length`; metric jobs read small lengths in
// millimetres, jobs in feet or inches to 1/16 in.
func Text(r *survey.Result, u unit.Unit) string {
	m := measure{style: unit.StyleFor(u)}
	parts := []string{
		head(r, m),
		todo(r),
		sure(r, m),
		lines(r, m),
		marks(r, m),
		readings(r, m),
	}
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, "\n")
}
