package fieldbook

import "math"

// LevelRule says how well a loop of levels must close: within Flat metres, or within PerRootKM metres
// times the root of its length in kilometres.
type LevelRule struct {
	Name            string
	Flat, PerRootKM float64
	Source          string
}

// LevelRules is the table of them; a book may set one of its own.
var LevelRules = []LevelRule{
	{"practical 3 mm", 0.003, 0, commonPractice},
	{"practical 5 mm", 0.005, 0, commonPractice},
	{"builders 10 mm", 0, 0.010, "construction levelling practice, as quoted in an open levelling tutorial"},
	{"builders 15 mm", 0, 0.015, "construction levelling practice, as quoted in an open levelling tutorial"},
	{"third order 12 mm", 0, 0.012, geodetic},
	{"second order 2 8 mm", 0, 0.008, geodetic},
	{"second order 1 6 mm", 0, 0.006, geodetic},
	{"first order 2 5 mm", 0, 0.005, geodetic},
	{"first order 1 4 mm", 0, 0.004, geodetic},
}

const geodetic = "Federal Geodetic Control Committee, Standards and Specifications for Geodetic Control Networks (1984), section 3.5, loops"

// Limit is the misclosure that the rule allows a loop of a length in metres, in metres.
func (r LevelRule) Limit(length float64) float64 {
	return r.Flat + r.PerRootKM*math.Sqrt(max(length, 0)/1000)
}

// LevelRule is the rule that loops of levels are compared with: the one of the book's rules, else the
// first of the table.
func (b *Book) LevelRule() LevelRule {
	said := b.Rules.LevelLoop
	if said.Flat > 0 || said.PerRootKM > 0 {
		return said
	}
	for _, r := range LevelRules {
		if r.Name == said.Name {
			return r
		}
	}
	return LevelRules[0]
}
