package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"
)

// starter is a small book that can be solved as it stands.
//
//go:embed starter.yaml
var starter []byte

func newCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "new [FILE]",
		Short: "Prints a commented field book to start from",
		Long: `new prints a small field book with a comment on every part, or writes it to
FILE, which must not exist yet. The book can be solved as it stands; replace its
readings with your own.`,
		Example: "  brimline new larch.yaml\n  brimline new | brimline solve -",
		Args:    words(0, 1, "at most one file name"),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 || args[0] == "-" {
				_, err := s.out.Write(starter)
				return err
			}
			return startBook(args[0])
		},
	}
}

// startBook never writes over anything.
func startBook(path string) error {
	if err := folder(path, path); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return refuse("%s exists already; a book is never written over", path)
	}
	if err != nil {
		return refuse("%s: %v", path, bare(err))
	}
	_, err = f.Write(starter)
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(path)
		return fmt.Errorf("writing the book: %w", err)
	}
	return nil
}
