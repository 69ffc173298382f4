package rules

import (
	"bytes"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// emptyNames say nothing of what a package holds.
var emptyNames = []string{"util", "utils", "common", "manager", "managers", "helper", "helpers", "misc"}

// goodName wants a noun of the trade.
func goodName(p *Package) []string {
	names := []string{path.Base(p.Path)}
	for _, f := range p.All() {
		names = append(names, f.Name.Name)
	}
	for _, n := range names {
		if slices.Contains(emptyNames, strings.ToLower(n)) {
			return []string{fmt.Sprintf("%s: the name %s says nothing", p.Path, n)}
		}
	}
	return nil
}

// Unformatted are the Go files at and below root that gofmt would change.
func Unformatted(root string) ([]string, error) {
	var out []string
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "node_modules" || d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && name != root):
			return filepath.SkipDir
		case d.IsDir() || !strings.HasSuffix(name, ".go"):
			return nil
		}
		src, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		if fault := unformatted(src); fault != "" {
			rel, _ := filepath.Rel(root, name)
			out = append(out, rel+": "+fault)
		}
		return nil
	})
	return out, err
}

// unformatted says what gofmt would say; empty when nothing.
func unformatted(src []byte) string {
	good, err := format.Source(src)
	switch {
	case err != nil:
		return err.Error()
	case !bytes.Equal(good, src):
		return "not formatted by gofmt"
	}
	return ""
}
