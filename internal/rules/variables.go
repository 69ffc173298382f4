package rules

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"
)

// fixedVariables flags whatever could change a package-level variable after its declaration:
// assignment to it or to a part of it, ++ and --, its address, a method that takes its address,
// and the built-in and library functions that write into their first argument.
func fixedVariables(p *Package) []string {
	var out []string
	flag := func(n ast.Node, e ast.Expr, how string) {
		if v := p.packageVar(e); v != nil {
			out = append(out, p.at(n, "package-level %s is %s", v.Name(), how))
		}
	}
	for _, f := range p.Files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.AssignStmt:
				if n.Tok != token.DEFINE {
					for _, e := range n.Lhs {
						flag(n, e, "assigned")
					}
				}
			case *ast.IncDecStmt:
				flag(n, n.X, "assigned")
			case *ast.RangeStmt:
				if n.Tok == token.ASSIGN {
					flag(n, n.Key, "assigned")
					flag(n, n.Value, "assigned")
				}
			case *ast.UnaryExpr:
				if n.Op == token.AND {
					flag(n, n.X, "taken by its address")
				}
			case *ast.SelectorExpr:
				if p.takesAddress(n) {
					flag(n, n.X, "handed to a method that may change it")
				}
			case *ast.CallExpr:
				if p.writesFirst(n) {
					flag(n, n.Args[0], "handed to a function that changes it")
				}
			}
			return true
		})
	}
	return out
}

// packageVar is the package-level variable, of whatever package, that e is a part of.
func (p *Package) packageVar(e ast.Expr) *types.Var {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return packageLevel(p.Info.Uses[x])
		case *ast.SelectorExpr:
			if v := packageLevel(p.Info.Uses[x.Sel]); v != nil {
				return v
			}
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.SliceExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}

func packageLevel(o types.Object) *types.Var {
	v, ok := o.(*types.Var)
	if !ok || v.IsField() || v.Pkg() == nil || v.Parent() != v.Pkg().Scope() {
		return nil
	}
	return v
}

// takesAddress says that the method chosen has a pointer receiver and is chosen on a value.
func (p *Package) takesAddress(s *ast.SelectorExpr) bool {
	sel := p.Info.Selections[s]
	if sel == nil || sel.Kind() != types.MethodVal {
		return false
	}
	_, needs := sel.Obj().(*types.Func).Signature().Recv().Type().(*types.Pointer)
	_, has := sel.Recv().Underlying().(*types.Pointer)
	return needs && !has
}

// writesFirst says that the function called writes into its first argument.
func (p *Package) writesFirst(c *ast.CallExpr) bool {
	if len(c.Args) == 0 {
		return false
	}
	switch f := c.Fun.(type) {
	case *ast.Ident:
		_, builtin := p.Info.Uses[f].(*types.Builtin)
		return builtin && slices.Contains([]string{"copy", "delete", "clear"}, f.Name)
	case *ast.SelectorExpr:
		fn, ok := p.Info.Uses[f.Sel].(*types.Func)
		if !ok || fn.Pkg() == nil {
			return false
		}
		switch fn.Pkg().Path() {
		case "sort":
			return !strings.HasPrefix(fn.Name(), "Search") && !strings.HasSuffix(fn.Name(), "AreSorted") && fn.Name() != "IsSorted"
		case "slices":
			return strings.HasPrefix(fn.Name(), "Sort") && !strings.HasPrefix(fn.Name(), "Sorted") ||
				slices.Contains([]string{"Reverse", "Delete", "DeleteFunc", "Replace", "Compact", "CompactFunc"}, fn.Name())
		case "maps":
			return fn.Name() == "Copy" || fn.Name() == "DeleteFunc" || fn.Name() == "Insert"
		}
	}
	return false
}
