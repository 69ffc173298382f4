package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"brimline/cmd/brimline/internal/answer"
	"brimline/fieldbook"
	"brimline/finding"
	"brimline/locate"
	"brimline/network"
	"brimline/survey"
)

func checkCommand(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check BOOK",
		Short: "Says whether a book can be read and what is open in it",
		Long: `check reads BOOK and lists every fault for which it would be refused, or, when
there is none, what a person should know before it is solved: marks that the
readings do not fix yet, sides that nothing settles, names that nothing reads.
It adjusts nothing.

Exit status: 0 the book can be read, 2 it was refused, 3 the program failed.`,
		Example: "  brimline check larch.yaml\n  brimline check larch.yaml --json",
		Args:    words(1, 1, "a book"),
		RunE: func(_ *cobra.Command, args []string) error {
			book, err := readBook(args[0], s)
			if err != nil && asJSON {
				return faultsJSON(err, s)
			}
			if err != nil {
				return err
			}
			found := open(&book)
			if asJSON {
				return printJSON(s.out, map[string]any{"faults": []fieldbook.Fault{}, "findings": printed(found, &book)})
			}
			return checked(s.out, &book, found)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print faults and findings as one JSON object")
	return c
}

// open gathers what can be said of a book before it is solved, the weightiest first: also which
// marks its readings do not fix, and what lies on one side by custom only.
func open(b *fieldbook.Book) []finding.Finding {
	net, more := network.Build(b, nil)
	found := append(append([]finding.Finding{}, b.Findings...), more...)
	for _, f := range locate.Find(net).Findings {
		if f.Severity() != finding.Note {
			found = append(found, f)
		}
	}
	finding.Sort(found)
	return found
}

func checked(out io.Writer, b *fieldbook.Book, found []finding.Finding) error {
	marks := map[string]bool{}
	for _, r := range b.Readings {
		for _, m := range r.Marks {
			marks[m] = true
		}
	}
	_, err := fmt.Fprintf(out, "%s: readable. Readings: %d, marks read: %d, lines: %d.\n%s",
		answer.Plain(b.Name), len(b.Readings), len(marks), len(b.Lines), answer.Findings(printed(found, b)))
	return err
}

// printed turns findings into sentences in the job's unit.
func printed(found []finding.Finding, b *fieldbook.Book) []survey.Finding {
	length := answer.Length(b.Units.Length)
	out := make([]survey.Finding, len(found))
	for i, f := range found {
		out[i] = survey.Finding{
			Code: f.Code, Severity: string(f.Severity()), Text: f.Text(length), Cure: f.Cure(length),
			Marks: append([]string{}, f.Marks...), Readings: append([]string{}, f.Readings...), Figures: f.Figures,
		}
	}
	return out
}
