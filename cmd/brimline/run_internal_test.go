package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"
)

// bursting stands for a mistake of our own anywhere in a command.
type bursting struct{}

func (bursting) Write([]byte) (int, error) { panic("burst") }

func TestPanicEndsWithThree(t *testing.T) {
	var said bytes.Buffer
	code := run(context.Background(), []string{"version"}, streams{in: strings.NewReader(""), out: bursting{}, err: &said})
	if code != exitFailed || !strings.HasPrefix(said.String(), "brimline: the program failed: burst\n") {
		t.Errorf("status %d, said %q", code, said.String())
	}
}

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestUnwritableOutputEndsWithThree(t *testing.T) {
	for _, args := range [][]string{{"version"}, {"new"}, {"tools"}, {"tools", "--json"}, {"schema", "book"}} {
		var said bytes.Buffer
		if code := run(context.Background(), args, streams{in: strings.NewReader(""), out: full{}, err: &said}); code != exitFailed {
			t.Errorf("%v: status %d, said %q", args, code, said.String())
		}
	}
}

// A failed output leaves what was there, and nothing beside it.
func TestWriteFileIsWholeOrNothing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "plan.svg")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	err := writeFile(path, func(w io.Writer) error {
		io.WriteString(w, "half")
		return errors.New("torn")
	})
	if err == nil {
		t.Error("no error")
	}
	if err := writeFile(path, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
		t.Error(err)
	}
	if got, _ := os.ReadFile(path); string(got) != "new" {
		t.Errorf("holds %q", got)
	}
	if err := writeFile(filepath.Join(dir, "none", "plan.svg"), func(io.Writer) error { return nil }); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("missing folder: %v", err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// Every command of ours, and the root, has a line, a page and an example that begins with its name.
func TestEveryCommandHasHelp(t *testing.T) {
	top := root(streams{})
	for _, c := range append([]*cobra.Command{top}, top.Commands()...) {
		if c.Short == "" || len(c.Long) < len(c.Short) || !strings.Contains(c.Example, c.CommandPath()) {
			t.Errorf("%s: short %q, long %q, example %q", c.CommandPath(), c.Short, c.Long, c.Example)
		}
		for _, l := range strings.Split(c.Long+"\n"+c.Example, "\n") {
			if utf8.RuneCountInString(l) > 80 {
				t.Errorf("%s: longer than 80: %q", c.CommandPath(), l)
			}
		}
	}
}

// Every page of help keeps to the width of a small window, flags and lists of commands included.
func TestHelpKeepsToTheWidth(t *testing.T) {
	for _, c := range root(streams{}).Commands() {
		for _, args := range [][]string{{}, {c.Name(), "--help"}, {"help", c.Name()}} {
			var out, said bytes.Buffer
			code := run(t.Context(), args, streams{in: strings.NewReader(""), out: &out, err: &said})
			if code != exitDone || out.Len() == 0 {
				t.Errorf("%v: status %d, said %q", args, code, said.String())
			}
			for _, l := range strings.Split(out.String(), "\n") {
				if utf8.RuneCountInString(l) > 80 {
					t.Errorf("%v: longer than 80: %q", args, l)
				}
			}
		}
	}
}
