package main

import (
	"fmt"
	"strings"
)

// markdown is the table: milliseconds, and our total as a share of the quickest reference's.
func markdown(rows []row, o options) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Medians of %d runs, run alternately, CPU milliseconds of one thread.\n\n", o.runs)
	b.WriteString("| net | program | unknowns | rows | steps | solve ms | covariance ms | both ms | least ms | ratio |\n")
	b.WriteString("|---|---|---:|---:|---:|---:|---:|---:|---:|---:|\n")
	for _, r := range rows {
		both := r.Solve + r.Cov
		fmt.Fprintf(&b, "| %s | %s | %d | %d | %d | %.2f | %.2f | %.2f | %.2f | %.2f |\n", r.net, r.program,
			r.Unknowns, r.Rows, r.Iters, 1e3*r.Solve, 1e3*r.Cov, 1e3*both, 1e3*r.least, both/quickest(rows, r.net))
	}
	b.WriteString("\nratio: the program's both over the quickest reference's both on that net; below 1 is quicker. Ours does both in one call, counted under solve.\n")
	return b.String()
}

// quickest is the least median total of the references on a net, seconds.
func quickest(rows []row, net string) float64 {
	best := 0.0
	for _, r := range rows {
		if t := r.Solve + r.Cov; r.net == net && r.program != "ours" && (best == 0 || t < best) {
			best = t
		}
	}
	return best
}
