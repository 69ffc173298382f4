package main

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"
)

func versionCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Prints the version",
		Long: `version prints the program's version, the Go release that built it and the
system it was built for.`,
		Example: "  brimline version",
		Args:    words(0, 0, "nothing more"),
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(s.out, "brimline %s %s %s/%s\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return err
		},
	}
}
