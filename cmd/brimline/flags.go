package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
)

// misflagged refuses a flag that is not known or whose value is not of its kind, in plain words.
func misflagged(c *cobra.Command, err error) error {
	var bad interface{ GetValue() string }
	_, rest, _ := strings.Cut(err.Error(), " for \"")
	flag, _, known := strings.Cut(rest, "\" flag: ")
	if !errors.As(err, &bad) || !known {
		return refuse("%v; see %s --help", err, c.CommandPath())
	}
	long := strings.TrimPrefix(flag[strings.LastIndex(flag, " ")+1:], "--")
	wanted := "it means nothing here"
	if f := c.Flag(long); f != nil {
		wanted = wantedOf(f.Value.Type())
	}
	return refuse("%s %q: %s; see %s --help", flag, bad.GetValue(), wanted, c.CommandPath())
}

// wantedOf says what a kind of flag takes.
func wantedOf(kind string) string {
	switch kind {
	case "int":
		return "a whole number is wanted"
	case "intSlice":
		return "whole numbers are wanted, as 1 or 1,3"
	case "bool":
		return "it is there or not, and takes no value"
	}
	return "it cannot be read"
}
