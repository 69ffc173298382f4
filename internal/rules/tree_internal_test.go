package rules

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
)

var tree = sync.OnceValues(func() (*Tree, error) { return Load(filepath.Join("..", "..")) })

func loaded(t *testing.T) *Tree {
	t.Helper()
	tr, err := tree()
	if err != nil {
		t.Fatal(err)
	}
	return tr
}

func TestRules(t *testing.T) {
	tr := loaded(t)
	if len(tr.Packages) < 8 {
		t.Fatalf("only %d packages found", len(tr.Packages))
	}
	for _, r := range Rules {
		t.Run(r.Name, func(t *testing.T) {
			for _, p := range tr.Packages {
				if !r.For(p.Path) {
					continue
				}
				for _, breach := range r.Check(p) {
					t.Error(breach)
				}
			}
		})
	}
}

func TestFindingCodes(t *testing.T) {
	tr := loaded(t)
	var listed []string
	var others []*Package
	for _, p := range tr.Packages {
		if p.Path == "finding" {
			listed = ListedCodes(p)
		} else {
			others = append(others, p)
		}
	}
	if len(listed) < 10 {
		t.Fatalf("only %d codes read from package finding", len(listed))
	}
	for _, breach := range Codes(listed, others) {
		t.Error(breach)
	}
}

func TestFormatted(t *testing.T) {
	files, err := Unformatted(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		t.Error(f)
	}
	dir := t.TempDir()
	for name, src := range map[string]string{"bad.go": "package  x\n", "worse.go": "package", "good.go": "package x\n", "note.txt": "package  x"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if files, _ := Unformatted(dir); len(files) != 2 {
		t.Errorf("planted: %v", files)
	}
}
