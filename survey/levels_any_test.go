package survey_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// heightLines are readings of every kind that says something of heights, of the yard's marks.
func heightLines() []string {
	all := strings.Split(strings.TrimSpace(ties()+diagonals()+rimLevels(0.02)), "\n")
	return append(all, strings.Split(`- {tie: A r1, is: 2.3, slope: true}
- {tie: A B, is: 6.1, slope: true, tool: reel}
- {level: A B, rise: 0.5}
- {level: B r4, rise: -0.5}
- {staff: A, setup: S3, is: 1.5, sight: 12}
- {staff: r4, setup: S3, is: 1.6, sight: 30}
- {staff: r1, setup: S3, is: 1.6}
- {depth: f1, below: w1, is: 1.42, line: r1 r3, at: 2, left: 0.1}
- {depth: f2, below: rim, is: 1.57, line: r1 r3, at: 3, right: 0.1}
- {depth: f3, below: inner, is: 1.57}
- {depth: f3, below: A, is: 2.4, slope: true}
- {depth: f3, below: w2, is: 1.2}
- {water: w2, under: r2, is: 0.2}
- {seen: r1, setup: T, at: [1, 2, 0.3]}
- {seen: r2, setup: T, at: [1, 5, 0.31]}
- {seen: r3, setup: T, at: [5, 5, 0.29]}
- {seen: f1, setup: U, at: [5, 5, -1.3]}
- {seen: r1, setup: U, at: [1, 2, 0.3]}
- {moved: A, time: "2026-05-14T10:00:00Z", why: kicked}
- {wall: r1, from: nose, to: cove, is: 1.1}
- {plumb: r1, down: 0.3, outward: 4 mm}
- {profile: r1, from: nose, to: track, outward: 32 mm, down: 48 mm}`, "\n")...)
}

// Whatever part of a book has come in, in whatever state, there is an answer without a NaN in it.
func TestAnyBookOfHeights(t *testing.T) {
	lines := heightLines()
	head := "brimline: 1\ntools: {tape: {sigma: 4 mm}, reel: {sigma: 5 mm, zero: solve, scale: solve}}\nsetups: {S3: {collimation: solve}, T: {scale: solve}}\n" +
		"marks: {r2: {at: [0, 0, 10]}, r3: {at: [4, 0, 10]}}\nreadings:\n"
	tail := rim + "  inner: {from: rim, inward: 30 mm}\n"
	for seed := range uint64(160) {
		r := rand.New(rand.NewPCG(seed, 5))
		keep := 0.1 + 0.9*r.Float64()
		var b strings.Builder
		n := 0
		for _, k := range r.Perm(len(lines)) {
			if r.Float64() > keep {
				continue
			}
			l := lines[k]
			n++
			if !strings.Contains(l, "moved") {
				switch r.IntN(12) {
				case 0:
					l = strings.Replace(l, "}", ", check: true}", 1)
				case 1:
					l = strings.Replace(l, "}", ", class: drawing}", 1)
				case 2:
					l += fmt.Sprintf("\n- {strike: %d, why: slack}", n)
				}
			}
			b.WriteString(l + "\n")
		}
		if n == 0 {
			continue
		}
		bytesOf(t, run(t, head+b.String()+tail))
	}
}
