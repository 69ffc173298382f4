package rules

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"
)

// pure says that the rules of purity hold for the package: not for the shells (cmd, web), not
// for store, whose work is keeping bytes, and not for what serves tests and benchmarks.
func pure(path string) bool {
	return !slices.ContainsFunc([]string{"cmd/*", "web", "store/*", "internal/*", "bench/*"}, func(s string) bool { return matches(s, path) })
}

// barred are the packages that reach files, the net, or a log.
var barred = []string{"os", "io/fs", "io/ioutil", "syscall", "net", "net/http", "log", "log/slog", "crypto/rand"}

func noOutsideWorld(p *Package) []string {
	var out []string
	for _, f := range p.All() {
		for _, s := range f.Imports {
			path := strings.Trim(s.Path.Value, `"`)
			if slices.ContainsFunc(barred, func(b string) bool { return path == b || strings.HasPrefix(path, b+"/") }) {
				out = append(out, p.at(s, "imports %s below the shells", path))
			}
		}
	}
	return out
}

// clocks are the functions of package time that look at a clock or wait for one.
var clocks = []string{"Now", "Since", "Until", "After", "AfterFunc", "Tick", "Sleep", "NewTimer", "NewTicker"}

// noClockNoChance bars clocks, and random numbers that are not made from a source given.
func noClockNoChance(p *Package) []string {
	var out []string
	for _, f := range p.Files {
		ast.Inspect(f, func(n ast.Node) bool {
			id, ok := n.(*ast.Ident)
			if !ok {
				return true
			}
			fn, ok := p.Info.Uses[id].(*types.Func)
			if !ok || fn.Pkg() == nil || fn.Signature().Recv() != nil {
				return true
			}
			switch fn.Pkg().Path() {
			case "time":
				if slices.Contains(clocks, fn.Name()) {
					out = append(out, p.at(id, "time.%s below the shells", fn.Name()))
				}
			case "math/rand", "math/rand/v2":
				if !strings.HasPrefix(fn.Name(), "New") {
					out = append(out, p.at(id, "rand.%s without a seed given", fn.Name()))
				}
			}
			return true
		})
	}
	return out
}

// noInitNoGoto bars functions that run by themselves, and jumps.
func noInitNoGoto(p *Package) []string {
	var out []string
	for _, f := range p.All() {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				if n.Recv == nil && n.Name.Name == "init" {
					out = append(out, p.at(n, "a function init"))
				}
			case *ast.BranchStmt:
				if n.Tok == token.GOTO {
					out = append(out, p.at(n, "a goto"))
				}
			}
			return true
		})
	}
	return out
}
