package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"brimline/fieldbook"
)

func toolsCommand(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "tools",
		Short: "Prints the standard deviations and odds used by default",
		Long: `tools prints, for each kind of reading, the standard deviation of one reading
that is used where neither the reading nor its tool gives one, and where the
figure comes from. A book overrides it with sigma on a reading, on a tool, or in
rules. Then it prints the mistakes that are looked for and how often each is
made; a book overrides these with priors in its rules.`,
		Example: "  brimline tools\n  brimline tools --json",
		Args:    words(0, 0, "nothing more"),
		RunE: func(*cobra.Command, []string) error {
			if asJSON {
				return printJSON(s.out, map[string]any{"defaults": defaults(), "mistakes": priors()})
			}
			if err := printDefaults(s.out); err != nil {
				return err
			}
			fmt.Fprintln(s.out)
			return printPriors(s.out)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the table as one JSON object")
	return c
}

// sigma is one row for programs: metres, or degrees as unit says.
type sigma struct {
	Kind     string  `json:"kind"`
	Part     string  `json:"part"`
	Class    string  `json:"class"`
	Sigma    float64 `json:"sigma"`
	Unit     string  `json:"unit"` // of sigma: m or deg
	PPM      float64 `json:"ppm"`
	PerMetre float64 `json:"per_metre"` // of an offset's distance from its line
	Source   string  `json:"source"`
}

func defaults() []sigma {
	out := make([]sigma, len(fieldbook.Defaults))
	for i, d := range fieldbook.Defaults {
		class := d.Class
		if class == "" {
			class = "measured"
		}
		out[i] = sigma{d.Kind, d.Part, class, d.Sigma, "m", d.PPM, d.PerMetre, d.Source}
		if fieldbook.Angular(d.Kind) {
			out[i].Sigma, out[i].Unit = d.Sigma*180/math.Pi, "deg"
		}
	}
	return out
}

// printDefaults aligns the table for people: millimetres and degrees.
func printDefaults(out io.Writer) error {
	t := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "kind\tpart\tclass\tstandard deviation\tsource")
	for _, d := range defaults() {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\n", d.Kind, d.Part, d.Class, d.text(), d.Source)
	}
	return t.Flush()
}

// text names the terms whose squares add up.
func (d sigma) text() string {
	terms := []string{fmt.Sprintf("%g mm", 1e3*d.Sigma)}
	if d.Unit == "deg" {
		terms = []string{fmt.Sprintf("%.4g°", d.Sigma)}
	}
	if d.PPM > 0 {
		terms = append(terms, fmt.Sprintf("%g mm a metre", 1e-3*d.PPM))
	}
	if d.PerMetre > 0 {
		terms = append(terms, fmt.Sprintf("%g mm a metre off the line", 1e3*d.PerMetre))
	}
	return strings.Join(terms, " and ")
}
