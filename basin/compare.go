package basin

import "math"

// Caution goes with every comparison of depths and slopes.
const Caution = "Figures as measured, against the figures of the rule set and edition named; whether they apply is for the authority or a qualified designer to say. No statement about diving."

// Figure is what a rule limits.
type Figure string

// The figures.
const (
	SlopeMost  Figure = "steepest slope" // of the floor where the water is between Shallow and Deep
	DepthLeast Figure = "least depth"
	DepthMost  Figure = "greatest depth"
)

// Rule is one figure of a rule set. Limits are metres, or rise over run.
type Rule struct {
	Clause        string
	Figure        Figure
	Limit         float64
	Shallow, Deep float64 // range of depths in which it holds; Deep 0: no bound
	Source        string  // how it is known
}

// RuleSet is a published set of figures in one edition.
type RuleSet struct {
	Name, Edition string
	Rules         []Rule
}

const foot = 0.3048 // m, exactly

const (
	seenSecond = "seen in a public copy and in quotations; read the clause before relying on it"
	fromMemory = "from memory; read the clause before relying on it"
)

// RuleSets is the list to choose from. A caller may compare with a set of its own.
var RuleSets = []RuleSet{
	{"International Swimming Pool and Spa Code, residential in-ground pools", "2012", []Rule{
		{"chapter 8, floor slopes", SlopeMost, 1.0 / 7, 0, 5 * foot, fromMemory},
		{"chapter 8, floor slopes", SlopeMost, 1.0 / 3, 5 * foot, 0, fromMemory},
	}},
	{"International Swimming Pool and Spa Code, public pools of class B", "2012", []Rule{
		{"chapter 4, floor slopes", SlopeMost, 1.0 / 12, 0, 5 * foot, seenSecond},
	}},
	{"International Swimming Pool and Spa Code, public pools of class C", "2012", []Rule{
		{"chapter 4, floor slopes", SlopeMost, 1.0 / 10, 0, 5 * foot, seenSecond},
	}},
	{"FINA Facilities Rules, swimming pools for Olympic Games and World Championships", "2009–2013", []Rule{
		{"FR 3, depth", DepthLeast, 2.0, 0, 0, seenSecond},
	}},
}

// Verdict is how a figure lies to its limit.
type Verdict string

// The verdicts, by the standard deviation of the figure: within or beyond by 1.96 of it, or
// undecided (the guard band of JCGM 106:2012, at 95 %).
const (
	Meets     Verdict = "meets the geometric figure as measured"
	Undecided Verdict = "undecided"
	Beyond    Verdict = "beyond the figure as measured"
)

// Compared is one rule with the figure measured.
type Compared struct {
	Rule      Rule
	Value, SD float64
	Where     Depth // of a depth; of a slope its place and the depth there
	Verdict   Verdict
}

// Compare sets the basin at a water level beside the figures of a rule set. Rules about what is not there,
// such as slopes in a range of depths that the pool has not, are left out.
func (b *Basin) Compare(level Height, set RuleSet) []Compared {
	shallow, deep := b.extremes(level)
	var out []Compared
	for _, r := range set.Rules {
		c := Compared{Rule: r}
		switch r.Figure {
		case SlopeMost:
			most := r.Deep
			if most == 0 {
				most = math.Inf(1)
			}
			s, ok := b.Steepest(level.Z, r.Shallow, most)
			if !ok {
				continue
			}
			c.Value, c.SD, c.Where = s.Rise, s.SD, Depth{Depth: s.Depth, At: s.At}
			c.Verdict = verdict(r.Limit-c.Value, c.SD)
		case DepthLeast:
			c.Value, c.SD, c.Where = shallow.Depth, shallow.SD, shallow
			c.Verdict = verdict(c.Value-r.Limit, c.SD)
		case DepthMost:
			c.Value, c.SD, c.Where = deep.Depth, deep.SD, deep
			c.Verdict = verdict(r.Limit-c.Value, c.SD)
		}
		out = append(out, c)
	}
	return out
}

// verdict of a figure that is on the right side of its limit by so much.
func verdict(by, sd float64) Verdict {
	switch {
	case by >= 1.96*sd:
		return Meets
	case by <= -1.96*sd:
		return Beyond
	}
	return Undecided
}
