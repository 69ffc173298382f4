package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"brimline/mistake"
)

// prior is how often a mistake is made, for programs.
type prior struct {
	Code   string  `json:"code"`
	Odds   float64 `json:"odds"`
	Of     string  `json:"of"`
	Cause  string  `json:"cause"`
	Source string  `json:"source"`
}

func priors() []prior {
	out := make([]prior, len(mistake.Priors))
	for i, p := range mistake.Priors {
		out[i] = prior{p.Code, p.Odds, p.Of, p.Cause, p.Source}
	}
	return out
}

// printPriors aligns the table of mistakes for people.
func printPriors(out io.Writer) error {
	t := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "mistake\twhat was done\todds\tsource")
	for _, p := range priors() {
		fmt.Fprintf(t, "%s\t%s\t%.4g %% a %s\t%s\n", p.Code, p.Cause, 100*p.Odds, p.Of, p.Source)
	}
	return t.Flush()
}
