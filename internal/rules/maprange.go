package rules

import (
	"go/ast"
	"go/token"
	"go/types"
	"regexp"
	"strings"
)

var orderFree = regexp.MustCompile(`^//\s*order-free:\s*\S`)

// orderedMaps flags a range over a map, and maps.Keys, Values and All, unless the order cannot
// reach anything: the loop only deletes, or only collects into slices that the next statements
// sort; the iterator goes straight into slices.Sorted; or a comment on the line gives the
// reason: // order-free: reason.
func orderedMaps(p *Package) []string {
	var out []string
	for _, f := range p.Files {
		excused := p.excused(f)
		sorted := p.sortedIterators(f)
		flag := func(n ast.Node, what string) {
			if !excused[p.Fset.Position(n.Pos()).Line] {
				out = append(out, p.at(n, "%s, whose order changes from run to run", what))
			}
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BlockStmt:
				p.eachLoop(n.List, flag)
			case *ast.CaseClause:
				p.eachLoop(n.Body, flag)
			case *ast.CommClause:
				p.eachLoop(n.Body, flag)
			case *ast.CallExpr:
				if p.isIterator(n) && !sorted[n] {
					flag(n, "an iterator over a map")
				}
			}
			return true
		})
	}
	return out
}

// excused are the lines that carry an order-free comment.
func (p *Package) excused(f *ast.File) map[int]bool {
	lines := map[int]bool{}
	for _, g := range f.Comments {
		for _, c := range g.List {
			if orderFree.MatchString(c.Text) {
				lines[p.Fset.Position(c.Pos()).Line] = true
			}
		}
	}
	return lines
}

func (p *Package) eachLoop(list []ast.Stmt, flag func(ast.Node, string)) {
	for i, s := range list {
		if l, ok := s.(*ast.LabeledStmt); ok {
			s = l.Stmt
		}
		loop, ok := s.(*ast.RangeStmt)
		if !ok || !isMap(p.Info.TypeOf(loop.X)) {
			continue
		}
		if loop.Key == nil && loop.Value == nil {
			continue // a count
		}
		filled := map[string]bool{}
		if onlyCollects(loop.Body.List, filled) && p.sortedNext(list[i+1:], filled) {
			continue
		}
		flag(loop, "a range over a map")
	}
}

func isMap(t types.Type) bool {
	if t == nil {
		return false
	}
	if param, ok := t.(*types.TypeParam); ok {
		core, _ := param.Constraint().Underlying().(*types.Interface)
		for i := 0; core != nil && i < core.NumEmbeddeds(); i++ {
			if u, ok := core.EmbeddedType(i).(*types.Union); ok && u.Len() > 0 {
				return isMap(u.Term(0).Type())
			}
		}
		return false
	}
	_, ok := t.Underlying().(*types.Map)
	return ok
}

// onlyCollects says that the statements only delete from maps and append to the slices that it
// notes in filled, under conditions or not.
func onlyCollects(list []ast.Stmt, filled map[string]bool) bool {
	for _, s := range list {
		switch s := s.(type) {
		case *ast.IfStmt:
			if s.Init != nil || s.Else != nil || !onlyCollects(s.Body.List, filled) {
				return false
			}
		case *ast.BranchStmt:
			if s.Tok != token.CONTINUE {
				return false
			}
		case *ast.ExprStmt:
			if name, _ := called(s.X); name != "delete" {
				return false
			}
		case *ast.AssignStmt:
			to, ok := appended(s)
			if !ok {
				return false
			}
			filled[to] = true
		default:
			return false
		}
	}
	return true
}

// appended is x in `x = append(x, …)`.
func appended(s *ast.AssignStmt) (string, bool) {
	if s.Tok != token.ASSIGN || len(s.Lhs) != 1 || len(s.Rhs) != 1 {
		return "", false
	}
	name, args := called(s.Rhs[0])
	if name != "append" || len(args) < 2 {
		return "", false
	}
	to := types.ExprString(s.Lhs[0])
	return to, to == types.ExprString(args[0])
}

// sortedNext says that the statements begin by sorting every slice named.
func (p *Package) sortedNext(list []ast.Stmt, names map[string]bool) bool {
	left := len(names)
	for _, s := range list {
		if left == 0 {
			break
		}
		e, ok := s.(*ast.ExprStmt)
		if !ok {
			return false
		}
		name, args := called(e.X)
		sorts := strings.HasPrefix(name, "sort.") || strings.HasPrefix(name, "slices.Sort")
		if !sorts || len(args) == 0 || !names[types.ExprString(args[0])] {
			return false
		}
		left--
	}
	return left == 0
}

func called(e ast.Expr) (name string, args []ast.Expr) {
	c, ok := e.(*ast.CallExpr)
	if !ok {
		return "", nil
	}
	return types.ExprString(c.Fun), c.Args
}

func (p *Package) isIterator(c *ast.CallExpr) bool {
	s, ok := c.Fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	fn, ok := p.Info.Uses[s.Sel].(*types.Func)
	return ok && fn.Pkg() != nil && fn.Pkg().Path() == "maps" &&
		(fn.Name() == "Keys" || fn.Name() == "Values" || fn.Name() == "All")
}

// sortedIterators are the calls that stand as the argument of slices.Sorted and its kind.
func (p *Package) sortedIterators(f *ast.File) map[*ast.CallExpr]bool {
	out := map[*ast.CallExpr]bool{}
	ast.Inspect(f, func(n ast.Node) bool {
		if e, ok := n.(ast.Expr); ok {
			if name, args := called(e); strings.HasPrefix(name, "slices.Sorted") && len(args) > 0 {
				if c, ok := args[0].(*ast.CallExpr); ok {
					out[c] = true
				}
			}
		}
		return true
	})
	return out
}
