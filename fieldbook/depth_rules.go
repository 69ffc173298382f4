package fieldbook

import "strings"

// DepthRule is a published set of figures for depths and slopes of a floor, with its edition. What is
// measured is compared with it; nothing follows from that but figures.
type DepthRule struct {
	Name, Edition string
	Limits        []DepthLimit
}

// DepthLimit is one figure of it. What is one of the codes below. Figure is in metres, of a slope rise
// over run. Least says that the figure must be reached, else that it must not be passed.
type DepthLimit struct {
	What   string
	Least  bool
	Figure float64
	Clause string
	Source string // where the figure was seen
}

// What a limit may speak of.
const (
	ShallowSlope = "shallow-slope" // the steepest slope of the shallow part
	DeepSlope    = "deep-slope"    // the steepest slope beyond the first change of slope
	FirstChange  = "first-change"  // from the shallow end wall to the first change of slope
	LeastDepth   = "depth"         // the least depth anywhere
	AdvisedDepth = "advised-depth" // the depth that the rule set recommends
)

// DepthRules is the table of them; a book names one, and none is compared with where it names none.
// The figures of the code's chapter on permanent inground residential pools were recalled; confirm each
// against the edition that holds where the pool is.
var DepthRules = []DepthRule{
	{"ispsc 2012 residential", "International Swimming Pool and Spa Code, 2012", []DepthLimit{
		{ShallowSlope, false, 1.0 / 7, "chapter 8", recalled},
		{DeepSlope, false, 1.0 / 3, "chapter 8", recalled},
		{FirstChange, true, 6 * 0.3048, "chapter 8", recalled},
	}},
	{"ispsc 2012 public class B", "International Swimming Pool and Spa Code, 2012", []DepthLimit{
		{ShallowSlope, false, 1.0 / 12, "chapter 4", quotedFrom},
	}},
	{"ispsc 2012 public class C", "International Swimming Pool and Spa Code, 2012", []DepthLimit{
		{ShallowSlope, false, 1.0 / 10, "chapter 4", quotedFrom},
	}},
	{"fina 2009 games", "FINA Facilities Rules 2009-2013", []DepthLimit{
		{LeastDepth, true, 2.0, "FR 3", "the federation's own page of FR 3"},
		{AdvisedDepth, true, 3.0, "FR 3", "the federation's own page of FR 3"},
	}},
}

const (
	recalled   = "recalled, not seen: confirm against the edition"
	quotedFrom = "as quoted by others: confirm against the edition"
)

// DepthRule is the rule set that the book names; false where it names none.
func (b *Book) DepthRule() (DepthRule, bool) {
	for _, r := range DepthRules {
		if r.Name == b.Rules.Depths {
			return r, true
		}
	}
	return DepthRule{}, false
}

// depths reads the name of a rule set.
func (b *builder) depths(name Text) string {
	if !name.given() {
		return ""
	}
	var names []string
	for _, r := range DepthRules {
		names = append(names, r.Name)
	}
	if !among(name.text, names) {
		b.fault(name.at, "bad-choice", quoted(name.text)+" is no rule set for depths", "one of "+strings.Join(names, ", "))
	}
	return name.text
}
