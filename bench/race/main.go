// Command race runs our solver and the C++ reference of bench/peers on the same networks, one after
// the other so that both meet the same machine, and prints medians. It ends with 1 when the two do
// not reach the same answer: a race between different answers says nothing.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// options of one race.
type options struct {
	nets   []int    // outline points of each network
	libs   []string // factorisations of the reference
	runs   int
	out    string // where binaries, networks and results go; ignored by version control
	python string // an interpreter that has numpy; "" finds one
}

func main() {
	nets := flag.String("nets", "50,300,1000,10000", "outline points of each network")
	libs := flag.String("libs", "eigen,cholmod", "factorisations of the reference: eigen, cholmod, cholmods")
	runs := flag.Int("n", 7, "runs of each; the median counts")
	out := flag.String("out", filepath.Join("bench", "out"), "folder for binaries, networks and results")
	python := flag.String("python", "", "an interpreter that has numpy; empty finds one")
	flag.Parse()
	o := options{libs: strings.Split(*libs, ","), runs: *runs, out: *out, python: *python}
	for _, s := range strings.Split(*nets, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(s))
		if err != nil || n < 4 {
			fmt.Fprintf(os.Stderr, "race: -nets: %q is no number of points\n", s)
			os.Exit(2)
		}
		o.nets = append(o.nets, n)
	}
	if o.runs < 1 {
		fmt.Fprintln(os.Stderr, "race: -n must be 1 or more")
		os.Exit(2)
	}
	if err := run(o); err != nil {
		fmt.Fprintln(os.Stderr, "race:", err)
		os.Exit(1)
	}
}

func run(o options) error {
	bin, err := build(o.out)
	if err != nil {
		return err
	}
	if err := networks(o); err != nil {
		return err
	}
	var rows []row
	var wrong []string
	for _, n := range o.nets {
		rs, err := race(o, bin, n)
		if err != nil {
			return err
		}
		rows = append(rows, rs...)
		wrong = append(wrong, disagreements(rs)...)
	}
	table := markdown(rows, o)
	fmt.Print(table)
	if err := os.WriteFile(filepath.Join(o.out, "race.md"), []byte(table), 0o644); err != nil {
		return err
	}
	if len(wrong) > 0 {
		return fmt.Errorf("the answers differ: %s", strings.Join(wrong, "; "))
	}
	return nil
}
