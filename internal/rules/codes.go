package rules

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"sort"
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
			if !contains(listed, u.code) {
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

// findingCodes are the codes of the findings made in p.
func findingCodes(p *Package) (uses []codeUse, faults []string) {
	handed := map[types.Object]int{} // function: which parameter is a code
	each := func(n ast.Node, e ast.Expr, in *ast.FuncType, fn types.Object) {
		if code, ok := p.text(e); ok {
			uses = append(uses, codeUse{code, p.at(n, "finding")})
		} else if i := p.parameter(e, in); i >= 0 && fn != nil {
			handed[fn] = i
		} else if e != nil {
			faults = append(faults, p.at(n, "a finding whose code the source does not show"))
		}
	}
	for _, f := range p.Files {
		for _, d := range f.Decls {
			in, fn := signature(p, d)
			ast.Inspect(d, func(n ast.Node) bool {
				if c, ok := n.(*ast.CompositeLit); ok && len(c.Elts) > 0 && isFinding(p.Info.TypeOf(c)) {
					each(c, codeOf(c), in, fn)
				}
				return true
			})
		}
	}
	// A function that hands its parameter on may be called by another that does.
	for known := -1; known != len(handed); {
		known = len(handed)
		for _, c := range p.callsOf(handed) {
			if p.parameter(c.arg, c.in) >= 0 && c.fn != nil {
				handed[c.fn] = p.parameter(c.arg, c.in)
			}
		}
	}
	for _, c := range p.callsOf(handed) {
		if p.parameter(c.arg, c.in) < 0 || c.fn == nil {
			each(c.call, c.arg, nil, nil)
		}
	}
	sort.Slice(uses, func(i, j int) bool { return uses[i].where < uses[j].where })
	return uses, faults
}

// handOver is a call of a function that takes a code, and the function it stands in.
type handOver struct {
	call *ast.CallExpr
	arg  ast.Expr
	in   *ast.FuncType
	fn   types.Object
}

func (p *Package) callsOf(handed map[types.Object]int) []handOver {
	var out []handOver
	for _, f := range p.Files {
		for _, d := range f.Decls {
			in, fn := signature(p, d)
			ast.Inspect(d, func(n ast.Node) bool {
				c, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				if i, ok := handed[p.callee(c)]; ok && i < len(c.Args) {
					out = append(out, handOver{c, c.Args[i], in, fn})
				}
				return true
			})
		}
	}
	return out
}

func (p *Package) callee(c *ast.CallExpr) types.Object {
	switch f := c.Fun.(type) {
	case *ast.Ident:
		return p.Info.Uses[f]
	case *ast.SelectorExpr:
		return p.Info.Uses[f.Sel]
	}
	return nil
}

func signature(p *Package, d ast.Decl) (*ast.FuncType, types.Object) {
	if f, ok := d.(*ast.FuncDecl); ok {
		return f.Type, p.Info.Defs[f.Name]
	}
	return nil, nil
}

// parameter is the place of e among the parameters, −1 when it is none.
func (p *Package) parameter(e ast.Expr, in *ast.FuncType) int {
	id, ok := e.(*ast.Ident)
	if !ok || in == nil {
		return -1
	}
	i := 0
	for _, field := range in.Params.List {
		for _, name := range field.Names {
			if p.Info.Defs[name] != nil && p.Info.Defs[name] == p.Info.Uses[id] {
				return i
			}
			i++
		}
	}
	return -1
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

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
