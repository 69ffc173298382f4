package fieldbook

import (
	"slices"
	"sort"
	"strings"

	"brimline/unit"
)

// Mistakes is the list of human mistakes whose prior a book may set; the meaning of each stands
// in docs/conventions.md.
var Mistakes = []string{
	"foot", "metre", "tenth", "inch", "digits", "lookalike", "feet-tenths", "feet-metres", "tape-zero", "columns", "slip",
	"peg-moved", "wrong-peg", "wrong-edge", "mirrored", "water-moved", "staff", "depth-slope", "unknown",
}

// RulesForm is the block rules: figures of this book in place of the printed tables.
type RulesForm struct {
	Priors []Named[Figure] `book:"priors"`
	Sigma  []Named[Length] `book:"sigma"`

	LevelLoop LevelRuleForm `book:"level_loop"`
	Depths    Text          `book:"depths"`
}

func (f *RulesForm) build(b *builder, _ string) Body {
	r := Rules{LevelLoop: f.LevelLoop.rule(b), Depths: b.depths(f.Depths)}
	for _, p := range f.Priors {
		if !among(p.Key.text, Mistakes) {
			b.fault(p.Key.at, "bad-choice", quoted(p.Key.text)+" is no mistake of the list", "one of "+strings.Join(Mistakes, ", "))
			continue
		}
		v := b.figure(p.Form.leaf, positive)
		if v >= 1 {
			b.fault(p.Form.at, "too-large", "a prior of "+p.Form.text, "a probability below 1")
		}
		if r.Priors == nil {
			r.Priors = map[string]float64{}
		}
		r.Priors[p.Key.text] = v
	}
	for _, s := range f.Sigma {
		name := s.Key.text
		if _, ok := kindNamed(name); !ok {
			b.noKind(s.Key)
			continue
		}
		if r.Sigma == nil {
			r.Sigma = map[string]float64{}
		}
		if Angular(name) {
			r.Sigma[name] = b.angle(Angle{s.Form.leaf}, positive)
			continue
		}
		r.Sigma[name] = b.length(s.Form, positive)
	}
	return r
}

func (b *builder) noKind(n Name) {
	if slices.Contains(laterKinds, n.text) {
		b.fault(n.at, "later", quoted(n.text)+" is not yet built here", "a book without it")
		return
	}
	b.fault(n.at, "bad-choice", quoted(n.text)+" is no kind of reading", "one of "+kindNames())
}

func (r Rules) write(w *writer) {
	if len(r.Priors) > 0 {
		w.open("priors")
		for _, k := range sortedKeys(r.Priors) {
			w.figure(k, r.Priors[k])
		}
		w.close()
	}
	if len(r.Sigma) > 0 {
		w.open("sigma")
		for _, k := range sortedKeys(r.Sigma) {
			if Angular(k) {
				w.text(k, unit.Degrees(r.Sigma[k]))
				continue
			}
			w.length(k, r.Sigma[k])
		}
		w.close()
	}
	w.levelRule(r.LevelLoop)
	w.text("depths", r.Depths)
}

func sortedKeys(m map[string]float64) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
