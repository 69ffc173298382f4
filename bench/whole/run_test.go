package whole_test

import (
	"context"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
	"time"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/plane"
	"brimline/survey"
)

// fourPegs is a tape from each of four pegs to every mark, and between the pegs.
var fourPegs = simulate.Plan{Called: "four pegs", Pegs: 4, PegTies: true, Base: 2}

// books are the first so many pools, of all families in turn, whose marks number 57 to 63, or with
// `marks` above that the same outlines with so many marks set closer; 3 % of the readings are wrong.
func books(b *testing.B, count, marks int) []fieldbook.Book {
	b.Helper()
	var out []fieldbook.Book
	readings := 0
	for seed := uint64(1); len(out) < count; seed++ {
		if seed > 5000 {
			b.Fatalf("only %d pools found", len(out))
		}
		c := simulate.Visit(seed, simulate.Shapes[int(seed)%len(simulate.Shapes)], fourPegs)
		if n := len(c.Order); n < 57 || n > 63 {
			continue
		}
		if marks > 63 {
			c = denser(c, marks)
		}
		c, _ = simulate.Wrong(c, seed, 0.03)
		book, err := fieldbook.Parse("bench.yaml", c.Book)
		if err != nil {
			b.Fatal(err)
		}
		readings += len(c.Readings)
		out = append(out, book)
	}
	b.Logf("%d books of %d readings", count, readings/count)
	return out
}

// denser sets so many marks evenly along the outline of a case and tapes each from every peg.
func denser(c simulate.Case, marks int) simulate.Case {
	r := rand.New(rand.NewPCG(c.Seed, 300))
	truth := map[string]plane.Point{}
	for _, p := range c.Pegs {
		truth[p] = c.Truth[p]
	}
	c.Truth, c.Order, c.Setups = truth, nil, nil
	line := c.Outline.Reverse() // clockwise
	step, at := line.Length()/float64(marks), 0.0
	for _, s := range line.Segs {
		for l := s.Length(); at < l && len(c.Order) < marks; at += step {
			name := "r" + strconv.Itoa(len(c.Order)+1)
			c.Order, c.Truth[name] = append(c.Order, name), s.At(at/l)
		}
		at -= s.Length()
	}
	c.Rim = simulate.Rim{Edge: c.Rim.Edge, Runs: []simulate.Run{{Kind: "curve", Marks: append(append([]string(nil), c.Order...), c.Order[0])}}}
	c.Readings = nil
	read := func(a, b string) {
		is := c.Truth[a].Dist(c.Truth[b])
		sd := math.Hypot(c.Tools[0].Sigma, 1e-6*c.Tools[0].PPM*is)
		text := strconv.FormatFloat(is+sd*r.NormFloat64(), 'f', 3, 64)
		typed, _ := strconv.ParseFloat(text, 64)
		c.Readings = append(c.Readings, simulate.Reading{N: strconv.Itoa(len(c.Readings) + 1), Kind: "tie", Marks: []string{a, b}, Tool: c.Tools[0].Name,
			True: []float64{is}, Read: []float64{typed}, Typed: []float64{typed}, Text: []string{text}, SD: []float64{sd}})
	}
	for k, p := range c.Pegs {
		for _, q := range c.Pegs[k+1:] {
			read(p, q)
		}
	}
	for _, p := range c.Pegs {
		for _, m := range c.Order {
			read(p, m)
		}
	}
	return c
}

// run measures the chain over the books in turn and tells what each stage takes.
func run(b *testing.B, count, marks int) {
	all := books(b, count, marks)
	stage := map[survey.Step]time.Duration{}
	suspect, n := 0, 0
	b.ReportAllocs()
	for b.Loop() {
		var at survey.Step
		began := time.Now()
		step := func(s survey.Step) {
			now := time.Now()
			stage[at] += now.Sub(began)
			at, began = s, now
		}
		r, err := survey.Run(context.Background(), survey.Input{Book: &all[n%len(all)]}, step)
		if err != nil {
			b.Fatal(err)
		}
		step("")
		n++
		for _, x := range r.Readings {
			if x.State == "suspect" {
				suspect++
			}
		}
	}
	if suspect == 0 {
		b.Fatal("no mistake was found: this is not what is to be measured")
	}
	for _, s := range []survey.Step{survey.StepLocate, survey.StepAdjust, survey.StepMistake, survey.StepOutline, survey.StepResult} {
		b.ReportMetric(1e3*stage[s].Seconds()/float64(n), "ms:"+strings.ReplaceAll(string(s), " ", "-"))
	}
	b.ReportMetric(1e3*b.Elapsed().Seconds()/float64(n), "ms/book")
	b.ReportMetric(0, "ns/op") // not told twice
}

// About 250 readings; the aim is 15 ms.
func BenchmarkRun60(b *testing.B) { run(b, 20, 60) }

// About 1,200 readings; the aim is 150 ms.
func BenchmarkRun300(b *testing.B) { run(b, 3, 300) }
