// Command offset races plane.Offset against GEOS (bench/peers/buffer) on the same rings, one program
// after the other round by round so that both meet the same machine, each on one thread, and prints
// medians of processor time. Where GEOS is not installed it says so and races alone. It ends with 1
// when our area misses the exact one.
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
	sizes  []int // segments of the rings
	runs   int
	millis int    // for which each run repeats its parallel
	out    string // folder for the binary and the rings; ignored by version control
}

func main() {
	sizes := flag.String("sizes", "200,2000,20000", "segments of the rings")
	runs := flag.Int("n", 7, "runs of each; the median counts")
	millis := flag.Int("ms", 100, "milliseconds for which a run repeats its parallel; at least one is made")
	out := flag.String("out", filepath.Join("bench", "out"), "folder for the binary and the rings")
	alone := flag.String("ours", "", "\"KIND SEGMENTS DISTANCE\": time our own parallel of one ring and print one line")
	flag.Parse()
	o := options{runs: *runs, millis: *millis, out: *out}
	for _, s := range strings.Split(*sizes, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(s))
		if err != nil || n < 12 {
			fmt.Fprintf(os.Stderr, "offset: -sizes: %q is no number of segments\n", s)
			os.Exit(2)
		}
		o.sizes = append(o.sizes, n)
	}
	if o.runs < 1 {
		fmt.Fprintln(os.Stderr, "offset: -n must be 1 or more")
		os.Exit(2)
	}
	work := func() error { return race(o) }
	if *alone != "" {
		work = func() error { return ours(*alone, o.millis) }
	}
	if err := work(); err != nil {
		fmt.Fprintln(os.Stderr, "offset:", err)
		os.Exit(1)
	}
}
