//go:build validator

package glb_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"brimline/write/glb"
)

// report is what the validator answers.
type report struct {
	Issues struct {
		NumErrors, NumWarnings, NumInfos, NumHints int
		Messages                                   []struct{ Code, Message, Pointer string }
	}
	Info struct {
		TotalVertexCount, TotalTriangleCount, DrawCallCount int
	}
}

// The validator of the Khronos Group (npm package gltf-validator) finds nothing to say of any file. It
// needs node and a package, so it is asked for: make validate.
func TestValidator(t *testing.T) {
	const dir = "testdata/validate"
	node, err := exec.LookPath("node")
	if err == nil {
		_, err = os.Stat(filepath.Join(dir, "node_modules/gltf-validator"))
	}
	if err != nil {
		t.Fatalf("the validator is missing (npm ci in write/glb/%s): %v", dir, err)
	}
	scenes := []glb.Scene{box(0, 0, 0), box(412345.125, -5612345.5, 812.25), {}, {Title: "\x00 \xff 漢字 \"quoted\""}}
	args := []string{filepath.Join(dir, "validate.cjs")}
	for i, s := range scenes {
		name := filepath.Join(t.TempDir(), string(rune('a'+i))+".glb")
		if err := os.WriteFile(name, written(t, s), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, name)
	}
	out, err := exec.Command(node, args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	var answers []report
	if err := json.Unmarshal(out, &answers); err != nil {
		t.Fatal(err)
	}
	for i, a := range answers {
		if n := a.Issues; n.NumErrors+n.NumWarnings+n.NumInfos+n.NumHints > 0 {
			t.Errorf("file %d: %v", i, n.Messages)
		}
	}
	if in := answers[0].Info; in.TotalTriangleCount != 12 || in.TotalVertexCount != 12 || in.DrawCallCount != 2 {
		t.Errorf("the validator counts %+v", in)
	}
}
