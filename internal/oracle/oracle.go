// Package oracle asks a Python library, for tests, what it makes of the same data: a second
// method written by others.
package oracle

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Ask runs script with a Python that can import modules, gives it in as JSON on standard input
// and reads out as JSON from its standard output. Without such a Python the test is skipped,
// or fails where FULL=1 is set. A script that fails, fails the test.
func Ask(t testing.TB, script string, modules []string, in, out any) {
	t.Helper()
	python := find(modules)
	if python == "" {
		if os.Getenv("FULL") == "1" {
			t.Fatalf("no python3 that can import %v", modules)
		}
		t.Skipf("no python3 that can import %v", modules)
	}
	src, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, script)
	var stdout, stderr bytes.Buffer
	cmd.Stdin, cmd.Stdout, cmd.Stderr = bytes.NewReader(src), &stdout, &stderr
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s: %v\n%s", script, err, stderr.String())
	}
	if err := json.Unmarshal(stdout.Bytes(), out); err != nil {
		t.Fatalf("%s: %v", script, err)
	}
}

// find tries every python3 on PATH, then the system's own: another may stand first in PATH
// without the modules that the system's packages install.
func find(modules []string) string {
	dirs := append(filepath.SplitList(os.Getenv("PATH")), "/usr/bin")
	program := ""
	for _, m := range modules {
		program += "import " + m + "\n"
	}
	for _, d := range dirs {
		python := filepath.Join(d, "python3")
		if _, err := os.Stat(python); err != nil {
			continue
		}
		if exec.Command(python, "-c", program).Run() == nil {
			return python
		}
	}
	return ""
}
