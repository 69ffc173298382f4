package checks

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every item on least squares, reliability and tests is asked for by a test somewhere in the tree;
// so is the level loop L-02, a level net of one loop.
func TestLeastSquaresItemsAreRun(t *testing.T) {
	asked := map[string]string{}
	id := regexp.MustCompile(`checks\.Get\(t, "([A-Z]+-[0-9]+)"\)`)
	err := filepath.WalkDir(root(t), func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		src, err := os.ReadFile(path)
		for _, m := range id.FindAllSubmatch(src, -1) {
			asked[string(m[1])] = path
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range Load(t) {
		if !strings.HasPrefix(i.Topic, "1 ") && i.ID != "L-02" {
			continue
		}
		if asked[i.ID] == "" {
			t.Errorf("%s (%s) is asked for by no test; source: %s (%s)", i.ID, i.Title, i.Source, i.Status)
		}
	}
}
