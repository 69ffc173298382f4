// Command noskip reads `go test -json` and prints what plain `go test` would have printed. It ends
// with 1 when a test failed, when a test was skipped, or when nothing ran at all.
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
	"strings"
)

// event is one line of the test2json stream (documented by `go doc test2json`).
type event struct {
	Action, Package, Test, Output string
}

// report gathers the stream: the output of each test until its fate is known.
type report struct {
	out                    io.Writer
	held                   map[string][]string // by package and test
	skipped                []string
	passed, failed, broken int
}

func main() {
	r := &report{out: os.Stdout, held: map[string][]string{}}
	if err := r.read(os.Stdin); err != nil {
		fmt.Fprintln(os.Stderr, "noskip:", err)
		os.Exit(1)
	}
	os.Exit(r.close())
}

func (r *report) read(in io.Reader) error {
	lines := bufio.NewReader(in)
	for {
		line, err := lines.ReadBytes('\n')
		if len(line) > 0 {
			var e event
			if json.Unmarshal(line, &e) == nil {
				r.take(e)
			} else {
				fmt.Fprintf(r.out, "%s", line) // words of the go command itself
			}
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

func (r *report) take(e event) {
	key := e.Package + " " + e.Test
	switch e.Action {
	case "build-output":
		fmt.Fprint(r.out, e.Output)
	case "build-fail":
		r.broken++
	case "output":
		r.output(key, e)
	case "pass", "skip", "fail":
		r.end(key, e)
	}
}

// output prints a package's own lines at once and holds a test's lines until it ends.
func (r *report) output(key string, e event) {
	if e.Test != "" {
		r.held[key] = append(r.held[key], e.Output)
		return
	}
	if e.Output != "PASS\n" {
		fmt.Fprint(r.out, e.Output)
	}
}

func (r *report) end(key string, e event) {
	if e.Test == "" {
		if e.Action == "fail" {
			r.broken++ // also a package that died outside of a test
		}
		return
	}
	switch e.Action {
	case "pass":
		r.passed++
	case "skip":
		r.skipped = append(r.skipped, key)
	case "fail":
		r.failed++
		fmt.Fprint(r.out, strings.Join(r.held[key], ""))
	}
	delete(r.held, key)
}

// close prints the count and gives the exit status. What a test held when its package died is shown.
func (r *report) close() int {
	for _, key := range slices.Sorted(maps.Keys(r.held)) {
		fmt.Fprintf(r.out, "unfinished: %s\n%s", key, strings.Join(r.held[key], ""))
	}
	for _, s := range r.skipped {
		fmt.Fprintln(r.out, "skipped, which a full run does not allow:", s)
	}
	fmt.Fprintf(r.out, "%d passed, %d failed, %d skipped\n", r.passed, r.failed, len(r.skipped))
	if r.failed+r.broken+len(r.skipped)+len(r.held) > 0 || r.passed == 0 {
		return 1
	}
	return 0
}
