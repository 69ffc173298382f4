package main

import (
	"context"
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// run is the whole program but for the process: it never panics and gives the exit status.
func run(ctx context.Context, args []string, s streams) (code int) {
	defer func() {
		if p := recover(); p != nil {
			fmt.Fprintf(s.err, "brimline: the program failed: %v\n%s", p, debug.Stack())
			code = exitFailed
		}
	}()
	c := root(s)
	c.SetArgs(args)
	c.SetIn(s.in)
	c.SetOut(s.out)
	c.SetErr(s.err)
	return settle(c.ExecuteContext(ctx), s)
}

// root holds the commands; the list is the one place where a command joins.
func root(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "brimline",
		Short: "Measures up an existing pool by tape ties, offsets and instrument points",
		Long: `brimline turns what was read at an existing swimming pool into one shape, says
how far each figure can be trusted and what mistake could still hide in it, and
draws the plan.

BOOK is a field book: a text file of what was read (brimline new prints one to
start from), or - for standard input.`,
		Example: `  brimline new larch.yaml            a commented book to fill in
  brimline check larch.yaml          is it readable, what is still open
  brimline solve larch.yaml          the answer, in words and tables
  brimline next larch.yaml           what to read now
  brimline draw larch.yaml -o larch.pdf`,
		Args:          noCommand,
		SilenceUsage:  true, // one clear line instead
		SilenceErrors: true,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.SuggestionsMinimumDistance = 2
	c.SetFlagErrorFunc(misflagged)
	c.SetHelpCommand(helpCommand())
	narrow(c)
	c.AddCommand(newCommand(s), checkCommand(s), solveCommand(s), nextCommand(s), measureCommand(s), drawCommand(s), demoCommand(s),
		toolsCommand(s), schemaCommand(s), versionCommand(s))
	completing(c)
	return c
}

// noCommand refuses a first word that is no command.
func noCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	near := c.SuggestionsFor(args[0])
	if len(near) > 0 {
		return refuse("there is no command %q; did you mean %q?", args[0], near[0])
	}
	return refuse("there is no command %q; see brimline --help", args[0])
}

// words asks for between least and most arguments, and says what they are.
func words(least, most int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) < least {
			return refuse("%s needs %s; see %s --help", c.CommandPath(), what, c.CommandPath())
		}
		if len(args) > most {
			return refuse("%s: %q is one word too many; see %s --help", c.CommandPath(), args[most], c.CommandPath())
		}
		return nil
	}
}
