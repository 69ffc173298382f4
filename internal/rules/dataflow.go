package rules

import (
	"go/ast"
	"go/types"
)

// params are the parameters of the package's functions, also of those kept in a variable.
func (p *Package) params() map[types.Object]slot {
	out := map[types.Object]slot{}
	note := func(name *ast.Ident, t *ast.FuncType) {
		i := 0
		for _, field := range t.Params.List {
			for _, param := range field.Names {
				fn := p.Info.Defs[name]
				if fn == nil {
					fn = p.Info.Uses[name]
				}
				out[p.Info.Defs[param]] = slot{fn, i}
				i++
			}
		}
	}
	p.inspect(func(n ast.Node) {
		switch n := n.(type) {
		case *ast.FuncDecl:
			note(n.Name, n.Type)
		case *ast.AssignStmt:
			for i, e := range n.Rhs {
				f, lit := e.(*ast.FuncLit)
				name, named := n.Lhs[min(i, len(n.Lhs)-1)].(*ast.Ident)
				if lit && named {
					note(name, f.Type)
				}
			}
		}
	})
	return out
}

func (p *Package) inspect(f func(ast.Node)) {
	for _, file := range p.Files {
		ast.Inspect(file, func(n ast.Node) bool {
			f(n)
			return true
		})
	}
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

// values are the expressions that the local variables of type string are given.
func (p *Package) values() map[types.Object][]ast.Expr {
	out := map[types.Object][]ast.Expr{}
	give := func(name ast.Expr, e ast.Expr) {
		id, ok := name.(*ast.Ident)
		if !ok {
			return
		}
		o := p.Info.Defs[id]
		if o == nil {
			o = p.Info.Uses[id]
		}
		if o != nil && types.Identical(o.Type(), types.Typ[types.String]) {
			out[o] = append(out[o], e)
		}
	}
	p.inspect(func(n ast.Node) {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for i := range n.Lhs {
				give(n.Lhs[i], n.Rhs[min(i, len(n.Rhs)-1)])
			}
		case *ast.ValueSpec:
			for i := range min(len(n.Names), len(n.Values)) {
				give(n.Names[i], n.Values[i])
			}
		}
	})
	return out
}
