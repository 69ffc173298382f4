package fieldbook

import (
	"reflect"
	"strings"
)

// LevelRuleForm is a rule of the table by its name, level_loop: practical 3 mm, or one of the book's
// own: level_loop: {name: ours, per_root_km: 10 mm}.
type LevelRuleForm struct {
	Named Text
	Own   *OwnLevelRule
}

// OwnLevelRule is a rule that the book makes: flat, or per root of a kilometre.
type OwnLevelRule struct {
	Name      Text   `book:"name" jsonschema:"required"`
	Flat      Length `book:"flat"`
	PerRootKM Length `book:"per_root_km"`
	Source    Text   `book:"source"`
}

func (f *LevelRuleForm) decode(d *decoder, n *node) {
	if n.shape != mapping {
		d.value(n, reflect.ValueOf(&f.Named).Elem(), nil)
		return
	}
	f.Own = &OwnLevelRule{}
	d.form(n, reflect.ValueOf(f.Own).Elem())
}

// rule keeps of a rule of the table its name only.
func (f *LevelRuleForm) rule(b *builder) LevelRule {
	if f.Own != nil {
		return f.Own.rule(b)
	}
	if !f.Named.given() {
		return LevelRule{}
	}
	var names []string
	for _, r := range LevelRules {
		names = append(names, r.Name)
	}
	if !among(f.Named.text, names) {
		b.fault(f.Named.at, "bad-choice", quoted(f.Named.text)+" is no rule for loops of levels", "one of "+strings.Join(names, ", ")+", or {name: ours, flat: 4 mm}")
	}
	return LevelRule{Name: f.Named.text}
}

func (f *OwnLevelRule) rule(b *builder) LevelRule {
	r := LevelRule{Name: f.Name.text, Flat: b.length(f.Flat, positive), PerRootKM: b.length(f.PerRootKM, positive), Source: f.Source.text}
	if f.Flat.given() == f.PerRootKM.given() {
		b.fault(f.Name.at, "one-of", "a rule for loops of levels has one figure", "flat, or per_root_km")
	}
	if f.Name.given() && f.Name.text == "" {
		b.fault(f.Name.at, "empty", "a rule without a name", f.Name.expects())
	}
	if r.Source == "" {
		r.Source = "this book, no source"
	}
	return r
}

func (w *writer) levelRule(r LevelRule) {
	if r.Flat == 0 && r.PerRootKM == 0 {
		w.text("level_loop", r.Name)
		return
	}
	w.open("level_loop")
	w.text("name", r.Name)
	w.length("flat", r.Flat)
	w.length("per_root_km", r.PerRootKM)
	w.text("source", r.Source)
	w.close()
}
