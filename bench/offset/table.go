package main

import (
	"fmt"
	"math"
	"strings"
)

// wrong says where our area misses the exact one by more than 10⁻⁵ m².
func wrong(rows []row) error {
	var out []string
	for _, r := range rows {
		if !(math.Abs(r.ours.Area-r.exact) <= 1e-5) {
			out = append(out, fmt.Sprintf("%s: area %.7f, exactly %.7f", name(r.kind, r.n, r.d), r.ours.Area, r.exact))
		}
	}
	if out != nil {
		return fmt.Errorf("%s", strings.Join(out, "; "))
	}
	return nil
}

// markdown is the table: milliseconds, our time as a share of theirs, and how far the areas are off.
func markdown(rows []row, o options) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Medians of %d runs (3 of GEOS where one takes more than a second), run alternately, processor milliseconds of one thread; GEOS gets arcs as chords that leave them by %g mm.\n\n", o.runs, 1e3*chordRise)
	b.WriteString("| ring | segments | points for GEOS | d m | ours ms | GEOS ms | ratio | rings, ours | GEOS | our area off m² | GEOS off m² |\n")
	b.WriteString("|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|\n")
	for _, r := range rows {
		fmt.Fprintf(&b, "| %s | %d | %d | %g | %.3f | %.3f | %.2f | %d | %d | %s | %s |\n", r.kind, r.n, r.points, r.d,
			1e3*r.ours.T, 1e3*r.geos.T, r.ours.T/r.geos.T, r.ours.Rings, r.geos.Rings, off(r.ours.Area-r.exact), off(r.geos.Area-r.exact))
	}
	b.WriteString("\nratio below 1: ours is quicker. GEOS rounds corners by 8 chords a quarter and passes over hollows of a hundredth of d, its ways at default.\n")
	return b.String()
}

// off prints a difference, a dash where there is nothing to compare with.
func off(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return fmt.Sprintf("%.1e", v)
}
