// Command proof measures what the documents promise, on simulated pools with known truth, and
// prints every figure with the band it must lie in. It ends with 1 when a band is missed.
//
// usage: proof [-n pools] [-seed first] [-tune] [-only section] [-v]
package main

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"time"
)

// section measures one promise. Its seeds begin at seed, one a pool; where a section has several
// kinds of pools, each kind begins a million further, and under -tune a thousand.
type section struct {
	name, about string
	seed        uint64 // of a report
	pools       int    // by default
	run         func(c config) *report
}

// sections is the list, in the order in which they are printed.
var sections = []section{
	{"coverage", "do the ellipses hold the truth as often as they say? without mistakes", 1_000_000, 1000, coverage},
	{"start", "start coordinates with 5 % of the readings wrong", 50_000_000, 250, start},
	{"singles", "3 % of the readings wrong, each mark read twice more than fixes it", 60_000_000, 600, singles},
	{"two-pegs", "3 % of the readings wrong, two pegs and some diagonals", 70_000_000, 600, twoPegs},
	{"groups", "one mistake in many readings: three pegs, five rows and more", 80_000_000, 200, groups},
	{"hidden", "what an unseen error would move, against the readings changed by it", 90_000_000, 40, hidden},
	{"next", "readings until ready, following the tape proposed or not", 100_000_000, 200, next},
	{"jobs", "a day's work measured as advised, and not as advised", 110_000_000, 100, jobs},
	{"broken", "as singles, where what the book states is not so; no band", 120_000_000, 300, broken},
	{"any", "outlines whose kind nobody stated: are the true straights and arcs found?", 130_000_000, 1000, anyRuns},
	{"areas", "length and area of every shape by every method: right, and no wider than the readings make them?", 140_000_000, 1000, areas},
	{"basins", "volume, wetted area and floor heights of basins with known truth", 150_000_000, 1000, basins},
	{"heights", "levelling days: do heights hold the truth, is a staff misread or a water that moved found and named?", 160_000_000, 300, levelDays},
}

// Tuning used seeds below 10,000 and from 900,000 to 999,999; reports use those of the sections.
// tuneSeeds is the first of the second range, nine thousand for a section.
const tuneSeeds = 900_000

// config of a run of one section.
type config struct {
	n       int
	seed    uint64
	step    uint64 // to the seeds of the next kind of pools
	verbose bool
}

// kind gives the first seed of a kind of pools.
func (c config) kind(i int) uint64 { return c.seed + uint64(i)*c.step }

func main() {
	n := flag.Int("n", 0, "pools of each kind; 0: as each section does by default")
	seed := flag.Uint64("seed", 0, "first seed of every section; 0: its own")
	tune := flag.Bool("tune", false, "use seeds for tuning, never those of a report")
	only := flag.String("only", "", "run this section only: "+strings.Join(names(), ", "))
	verbose := flag.Bool("v", false, "name every pool that was missed")
	flag.Parse()
	if *only != "" && !known(*only) {
		fmt.Fprintf(os.Stderr, "proof: no section %q; there are %s\n", *only, strings.Join(names(), ", "))
		os.Exit(2)
	}
	failed, begun := false, time.Now()
	for i, s := range sections {
		if *only != "" && s.name != *only {
			continue
		}
		c := config{n: s.pools, seed: s.seed, step: 1_000_000, verbose: *verbose}
		if *n > 0 {
			c.n = *n
		}
		if *tune {
			c.seed, c.step = tuneSeeds+uint64(i)*9_000, 1_000
		}
		if *seed > 0 {
			c.seed = *seed
		}
		begin := time.Now()
		r := s.run(c)
		fmt.Printf("%s: %s (seeds from %d)\n", s.name, s.about, c.seed)
		failed = !r.print(os.Stdout) || failed
		fmt.Printf("  %.1f s\n\n", time.Since(begin).Seconds())
	}
	fmt.Printf("all: %.0f s\n", time.Since(begun).Seconds())
	if failed {
		os.Exit(1)
	}
}

func names() []string {
	var out []string
	for _, s := range sections {
		out = append(out, s.name)
	}
	return out
}

func known(name string) bool {
	for _, s := range sections {
		if s.name == name {
			return true
		}
	}
	return false
}
