package survey

import (
	"strings"

	"brimline/fieldbook"
)

// named is a reading by its kind and what it is of, the marks joined as wanted: "tie B–r17", "round
// track", "along track, r1–r4", "clear h1 to rim".
func named(t fieldbook.Reading, by string) string {
	marks := strings.Join(t.Marks, by)
	switch {
	case t.Until != "":
		return t.Kind + " " + marks + " until " + t.Until
	case t.Line == "":
		return t.Kind + " " + marks
	case t.Kind == "round" || marks == "":
		return t.Kind + " " + t.Line
	case t.Kind == "clear":
		return t.Kind + " " + marks + " to " + t.Line
	}
	return t.Kind + " " + t.Line + ", " + marks
}
