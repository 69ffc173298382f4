//go:build unix

// Command mesh runs our triangulation with its volume and CGAL's on the same soundings, one after
// the other so that both meet the same machine, and prints medians. It ends with 1 where the two
// do not find the same volume, area and number of triangles, or where ours takes longer than it may at 100,000 points.
//
// usage: mesh [-points LIST] [-n RUNS] [-out DIR]
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
	points []int
	runs   int
	out    string // where binaries, soundings and results go; ignored by version control
}

func main() {
	points := flag.String("points", "1000,100000,1000000", "points of each surface")
	runs := flag.Int("n", 7, "runs of each; the median counts")
	out := flag.String("out", filepath.Join("bench", "out"), "folder for binaries, soundings and results")
	one := flag.String("one", "", "triangulate the soundings in this folder once and print a line")
	flag.Parse()
	o := options{runs: *runs, out: *out}
	for _, s := range strings.Split(*points, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(s))
		if err != nil || n < 100 || *runs < 1 {
			fmt.Fprintln(os.Stderr, "mesh: -points wants numbers from 100, -n 1 or more")
			os.Exit(2)
		}
		o.points = append(o.points, n)
	}
	do := func() error { return race(o) }
	if *one != "" {
		do = func() error { return ours(*one) }
	}
	if err := do(); err != nil {
		fmt.Fprintln(os.Stderr, "mesh:", err)
		os.Exit(1)
	}
}
