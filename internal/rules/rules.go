package rules

// Rule is a house rule that holds for one package at a time: Check gives its breaches there.
type Rule struct {
	Name  string
	For   func(path string) bool
	Check func(*Package) []string
}

// Rules is the list.
var Rules = []Rule{
	{"types", everywhere, func(p *Package) []string { return p.Faults }},
	{"imports", everywhere, imports},
	{"names", everywhere, goodName},
	{"verdicts", notTheRules, noVerdicts},
	{"outside world", pure, noOutsideWorld},
	{"clock and chance", pure, noClockNoChance},
	{"variables", pure, fixedVariables},
	{"map order", pure, orderedMaps},
	{"init and goto", pure, noInitNoGoto},
}

func everywhere(string) bool { return true }

// notTheRules leaves out this package, which has to name the words.
func notTheRules(path string) bool { return path != "internal/rules" }
