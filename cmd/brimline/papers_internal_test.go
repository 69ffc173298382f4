package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"brimline/examples"
	"brimline/fieldbook"
)

// paper is what a page shows to be typed: a book, put together in the order of the page, and the
// commands.
type paper struct {
	book     string
	commands [][]string
}

// read takes the indented blocks of a page: commands, and pieces of a field book. What else stands
// indented (answers, make) is neither.
func (p *paper) read(t *testing.T, name string) {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("..", "..", name))
	if err != nil {
		t.Fatal(err)
	}
	inBook := false
	for _, l := range strings.Split(string(src), "\n") {
		text, ok := strings.CutPrefix(l, "    ")
		if !ok {
			inBook = false
			continue
		}
		if rest, ok := strings.CutPrefix(strings.TrimPrefix(text, "./"), "brimline "); ok {
			rest, _, _ = strings.Cut(rest, "#")
			p.commands = append(p.commands, strings.Fields(rest))
			continue
		}
		inBook = inBook || strings.HasPrefix(text, "- {") || text == "lines:" || text == "brimline: 1"
		if inBook {
			p.book += text + "\n"
		}
	}
}

// books are what a person has who types the page down to its end, with each of its descriptions of
// lines in turn: the tools in front, every reading down to the next description, then this one.
func (p *paper) books() []string {
	var head, items []string
	var lines [][]string
	in := &head
	var out []string
	flush := func() {
		if len(lines) > 0 {
			last := lines[len(lines)-1]
			out = append(out, strings.Join(head, "\n")+"\nreadings:\n"+strings.Join(items, "\n")+"\n"+strings.Join(last, "\n")+"\n")
		}
	}
	for _, l := range strings.Split(strings.TrimSuffix(p.book, "\n"), "\n") {
		switch {
		case l == "readings:":
			in = &items
			continue
		case l == "lines:":
			flush()
			lines = append(lines, nil)
			in = &lines[len(lines)-1]
		case strings.HasPrefix(l, "- {"):
			in = &items
		}
		*in = append(*in, l)
	}
	flush()
	return out
}

// What the guide shows of a book is one that can be read.
func TestTheGuidesBookCanBeTyped(t *testing.T) {
	var p paper
	p.read(t, "docs/guide.md")
	books := p.books()
	if len(books) < 2 {
		t.Fatalf("the guide describes lines %d times", len(books))
	}
	for _, src := range books {
		book, err := fieldbook.Parse("guide.yaml", []byte(src))
		if err != nil {
			t.Errorf("%v\n%s", err, src)
			continue
		}
		if len(book.Readings) < 15 || len(book.Lines) < 1 || len(book.Tools) != 1 {
			t.Errorf("the guide shows %d readings, %d lines, %d tools", len(book.Readings), len(book.Lines), len(book.Tools))
		}
		for _, f := range open(&book) {
			switch f.Code {
			case "cannot-stray", "moved-unread", "two-replace", "strike-nothing", "mark-unread":
				t.Errorf("%s: %s", f.Code, f.Text(nil))
			}
		}
		corrections(t, &book)
		at := filepath.Join(t.TempDir(), "guide.yaml")
		write(t, at, src)
		if code, said := typed(t, "solve", at); code != exitNotReady {
			t.Errorf("status %d, said %s", code, said)
		}
	}
}

// corrections wants one reading struck and one replaced by the same reading taken again.
func corrections(t *testing.T, book *fieldbook.Book) {
	t.Helper()
	struck, replaced := 0, 0
	for _, r := range book.Readings {
		if r.Struck {
			struck++
		}
		if r.Replace == "" {
			continue
		}
		replaced++
		at := slices.IndexFunc(book.Readings, func(o fieldbook.Taken) bool { return o.N == r.Replace })
		if at < 0 || book.Readings[at].Kind != r.Kind || !slices.Equal(book.Readings[at].Marks, r.Marks) {
			t.Errorf("%+v replaces another reading than it says", r)
		}
	}
	if struck != 2 || replaced != 1 {
		t.Errorf("of the guide's readings %d do not stand, %d replace another", struck, replaced)
	}
}

// The commands of the guide run on a long book with mistakes to accept, those of README one after
// another on the book that its first one makes.
func TestTheCommandsOfThePapersRun(t *testing.T) {
	home, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"docs/guide.md", "README.md"} {
		t.Chdir(home)
		var p paper
		p.read(t, name)
		if len(p.commands) < 6 {
			t.Errorf("%s: %d commands found", name, len(p.commands))
		}
		t.Chdir(t.TempDir())
		for _, args := range p.commands {
			if strings.Contains(strings.Join(args, " "), "book.yaml") {
				continue // within the answer that README quotes
			}
			if name == "docs/guide.md" {
				write(t, "larch.yaml", misread(t))
				write(t, "sketch.yaml", sketchBook)
			}
			if code, said := typed(t, args...); code > exitNotReady {
				t.Errorf("%s: brimline %s: status %d, said %s", name, strings.Join(args, " "), code, said)
			}
		}
	}
}

func write(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func typed(t *testing.T, args ...string) (int, string) {
	t.Helper()
	var out, said bytes.Buffer
	code := run(t.Context(), args, streams{in: strings.NewReader(""), out: &out, err: &said})
	return code, said.String()
}

// misread is an example with two mistakes: its own, and a length misread by a metre.
func misread(t *testing.T) string {
	t.Helper()
	for _, e := range examples.All() {
		if e.Name != "bean-five" {
			continue
		}
		src := string(e.Book)
		src = strings.Replace(src, "{tie: A r20, is: 9.141", "{tie: A r20, is: 10.141", 1)
		if src == string(e.Book) {
			t.Fatal("the example has no such tie")
		}
		return src
	}
	t.Fatal("no example of that name")
	return ""
}

const sketchBook = `brimline: 1
readings:
- {seen: A, setup: S, at: [0, 0], class: drawing}
- {seen: B, setup: S, at: [6, 0], class: drawing}
- {seen: r1, setup: S, at: [-1, 2], class: drawing}
- {seen: r2, setup: S, at: [7, 2], class: drawing}
- {seen: r3, setup: S, at: [7, 6], class: drawing}
lines:
  rim: {closed: true, runs: [{straight: [r1, r2]}, {straight: [r2, r3]}, {straight: [r3, r1]}]}
`
