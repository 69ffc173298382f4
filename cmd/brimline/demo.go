package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"brimline/cmd/brimline/internal/answer"
	"brimline/examples"
	"brimline/fieldbook"
	"brimline/survey"
)

func demoCommand(s streams) *cobra.Command {
	var dir string
	c := &cobra.Command{
		Use:   "demo -o DIR",
		Short: "Writes example books with their plans and answers",
		Long: `demo writes the example jobs to a folder, each in a folder of its own: the field
book, the page about it, the answer in words and as JSON, the plan as PDF and
SVG, and the true shape that the readings were made from. All of them are
invented.`,
		Example: "  brimline demo -o demo/",
		Args:    words(0, 0, "nothing more"),
		RunE: func(c *cobra.Command, _ []string) error {
			if dir == "" {
				return refuse("demo needs -o DIR; see brimline demo --help")
			}
			if err := canHold(dir); err != nil {
				return err
			}
			for _, e := range examples.All() {
				if err := demo(c.Context(), e, filepath.Join(dir, e.Name), s); err != nil {
					return fmt.Errorf("example %s: %w", e.Name, err)
				}
			}
			return nil
		},
	}
	c.Flags().StringVarP(&dir, "output", "o", "", "the folder to write to; made when it is not there")
	return c
}

// canHold refuses a folder that is a file, or that would lie in one.
func canHold(dir string) error {
	for at := filepath.Clean(dir); ; at = filepath.Dir(at) {
		info, err := os.Stat(at)
		switch {
		case err == nil && !info.IsDir():
			return refuse("-o %s: %s is no folder", dir, at)
		case err == nil || at == filepath.Dir(at):
			return nil
		}
	}
}

// demo writes everything about one example and prints a line on it.
func demo(ctx context.Context, e examples.Example, dir string, s streams) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	book, err := fieldbook.Parse(filepath.Join(dir, "book.yaml"), e.Book)
	if err != nil {
		return err
	}
	r, err := runBook(ctx, &book, s)
	if err != nil {
		return err
	}
	if err := demoTexts(e, &book, r, dir); err != nil {
		return err
	}
	for _, f := range []string{"plan.pdf", "plan.svg"} {
		d := drawing{to: filepath.Join(dir, f), paper: "A3", sheet: 1}
		if err := d.write(&book, r); err != nil {
			return err
		}
	}
	_, err = fmt.Fprintf(s.out, "%s: %s, %s\n", dir, e.Title, answer.Verdict(r))
	return err
}

func demoTexts(e examples.Example, b *fieldbook.Book, r *survey.Result, dir string) error {
	for _, f := range []struct {
		name string
		fill func(io.Writer) error
	}{
		{"book.yaml", bytesOf(e.Book)},
		{"truth.json", bytesOf(e.Truth)},
		{"README.md", bytesOf(e.Page)},
		{"answer.txt", func(w io.Writer) error { return printResult(r, b, "book.yaml", false, w) }},
		{"result.json", func(w io.Writer) error { return printResult(r, b, "book.yaml", true, w) }},
	} {
		if err := writeFile(filepath.Join(dir, f.name), f.fill); err != nil {
			return err
		}
	}
	return nil
}

func bytesOf(b []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(b)
		return err
	}
}
