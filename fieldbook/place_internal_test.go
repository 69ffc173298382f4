package fieldbook

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// places walks a tree and checks that each plain value and key stands where its place says.
func places(t *testing.T, s *source, n *node) {
	t.Helper()
	check := func(at place, text string) {
		word, _, _ := strings.Cut(text, "\n")
		word, _, _ = strings.Cut(word, " ")
		rest := strings.TrimLeft(string(s.bytes[s.offset(at):]), `"'`)
		if !strings.HasPrefix(rest, word) {
			t.Errorf("%q is not at %v, where %.20q stands", text, at, rest)
		}
	}
	if n.shape == single && n.plain {
		check(n.at, n.text)
	}
	if n.flow && s.bytes[s.offset(n.end)] != ']' && s.bytes[s.offset(n.end)] != '}' {
		t.Errorf("no bracket at %v", n.end)
	}
	for _, p := range n.pairs {
		if !strings.Contains(p.key, `"`) {
			check(p.at, p.key)
		}
		places(t, s, p.value)
	}
	for _, it := range n.items {
		places(t, s, it)
	}
}

// Every place that the YAML library reports is where the text stands, with either line end.
func TestPlaces(t *testing.T) {
	files, err := filepath.Glob("testdata/good/*")
	if err != nil || len(files) == 0 {
		t.Fatal("no good books")
	}
	texts := []string{
		"a: \"x\\n y\n\n   z\" # c\nb: 'it''s\n\n  so'\nc: {d: \"\\\"\", e: 1}\n",
		"a: >-\n  x\n\n   y\n\n\n# c\n\nb: |+\n  x\n\n\nc: d\n",
		"# é\n\n\na:   # é\n  - b: x y\n      z\n    c: ü\n\n  # d\n  -   - e\n      - f\nb: [\n  x,  # c\n  y\n\n  ,]\n",
		"a: [{b: c}, [d, [e]]]   \n\n\n\nb:    \"x\"   \n", "a: x\n  # c\nb: y # d\n\n# e\nc: z",
		"a:\n\n\n\n    b\nc: |2\n    x\n   y\n\nd: e\n", "a: x\n\n\n  y\n\nb: z\n", "a: 'x'\n\n\nb: \"y\n\n\n  z\"\nc: d\n",
	}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, strings.TrimPrefix(string(src), "\ufeff"))
	}
	for _, text := range texts {
		for _, eol := range []string{"\n", "\r\n"} {
			s := newSource([]byte(strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\n", eol)))
			root, fs := s.tree()
			if len(fs) > 0 {
				t.Errorf("%q: %v", s.bytes, fs)
				continue
			}
			places(t, s, root)
		}
	}
}
