package checks

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every item on least squares, circles and curves, areas and perimeters, and parallels is asked for by
// a test somewhere in the tree; so are levelling and taping. C-07 asks for the
// least ellipse of several through points far off it, P-03 for weights that are not used here, L-05 for
// the curvature of the earth, 0.06 mm over 30 m of sight.
func TestItemsAreRun(t *testing.T) {
	asked := map[string]string{}
	id := regexp.MustCompile(`"([A-Z]+-[0-9]+)"`)
	reader := []byte("/internal/checks\"")
	err := filepath.WalkDir(root(t), func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		src, err := os.ReadFile(path)
		if !bytes.Contains(src, reader) {
			return err
		}
		for _, m := range id.FindAllSubmatch(src, -1) {
			asked[string(m[1])] = path
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range Load(t) {
		topic, _, _ := strings.Cut(i.Topic, " ")
		if !strings.Contains("1 2 3 7 9", topic) || i.ID == "C-07" || i.ID == "P-03" || i.ID == "L-05" {
			continue
		}
		if asked[i.ID] == "" {
			t.Errorf("%s (%s) is asked for by no test; source: %s (%s)", i.ID, i.Title, i.Source, i.Status)
		}
	}
}
