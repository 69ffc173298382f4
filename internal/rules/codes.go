package rules

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
	"strconv"
)

// codeUse is a finding code met in the tree.
type codeUse struct{ code, where string }

// Codes compares the codes of the findings made in the packages with the closed list: codes
// that are not listed, codes listed and never used, and findings whose code the source does not
// show. A code may be handed on through a parameter; then the calls are looked at.
func Codes(listed []string, packages []*Package) []string {
	var out []string
	used := map[string]bool{}
	for _, p := range packages {
		uses, faults := findingCodes(p)
		out = append(out, faults...)
		for _, u := range uses {
			used[u.code] = true
			if !slices.Contains(listed, u.code) {
				out = append(out, fmt.Sprintf("%s: code %q is not in finding.Codes", u.where, u.code))
			}
		}
	}
	for _, code := range listed {
		if !used[code] {
			out = append(out, fmt.Sprintf("finding.Codes: %q is used nowhere", code))
		}
	}
	return out
}

// ListedCodes reads the first field of each element of the variable Codes of package finding.
func ListedCodes(p *Package) []string {
	var out []string
	for _, f := range p.Files {
		ast.Inspect(f, func(n ast.Node) bool {
			v, ok := n.(*ast.ValueSpec)
			if !ok || len(v.Names) != 1 || v.Names[0].Name != "Codes" || len(v.Values) != 1 {
				return true
			}
			list, _ := v.Values[0].(*ast.CompositeLit)
			for _, e := range list.Elts {
				if c, ok := e.(*ast.CompositeLit); ok && len(c.Elts) > 0 {
					if code, ok := p.text(codeOf(c)); ok {
						out = append(out, code)
					}
				}
			}
			return false
		})
	}
	return out
}

// slot is a parameter of a function: the function's name and the parameter's place.
type slot struct {
	fn    types.Object
	place int
}

// findingCodes are the codes of the findings made in p.
func findingCodes(p *Package) (uses []codeUse, faults []string) {
	c := collector{p: p, params: p.params(), values: p.values(), handed: map[slot]bool{}}
	p.inspect(func(n ast.Node) {
		if l, ok := n.(*ast.CompositeLit); ok && len(l.Elts) > 0 && isFinding(p.Info.TypeOf(l)) {
			c.take(l, codeOf(l))
		}
	})
	// A function that takes a code may be called by another that takes one: look until no
	// further call is found.
	seen := map[ast.Node]bool{}
	for again := true; again; {
		again = false
		p.inspect(func(n ast.Node) {
			call, ok := n.(*ast.CallExpr)
			if !ok || seen[call] {
				return
			}
			for i, a := range call.Args {
				if c.handed[slot{p.callee(call), i}] {
					seen[call], again = true, true
					c.take(call, a)
				}
			}
		})
	}
	return c.uses, c.faults
}

// collector gathers codes; handed are the parameters known to take one.
type collector struct {
	p      *Package
	params map[types.Object]slot
	values map[types.Object][]ast.Expr
	handed map[slot]bool
	uses   []codeUse
	faults []string
}

// take notes the code that e stands for: a constant, a parameter, or a local variable that is
// only given these.
func (c *collector) take(n ast.Node, e ast.Expr) {
	if e == nil {
		return
	}
	if code, ok := c.p.text(e); ok {
		c.uses = append(c.uses, codeUse{code, c.p.at(n, "finding")})
		return
	}
	if id, ok := e.(*ast.Ident); ok {
		o := c.p.Info.Uses[id]
		if s, ok := c.params[o]; ok && s.fn != nil {
			c.handed[s] = true
			return
		}
		if given := c.values[o]; len(given) > 0 {
			c.values[o] = nil // each once, so that x = x ends
			for _, v := range given {
				c.take(v, v)
			}
			return
		}
		if _, done := c.values[o]; done {
			return
		}
	}
	c.faults = append(c.faults, c.p.at(n, "a finding whose code the source does not show"))
}

func isFinding(t types.Type) bool {
	n, ok := t.(*types.Named)
	return ok && n.Obj().Name() == "Finding" && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == module+"/finding"
}

// codeOf is the value of the field Code of a literal: by its key, else the first.
func codeOf(c *ast.CompositeLit) ast.Expr {
	for i, e := range c.Elts {
		kv, ok := e.(*ast.KeyValueExpr)
		if !ok && i == 0 {
			return e
		}
		if !ok {
			continue
		}
		if key, named := kv.Key.(*ast.Ident); named && key.Name == "Code" {
			return kv.Value
		}
	}
	return nil
}

// text is the value of a constant text.
func (p *Package) text(e ast.Expr) (string, bool) {
	if e == nil {
		return "", false
	}
	if v := p.Info.Types[e].Value; v != nil && v.Kind() == constant.String {
		return constant.StringVal(v), true
	}
	if l, ok := e.(*ast.BasicLit); ok && l.Kind == token.STRING {
		s, err := strconv.Unquote(l.Value)
		return s, err == nil
	}
	return "", false
}
