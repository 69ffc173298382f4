package rules

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strings"
)

const module = "brimline"

// Package is one package of the module with its syntax and types. Path is relative to the
// module ("write/pdf"); Imports and TestImports are the module's own, relative too.
type Package struct {
	Path                 string
	Fset                 *token.FileSet
	Files                []*ast.File // built here, with types
	Tagged               []*ast.File // left out by build tags, without types
	Imports, TestImports []string
	Info                 *types.Info
	Types                *types.Package
	Faults               []string // what did not parse or type-check
}

// Tree is the module: its packages in the order of their paths, and what is needed to check
// further sources as if they stood in it.
type Tree struct {
	Root     string
	Packages []*Package
	exports  map[string]string
}

// planted lists what planted sources may import beyond what the tree itself uses.
var planted = []string{"maps", "slices", "sort", "sync", "time", "os", "math/rand", "math/rand/v2"}

// listed is what `go list` is asked for.
type listed struct {
	ImportPath, Dir, Export            string
	GoFiles, IgnoredGoFiles            []string
	Imports, TestImports, XTestImports []string
	Module                             *struct{ Path string }
	Error                              *struct{ Err string }
}

// Load asks `go list` for the packages at and below root, the folder of go.mod, and reads them.
// Types of imported packages come from the build cache.
func Load(root string) (*Tree, error) {
	args := []string{"list", "-e", "-export", "-deps",
		"-json=ImportPath,Dir,Export,GoFiles,IgnoredGoFiles,Imports,TestImports,XTestImports,Module,Error", "./..."}
	cmd := exec.Command("go", append(args, planted...)...)
	cmd.Dir = root
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, stderr.String())
	}
	t := &Tree{Root: root, exports: map[string]string{}}
	var own []listed
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var l listed
		if err := dec.Decode(&l); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, fmt.Errorf("go list: %w", err)
		}
		t.exports[l.ImportPath] = l.Export
		if l.Module != nil && l.Module.Path == module {
			own = append(own, l)
		}
	}
	sort.Slice(own, func(i, j int) bool { return own[i].ImportPath < own[j].ImportPath })
	for _, l := range own {
		t.Packages = append(t.Packages, t.read(l))
	}
	return t, nil
}

func (t *Tree) read(l listed) *Package {
	p := &Package{Path: relative(l.ImportPath), Fset: token.NewFileSet()}
	if l.Error != nil {
		p.Faults = append(p.Faults, l.Error.Err)
	}
	for i, names := range [][]string{l.GoFiles, l.IgnoredGoFiles} {
		for _, name := range names {
			if i == 1 && strings.HasSuffix(name, "_test.go") {
				continue
			}
			src, err := os.ReadFile(filepath.Join(l.Dir, name))
			if err == nil {
				err = p.add(filepath.ToSlash(filepath.Join(p.Path, name)), src, i == 1)
			}
			if err != nil {
				p.Faults = append(p.Faults, err.Error())
			}
		}
	}
	p.TestImports = ours(append(l.TestImports, l.XTestImports...))
	t.finish(p)
	return p
}

func (p *Package) add(name string, src []byte, tagged bool) error {
	f, err := parser.ParseFile(p.Fset, name, src, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	if tagged {
		p.Tagged = append(p.Tagged, f)
	} else {
		p.Files = append(p.Files, f)
	}
	return nil
}

// finish finds the imports and the types of the files read.
func (t *Tree) finish(p *Package) {
	var imports []string
	for _, f := range p.All() {
		for _, s := range f.Imports {
			imports = append(imports, strings.Trim(s.Path.Value, `"`))
		}
	}
	p.Imports = ours(imports)
	p.Info = &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{},
		Defs: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{},
	}
	conf := types.Config{
		Importer: importer.ForCompiler(p.Fset, "gc", t.open),
		Error:    func(err error) { p.Faults = append(p.Faults, err.Error()) },
	}
	p.Types, _ = conf.Check(module+"/"+p.Path, p.Fset, p.Files, p.Info) // faults go to conf.Error
}

func (t *Tree) open(path string) (io.ReadCloser, error) {
	if t.exports[path] == "" {
		return nil, fmt.Errorf("%s did not build", path)
	}
	return os.Open(t.exports[path])
}

// Plant is a package as if it stood in the tree at path, made of one source.
func (t *Tree) Plant(path, src string) *Package {
	p := &Package{Path: path, Fset: token.NewFileSet()}
	if err := p.add(path+"/planted.go", []byte(src), false); err != nil {
		p.Faults = append(p.Faults, err.Error())
	}
	t.finish(p)
	return p
}

// All are the files with and without types.
func (p *Package) All() []*ast.File { return append(p.Files[:len(p.Files):len(p.Files)], p.Tagged...) }

// at is a breach of a rule with its place.
func (p *Package) at(n ast.Node, format string, a ...any) string {
	pos := p.Fset.Position(n.Pos())
	return fmt.Sprintf("%s:%d: %s", pos.Filename, pos.Line, fmt.Sprintf(format, a...))
}

func relative(path string) string {
	return strings.TrimPrefix(strings.TrimPrefix(path, module), "/")
}

// ours are the imports of the module itself, relative, each once, in order.
func ours(imports []string) []string {
	var out []string
	sort.Strings(imports)
	for _, path := range imports {
		r := relative(path)
		if r != path && (len(out) == 0 || out[len(out)-1] != r) {
			out = append(out, r)
		}
	}
	return out
}
