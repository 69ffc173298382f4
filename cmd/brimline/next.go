package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"brimline/cmd/brimline/internal/answer"
	"brimline/fieldbook"
	"brimline/survey"
)

// asking is what the flags of next say.
type asking struct {
	count, checks        int
	alone, leave, asJSON bool
	counted, checked     bool // the flag was given
}

func nextCommand(s streams) *cobra.Command {
	var a asking
	c := &cobra.Command{
		Use:   "next BOOK",
		Short: "Says which readings to take now, or what leaving now would risk",
		Long: `next solves BOOK and names the readings that would help most for the minutes
they take, the best first, each with its reason. What the book says cannot be
read is never proposed.

With --leave it says instead what leaving now would leave open: every test with
its odds, the weakest places, what could be wrong. With --checks it gives a
whole set of check tapes to plan before a start; a rough sketch (readings of
class drawing) is enough for that.

Exit status: 0 the answer was written, 2 the book or the command's use was
refused, 3 the program failed.`,
		Example: "  brimline next larch.yaml\n  brimline next larch.yaml -n 1 --alone\n  brimline next larch.yaml --leave\n  brimline next sketch.yaml --checks 6",
		Args:    words(1, 1, "a book"),
		RunE: func(c *cobra.Command, args []string) error {
			a.counted, a.checked = c.Flags().Changed("count"), c.Flags().Changed("checks")
			if err := a.check(); err != nil {
				return err
			}
			err := a.answer(c.Context(), args[0], s)
			if a.asJSON {
				return faultsJSON(err, s)
			}
			return err
		},
	}
	f := c.Flags()
	f.IntVarP(&a.count, "count", "n", 5, "at most so many readings")
	f.BoolVar(&a.asJSON, "json", false, "print one JSON object")
	f.BoolVar(&a.alone, "alone", false, "only readings that one person can take")
	f.BoolVar(&a.leave, "leave", false, "what would leaving now leave open?")
	f.IntVar(&a.checks, "checks", 0, "a whole set of so many check tapes, for planning")
	return c
}

// mostAsked is how many readings a person may ask for: far more than anybody takes.
const mostAsked = 200

// check refuses flags that mean nothing together.
func (a asking) check() error {
	switch {
	case a.leave && a.checked:
		return refuse("--leave and --checks are two questions; ask one")
	case a.counted && (a.leave || a.checked):
		return refuse("-n belongs to neither --leave nor --checks")
	case a.count < 1 || a.count > mostAsked:
		return refuse("-n %d: choose 1 to %d", a.count, mostAsked)
	case a.checked && (a.checks < 1 || a.checks > mostAsked):
		return refuse("--checks %d: choose 1 to %d", a.checks, mostAsked)
	}
	return nil
}

func (a asking) answer(ctx context.Context, path string, s streams) error {
	book, err := readBook(path, s)
	if err != nil {
		return err
	}
	if a.alone {
		book.Job.Alone = true
	}
	if a.checked {
		return a.planned(ctx, &book, s)
	}
	r, err := a.solved(ctx, &book, s)
	if err != nil {
		return err
	}
	r.Next = a.fitting(r.Next, a.count)
	switch {
	case a.leave:
		return a.left(ctx, &book, r, s)
	case a.asJSON:
		return printJSON(s.out, map[string]any{"next": r.Next})
	default:
		_, err = io.WriteString(s.out, answer.Next(r, book.Units.Length))
	}
	return err
}

// left says what leaving now would leave open.
func (a asking) left(ctx context.Context, b *fieldbook.Book, r *survey.Result, s streams) error {
	risks, err := survey.Leave(ctx, survey.Input{Book: b})
	if err != nil {
		return err
	}
	for i := range risks {
		risks[i].Buy = a.fitting(risks[i].Buy, len(risks[i].Buy))
	}
	if a.asJSON {
		return printJSON(s.out, map[string]any{"leave": risks, "shape": r.Shape, "orders": r.Orders, "mistakes": r.Mistakes})
	}
	_, err = io.WriteString(s.out, answer.Leave(r, risks, b.Units.Length))
	return err
}

// solved is the result with as many proposals as were asked for.
func (a asking) solved(ctx context.Context, b *fieldbook.Book, s streams) (*survey.Result, error) {
	p := follow(s)
	defer p.done()
	return survey.Run(ctx, survey.Input{Book: b, NextCount: a.count}, p.begin)
}

// planned gives the whole set of check tapes.
func (a asking) planned(ctx context.Context, b *fieldbook.Book, s streams) error {
	p := follow(s)
	defer p.done()
	list, err := survey.Checks(ctx, survey.Input{Book: b}, a.checks)
	p.done()
	if err != nil {
		return err
	}
	fits := a.fitting(list, a.checks)
	if a.asJSON {
		return printJSON(s.out, map[string]any{"checks": fits})
	}
	if list != nil {
		list = fits
	}
	_, err = io.WriteString(s.out, answer.Checks(list, a.checks, b.Units.Length))
	return err
}

// fitting keeps at most so many, and of those asked for alone only what one person can take.
func (a asking) fitting(list []survey.Next, most int) []survey.Next {
	out := []survey.Next{}
	for _, n := range list {
		if len(out) < most && (n.Alone || !a.alone) {
			out = append(out, n)
		}
	}
	return out
}
