package survey_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/survey"
)

// oval is a book of n marks on an ellipse, each taped from both pegs, with as many cross tapes.
func oval(n int) string {
	at := func(k int) (x, y float64) {
		a := 2 * math.Pi * float64(k%n) / float64(n)
		return 3 + 5*math.Cos(a), 4.5 - 2.5*math.Sin(a)
	}
	var b, run strings.Builder
	b.WriteString("brimline: 1\ntools:\n  tape: {sigma: 4 mm}\nreadings:\n- {tie: A B, is: 6, tool: tape}\n")
	for k := range n {
		x, y := at(k)
		u, v := at(k + n/3)
		fmt.Fprintf(&b, "- {tie: A r%d, is: %.4f, tool: tape}\n- {tie: B r%d, is: %.4f, tool: tape}\n", k+1, math.Hypot(x, y), k+1, math.Hypot(x-6, y))
		fmt.Fprintf(&b, "- {tie: r%d r%d, is: %.4f, tool: tape}\n", k+1, (k+n/3)%n+1, math.Hypot(x-u, y-v))
		fmt.Fprintf(&run, "r%d, ", k+1)
	}
	fmt.Fprintf(&b, "lines:\n  rim: {closed: true, edge: nose, runs: [{curve: [%sr1]}]}\n", run.String())
	return b.String()
}

func BenchmarkRun60(b *testing.B) {
	book := parse(b, oval(60))
	for b.Loop() {
		if r, err := survey.Run(context.Background(), survey.Input{Book: book}, nil); err != nil || r.Marks["r60"].X == nil {
			b.Fatal(err)
		}
	}
}
