package main

import (
	"strings"

	"github.com/spf13/cobra"
)

// columns is the width of every page of help.
const columns = "80"

// helpCommand shows the page of a command, and refuses words that are none.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Shows the page of a command",
		Long:    "help shows the page of a command: what it does, its flags and examples.",
		Example: "  brimline help solve",
		ValidArgsFunction: func(c *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			var names []string
			if at, _, err := c.Root().Find(args); err == nil {
				for _, sub := range at.Commands() {
					if sub.IsAvailableCommand() {
						names = append(names, sub.Name()+"\t"+sub.Short)
					}
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			at, rest, err := c.Root().Find(args)
			if err != nil || at == c.Root() && len(rest) > 0 {
				return noCommand(c.Root(), args)
			}
			if len(rest) > 0 {
				return refuse("%s: %q is one word too many; see brimline help", at.CommandPath(), rest[0])
			}
			at.InitDefaultHelpFlag()
			return at.Help()
		},
	}
}

// completing takes over the command that prints the completion of a shell: other shells are refused.
func completing(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() != "completion" {
			continue
		}
		c.Short = "Prints what completes commands in a shell"
		c.Long = "completion prints, for a shell, what lets it complete the commands, flags and\nvalues of brimline. The page of each shell says how to load it."
		c.Example = "  brimline completion bash > brimline.bash"
		var shells []string
		for _, sub := range c.Commands() {
			shells = append(shells, sub.Name())
			sub.Args = words(0, 0, "nothing more")
		}
		c.Args = func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return refuse("there is no completion for %q; there is one for %s", args[0], strings.Join(shells, ", "))
			}
			return nil
		}
		c.RunE = func(c *cobra.Command, _ []string) error { return c.Help() }
	}
}

// narrow wraps the lines about flags to the width of the page.
func narrow(root *cobra.Command) {
	page := root.UsageTemplate()
	for _, set := range []string{"LocalFlags", "InheritedFlags"} {
		page = strings.ReplaceAll(page, "."+set+".FlagUsages", "."+set+".FlagUsagesWrapped "+columns)
	}
	root.SetUsageTemplate(page)
}
