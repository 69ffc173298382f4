package main

import (
	"context"
	"errors"
	"io"

	"github.com/spf13/cobra"

	"brimline/cmd/brimline/internal/answer"
	"brimline/survey"
	"brimline/unit"
)

// measuring is what the flags of measure say.
type measuring struct {
	asJSON bool
	units  string
}

func measureCommand(s streams) *cobra.Command {
	var m measuring
	c := &cobra.Command{
		Use:   "measure BOOK P Q [P Q ...]",
		Short: "Measures between any two marks or points of lines",
		Long: `measure solves BOOK and prints, for each pair of places P and Q, what a tape
between them would read and how far that can be trusted: the level length and
the bearing, and where both heights are known the rise, the slope and the
sloping length; along the line where both lie on one, of a closed line both
ways round. Each figure stands with its standard deviation and its ± (95 %).
hidden is the largest move of the length by a mistake that nothing would show.

A place is one of

  r7            a mark
  rim@3.20      the point of line rim that lies so far along it from its first
                mark; the length is written as in BOOK: "rim@10 ft 6 in"
  rim@r7        the point of line rim nearest to mark r7
  rim           with a mark, a whole line: the shortest way from the mark to it

A mark's name goes before a length: where a mark is called 3, rim@3 is at that
mark and "rim@3 m" three metres along. Quote names with spaces: "B (2)".

Exit status: 0 the measures were printed, 2 the book, a place or the command's
use was refused, 3 the program failed.`,
		Example: "  brimline measure larch.yaml r3 r17\n  brimline measure larch.yaml r3 r17 r8 rim\n  brimline measure larch.yaml rim@3.20 rim@r9 --units ft\n  brimline measure larch.yaml A rim --json",
		Args:    pairs,
		RunE: func(c *cobra.Command, args []string) error {
			if err := m.check(); err != nil {
				return err
			}
			err := m.answer(c.Context(), args[0], args[1:], s)
			if m.asJSON {
				return misplacedJSON(faultsJSON(err, s), s)
			}
			return err
		},
	}
	c.Flags().BoolVar(&m.asJSON, "json", false, "print the measures, or the faults, as one JSON object")
	c.Flags().StringVar(&m.units, "units", "", "print lengths in m, cm, mm, ft or in (default: as the book)")
	offer(c, "units", unitNames())
	return c
}

// pairs asks for a book and places two by two.
func pairs(c *cobra.Command, args []string) error {
	switch {
	case len(args) < 3:
		return refuse("%s needs a book and two places; see %s --help", c.CommandPath(), c.CommandPath())
	case len(args)%2 == 0:
		return refuse("%s: %q has no second place; places are measured two by two", c.CommandPath(), args[len(args)-1])
	}
	return nil
}

func unitNames() []string {
	var out []string
	for _, u := range unit.Units {
		out = append(out, string(u))
	}
	return out
}

// check refuses units that are not known.
func (m measuring) check() error {
	if m.units != "" && !unit.Unit(m.units).Known() {
		return refuse("--units %s: choose m, cm, mm, ft or in", m.units)
	}
	return nil
}

func (m measuring) answer(ctx context.Context, path string, places []string, s streams) error {
	book, err := readBook(path, s)
	if err != nil {
		return err
	}
	p := follow(s)
	defer p.done()
	ruler, err := survey.Rule(ctx, survey.Input{Book: &book}, p.begin)
	if err != nil {
		return misplaced(err)
	}
	list := []survey.Measured{}
	for i := 0; i < len(places); i += 2 {
		one, err := ruler.Measure(places[i], places[i+1])
		if err != nil {
			return misplaced(err)
		}
		list = append(list, *one)
	}
	p.done()
	if m.asJSON {
		return printJSON(s.out, map[string]any{"measures": list, "stops": append([]string{}, ruler.Stops...)})
	}
	u := book.Units.Length
	if m.units != "" {
		u = unit.Unit(m.units)
	}
	_, err = io.WriteString(s.out, answer.Measures(list, ruler.Stops, u))
	return err
}

// unplaced is a place that was not accepted.
type unplaced struct {
	refusal
	why *survey.Misplaced
}

func (u unplaced) Unwrap() error { return u.refusal }

// misplaced refuses a place; other errors stay.
func misplaced(err error) error {
	var e *survey.Misplaced
	if errors.As(err, &e) {
		return unplaced{refusal{e.Error()}, e}
	}
	return err
}

// misplacedJSON prints the fault of a refused place on standard output, and hands the error on.
func misplacedJSON(err error, s streams) error {
	var u unplaced
	if !errors.As(err, &u) {
		return err
	}
	if e := printJSON(s.out, map[string]any{"faults": []*survey.Misplaced{u.why}}); e != nil {
		return e
	}
	return err
}
