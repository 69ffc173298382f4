package main

import (
	"github.com/spf13/cobra"

	"brimline/fieldbook"
)

func toolsCommand(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "tools",
		Short: "Prints the standard deviations used where a book gives none",
		Long: `tools prints, for each kind of reading, the standard deviation of one reading that
is used where neither the reading nor its tool gives one, and where the figure
comes from. A book overrides it with sigma on a reading, on a tool, or in rules.`,
		Example: "  brimline tools\n  brimline tools --json",
		Args:    words(0, 0, "nothing more"),
		RunE: func(*cobra.Command, []string) error {
			if asJSON {
				return printJSON(s.out, map[string]any{"defaults": fieldbook.Defaults})
			}
			return printDefaults(s.out)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the table as one JSON object")
	return c
}
