package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"brimline/cmd/brimline/internal/answer"
	"brimline/fieldbook"
	"brimline/survey"
)

func solveCommand(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "solve BOOK",
		Short: "Gives the shape, how sure it is, and what to do",
		Long: `solve adjusts the readings of BOOK and prints the answer: the verdict, what is
wrong and what to do about it, how sure the figures are, then the lines, the
marks and the readings.

Exit status: 0 the shape is ready, 1 it is unproven or unfit, 2 the book was
refused, 3 the program failed.`,
		Example: "  brimline solve larch.yaml\n  brimline solve larch.yaml --json > larch.json\n  brimline new | brimline solve -",
		Args:    words(1, 1, "a book"),
		RunE: func(c *cobra.Command, args []string) error {
			book, err := readBook(args[0], s)
			if err != nil && asJSON {
				return faultsJSON(err, s)
			}
			if err != nil {
				return err
			}
			return solve(c.Context(), &book, asJSON, s)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the result, or the faults, as one JSON object")
	return c
}

func solve(ctx context.Context, b *fieldbook.Book, asJSON bool, s streams) error {
	r, err := runBook(ctx, b, s)
	if err != nil {
		return err
	}
	if err := printResult(r, b, asJSON, s.out); err != nil {
		return err
	}
	if r.Shape.State != "ready" {
		return errNotReady
	}
	return nil
}

// printResult writes the answer in words, or the result for programs.
func printResult(r *survey.Result, b *fieldbook.Book, asJSON bool, out io.Writer) error {
	if asJSON {
		return printJSON(out, r)
	}
	_, err := io.WriteString(out, answer.Text(r, b.Units.Length))
	return err
}
