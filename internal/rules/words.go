package rules

import (
	"go/ast"
	"go/token"
	"regexp"
	"strconv"
)

// The tool informs and licensed people decide: these words are never printed.
var verdicts = regexp.MustCompile(`(?i)\b(safe|compliant|certified)\b`)

// noVerdicts looks at the string literals of everything but the rules themselves. Import paths
// are no print.
func noVerdicts(p *Package) []string {
	var out []string
	for _, f := range p.All() {
		ast.Inspect(f, func(n ast.Node) bool {
			if _, ok := n.(*ast.ImportSpec); ok {
				return false
			}
			l, ok := n.(*ast.BasicLit)
			if !ok || l.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(l.Value)
			if err != nil {
				text = l.Value
			}
			if w := verdicts.FindString(text); w != "" {
				out = append(out, p.at(l, "the word %q in a text", w))
			}
			return true
		})
	}
	return out
}
