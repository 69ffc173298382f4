package main

import (
	"github.com/spf13/cobra"

	"brimline/internal/schema"
)

func schemaCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:       "schema book|result",
		Short:     "Prints the JSON Schema of the field book or of the result",
		Long:      "schema prints the JSON Schema of the field book, as read, or of the result, as\nprinted by solve --json.",
		Example:   "  brimline schema book > book.schema.json\n  brimline schema result",
		Args:      words(1, 1, "book or result"),
		ValidArgs: []string{"book", "result"},
		RunE: func(_ *cobra.Command, args []string) error {
			made := map[string]func() ([]byte, error){"book": schema.Book, "result": schema.Result}[args[0]]
			if made == nil {
				return refuse("there is no schema of %q; book and result are there", args[0])
			}
			b, err := made()
			if err != nil {
				return err
			}
			_, err = s.out.Write(append(b, '\n'))
			return err
		},
	}
}
