package rules

import (
	"go/ast"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"brimline/fieldbook"
	"brimline/mistake"
	"brimline/network"
	"brimline/unit"
)

// same compares two lists as sets.
func same(t *testing.T, what string, got, want []string) {
	t.Helper()
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("%s: %q is missing", what, w)
		}
	}
	for i, g := range got {
		if !slices.Contains(want, g) {
			t.Errorf("%s: %q is too much", what, g)
		}
		if slices.Contains(got[:i], g) {
			t.Errorf("%s: %q stands twice", what, g)
		}
	}
}

// keysOf reads the keys of a map of texts declared at package level: the words that a package has
// for each member of a family.
func keysOf(t *testing.T, tr *Tree, path, name string) []string {
	t.Helper()
	var out []string
	for _, p := range tr.Packages {
		if p.Path != path {
			continue
		}
		p.inspect(func(n ast.Node) {
			v, ok := n.(*ast.ValueSpec)
			if !ok || len(v.Names) != 1 || v.Names[0].Name != name || len(v.Values) != 1 {
				return
			}
			list, _ := v.Values[0].(*ast.CompositeLit)
			for _, e := range list.Elts {
				if kv, ok := e.(*ast.KeyValueExpr); ok {
					if key, ok := p.text(kv.Key); ok {
						out = append(out, key)
					}
				}
			}
		})
	}
	if len(out) == 0 {
		t.Fatalf("%s has no list %s", path, name)
	}
	return out
}

// Every kind of reading stands in fieldbook, in network, among the default precisions; what each
// asserts has a word in the drawing's table and in the answer's.
func TestReadingKindsAgree(t *testing.T) {
	var book, net, words, angles []string
	for _, k := range fieldbook.Kinds {
		book = append(book, k.Name())
		if fieldbook.Angular(k.Name()) {
			angles = append(angles, k.Name())
		}
	}
	for _, k := range network.Kinds {
		net = append(net, k.Name())
		_, asserted := k.(network.Asserted)
		if asserted != fieldbook.Asserted(k.Name()) {
			t.Errorf("%s: asserted in network %v, in fieldbook %v", k.Name(), asserted, !asserted)
		}
		if asserted {
			words = append(words, k.Name())
		}
	}
	same(t, "network.Kinds", net, book)
	var rows []string
	for _, d := range fieldbook.Defaults {
		if !slices.Contains(rows, d.Kind) {
			rows = append(rows, d.Kind)
		}
	}
	same(t, "fieldbook.Defaults", rows, book)
	tr := loaded(t)
	for _, path := range []string{"draft", "cmd/brimline/internal/answer"} {
		same(t, path+": words for what is asserted", keysOf(t, tr, path, "asserted"), words)
	}
	same(t, "kinds in docs/conventions.md", firstCells(t, "Kinds of reading"), book)
	same(t, "angles", angles, []string{"turn", "square"}) // the rest are lengths: draft and answer ask fieldbook.Angular
}

// section is a chapter of docs/conventions.md, without its heading.
func section(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "docs", "conventions.md"))
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`(?ms)^## ` + name + `\n(.*?)(^## |\z)`).FindSubmatch(text)
	if m == nil {
		t.Fatalf("docs/conventions.md has no chapter %q", name)
	}
	return string(m[1])
}

// firstCells are the codes in the first column of a chapter's tables.
func firstCells(t *testing.T, chapter string) []string {
	t.Helper()
	var out []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)` \\|").FindAllStringSubmatch(section(t, chapter), -1) {
		out = append(out, m[1])
	}
	return out
}

// Every mistake has its odds, may be set in a book, and is explained; single misreadings are of the
// list.
func TestMistakesAgree(t *testing.T) {
	var priors, readings []string
	for _, p := range mistake.Priors {
		priors = append(priors, p.Code)
		if p.Odds <= 0 || p.Odds >= 0.1 || p.Cause == "" || p.Source == "" {
			t.Errorf("%+v", p)
		}
		if p.Of == "reading" {
			readings = append(readings, p.Code)
		}
	}
	same(t, "mistake.Priors", priors, fieldbook.Mistakes)
	same(t, "mistakes in docs/conventions.md", firstCells(t, "Mistakes"), priors)
	var codes []string
	for _, m := range mistake.Misreadings {
		codes = append(codes, m.Code())
		if !slices.Contains(readings, m.Code()) {
			t.Errorf("%s is a misreading, but its odds are not those of a reading", m.Code())
		}
		if len(m.True("6.174", 6.174, unit.M))+len(m.True("6.17", 6.17*0.3048, unit.FT))+len(m.True("16.8", 16.8*0.3048, unit.FT)) == 0 {
			t.Errorf("%s answers nothing", m.Code())
		}
	}
	same(t, "codes of misreadings", slices.Compact(codes), codes)
}

// The odds printed in docs/conventions.md are those of the table.
func TestOddsAsWritten(t *testing.T) {
	text := section(t, "Mistakes")
	for _, p := range mistake.Priors {
		row := regexp.MustCompile("(?m)^\\| `" + regexp.QuoteMeta(p.Code) + "` \\|.*\\| " + regexp.QuoteMeta(odds(p.Odds)) + " a " + p.Of + " \\|$")
		if !row.MatchString(text) {
			t.Errorf("%s: no row with %s a %s", p.Code, odds(p.Odds), p.Of)
		}
	}
}

func odds(v float64) string { return strconv.FormatFloat(100*v, 'g', 4, 64) + " %" }
