//go:build unix

// Command process measures `brimline solve` as a whole process on a book of about sixty marks: what
// a person waits for. It prints medians of wall and processor milliseconds and the peak memory.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"syscall"
	"time"

	"brimline/internal/simulate"
)

// marksWanted is the size of the book; the seeds are searched for the pool nearest to it.
const marksWanted = 60

func main() {
	runs := flag.Int("n", 20, "runs; the median counts")
	out := flag.String("out", filepath.Join("bench", "out"), "folder for the binary and the book")
	flag.Parse()
	if *runs < 1 {
		fmt.Fprintln(os.Stderr, "process: -n must be 1 or more")
		os.Exit(2)
	}
	if err := measure(*runs, *out); err != nil {
		fmt.Fprintln(os.Stderr, "process:", err)
		os.Exit(1)
	}
}

func measure(runs int, out string) error {
	if err := os.MkdirAll(filepath.Join(out, "bin"), 0o755); err != nil {
		return err
	}
	bin, book := filepath.Join(out, "bin", "brimline"), filepath.Join(out, "sixty.yaml")
	build := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags", "-s -w", "-o", bin, "./cmd/brimline")
	build.Stderr = os.Stderr
	if err := build.Run(); err != nil {
		return fmt.Errorf("building brimline: %w", err)
	}
	text, marks := sixty()
	if err := os.WriteFile(book, text, 0o644); err != nil {
		return err
	}
	fmt.Printf("brimline solve, %d marks on the rim, %d readings, %d bytes, %d runs\n",
		marks, bytes.Count(text, []byte("\n- ")), len(text), runs)
	for _, args := range [][]string{{"version"}, {"check", book}, {"solve", book}, {"solve", book, "--json"}} {
		if err := series(bin, args, runs); err != nil {
			return err
		}
	}
	return nil
}

// sixty is the book whose rim has nearest to sixty marks among the first pools of every shape,
// measured by ties from more than two pegs.
func sixty() (book []byte, marks int) {
	for seed := range uint64(40) {
		for _, s := range simulate.Shapes {
			c := simulate.Pool(seed, s, simulate.Methods[1], simulate.Options{})
			if n := len(c.Order); book == nil || apart(n) < apart(marks) {
				book, marks = c.Book, n
			}
		}
	}
	return book, marks
}

func apart(marks int) int { return max(marks-marksWanted, marksWanted-marks) }

// series runs one command again and again and prints its row. The system counts in a child's peak
// what its parent held when it started it, so the row of version is the floor of the others.
func series(bin string, args []string, runs int) error {
	var wall, cpu, rss []float64
	for range runs {
		c := exec.Command(bin, args...)
		start := time.Now()
		text, err := c.CombinedOutput()
		took := time.Since(start)
		if code := c.ProcessState.ExitCode(); code != 0 && code != 1 { // 1: not ready, which is an answer
			return fmt.Errorf("%v ended with %d (%w): %s", args, code, err, text)
		}
		u := c.ProcessState.SysUsage().(*syscall.Rusage)
		wall = append(wall, 1e3*took.Seconds())
		cpu = append(cpu, 1e3*(c.ProcessState.UserTime()+c.ProcessState.SystemTime()).Seconds())
		rss = append(rss, float64(u.Maxrss)/1024)
	}
	name := regexp.MustCompile(`\S*/`).ReplaceAllString(fmt.Sprint(args), "")
	fmt.Printf("%-30s wall %6.1f ms   user+system %6.1f ms   peak %5.1f MB\n", name, median(wall), median(cpu), median(rss))
	return nil
}

func median(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}
