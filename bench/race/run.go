package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"slices"
)

// line is what each program prints: seconds of solving and of the covariance, and what it reached.
type line struct {
	Unknowns int     `json:"unknowns"`
	Rows     int     `json:"rows"`
	Iters    int     `json:"iters"`
	Solve    float64 `json:"t_solve"`
	Cov      float64 `json:"t_cov"`
	WSSR     float64 `json:"wssr"`
	SumR     float64 `json:"sum_r"`
}

// row is one program on one network: medians over the runs.
type row struct {
	net, program string
	runs         int
	line
	least float64 // the shortest solve + cov of the runs, seconds
}

// race runs every program once a round, so that a slow spell of the machine meets all of them.
func race(o options, p programs, n int) ([]row, error) {
	type entrant struct {
		label string
		args  []string
		lines []line
	}
	var all []*entrant
	for _, lib := range o.libs {
		all = append(all, &entrant{label: "direct-" + lib, args: []string{p.peer, folder(o, n), "--lib", lib}})
	}
	all = append(all, &entrant{label: "ours", args: []string{p.ours, folder(o, n)}})
	for range o.runs {
		for _, e := range all {
			l, err := once(e.args)
			if err != nil {
				return nil, fmt.Errorf("%s on %s: %w", e.label, name(n), err)
			}
			e.lines = append(e.lines, l)
		}
	}
	var rows []row
	for _, e := range all {
		rows = append(rows, medians(name(n), e.label, e.lines))
	}
	return rows, nil
}

// once runs a program on one thread with the CPU clock and reads its line.
func once(args []string) (line, error) {
	c := exec.Command(args[0], args[1:]...)
	c.Env = append(os.Environ(), "PERF_CLOCK=cpu", "GOMAXPROCS=1", "OPENBLAS_NUM_THREADS=1", "OMP_NUM_THREADS=1")
	c.Stderr = os.Stderr
	text, err := c.Output()
	if err != nil {
		return line{}, err
	}
	var l line
	if err := json.Unmarshal(text, &l); err != nil {
		return l, fmt.Errorf("reading %q: %w", text, err)
	}
	return l, nil
}

func medians(net, program string, ls []line) row {
	r := row{net: net, program: program, runs: len(ls), line: ls[0], least: math.Inf(1)}
	var solve, cov []float64
	for _, l := range ls {
		solve, cov = append(solve, l.Solve), append(cov, l.Cov)
		r.least = min(r.least, l.Solve+l.Cov)
	}
	r.Solve, r.Cov = median(solve), median(cov)
	return r
}

func median(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// disagreements names where a program's sum of squares differs from the first one's by more than a
// millionth, or its redundancy numbers do not add up to rows less unknowns within 1e-6 of it.
func disagreements(rows []row) []string {
	var out []string
	for _, r := range rows {
		if first := rows[0]; !(math.Abs(r.WSSR-first.WSSR) <= 1e-6*first.WSSR) {
			out = append(out, fmt.Sprintf("%s %s: wssr %.9g, %s %.9g", r.net, r.program, r.WSSR, first.program, first.WSSR))
		}
		if free := float64(r.Rows - r.Unknowns); !(math.Abs(r.SumR-free) <= 1e-6*free) {
			out = append(out, fmt.Sprintf("%s %s: redundancy adds up to %.9g, not %g", r.net, r.program, r.SumR, free))
		}
	}
	return out
}
