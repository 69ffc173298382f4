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
	var numbers []int
	c := &cobra.Command{
		Use:   "solve BOOK",
		Short: "Gives the shape, how sure it is, and what to do",
		Long: `solve adjusts the readings of BOOK and prints the answer: may I go, is it good
so far and which mistakes show, what next, what is open, how sure the figures
are, then the lines, the marks and the readings.

With --accept the numbered mistakes of the answer are taken over: for each
reading that they correct an entry is added to BOOK, which keeps the old one.
Nobody read the new figure, so it prints as "not re-read" and proves nothing;
reading again is better.

Exit status: 0 the shape and every order are ready, 1 something is unproven or
unfit, 2 the book or the command's use was refused, 3 the program failed.`,
		Example: "  brimline solve larch.yaml\n  brimline solve larch.yaml --json > larch.json\n  brimline solve larch.yaml --accept 1\n  brimline new | brimline solve -",
		Args:    words(1, 1, "a book"),
		RunE: func(c *cobra.Command, args []string) error {
			err := solve(c.Context(), args[0], numbers, c.Flags().Changed("accept"), asJSON, s)
			if asJSON {
				return faultsJSON(err, s)
			}
			return err
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the result, or the faults, as one JSON object")
	c.Flags().IntSliceVar(&numbers, "accept", nil, "write the corrections of these mistakes into the book, by their numbers: 1,3")
	return c
}

// solve answers a book, or accepts mistakes of it first.
func solve(ctx context.Context, path string, numbers []int, accepting, asJSON bool, s streams) error {
	if !accepting {
		book, err := readBook(path, s)
		if err != nil {
			return err
		}
		r, err := runBook(ctx, &book, s)
		if err != nil {
			return err
		}
		return answered(r, &book, path, asJSON, s)
	}
	a, err := accept(ctx, path, numbers, s)
	if err != nil {
		return err
	}
	r, err := runBook(ctx, &a.book, s)
	if err != nil {
		return err
	}
	if err := a.write(s); err != nil {
		return err
	}
	if !asJSON {
		if _, err := io.WriteString(s.out, answer.Written(r, a.book.Units.Length, path, a.pairs())+"\n"); err != nil {
			return err
		}
	}
	return answered(r, &a.book, path, asJSON, s)
}

// answered prints a result; its verdict is the exit status.
func answered(r *survey.Result, b *fieldbook.Book, path string, asJSON bool, s streams) error {
	if err := printResult(r, b, path, asJSON, s.out); err != nil {
		return err
	}
	if answer.Verdict(r) != "ready" {
		return errNotReady
	}
	return nil
}

// printResult writes the answer in words, or the result for programs.
func printResult(r *survey.Result, b *fieldbook.Book, path string, asJSON bool, out io.Writer) error {
	if asJSON {
		return printJSON(out, r)
	}
	_, err := io.WriteString(out, answer.Text(r, b.Units.Length, path))
	return err
}
