package answer

import (
	"slices"
	"strings"

	"brimline/survey"
	"brimline/unit"
)

// Correction is a reading that was corrected, by its number, and the entry that stands for it now.
type Correction struct{ Was, Now string }

// Written says what accepting mistakes put into the book: for each corrected reading what was read
// and what is used from now on. The result is that of the corrected book.
func Written(r *survey.Result, u unit.Unit, book string, list []Correction) string {
	m := measure{style: unit.StyleFor(u)}
	text := wrap("Written to "+book+"; what was read stays in it:", "", "")
	for _, c := range list {
		was, now := numbered(r, c.Was), numbered(r, c.Now)
		says := NotReRead(now, m.style)
		if !slices.Equal(was.Marks, now.Marks) {
			says = "as read " + naming(was) + ", used " + naming(now) + ", not re-read"
		}
		text += wrap(says, "- "+Plain(c.Was)+"  "+Plain(naming(was))+"  ", strings.Repeat(" ", 4+len(c.Was)))
	}
	return text
}
