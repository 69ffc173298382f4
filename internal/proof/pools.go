package main

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/survey"
)

// pools works on so many pools, all processors at once, and gives the answers in order.
func pools[T any](n int, f func(k int) T) []T {
	out := make([]T, n)
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		all.Add(1)
		go func() {
			defer all.Done()
			for {
				k := int(next.Add(1)) - 1
				if k >= n {
					return
				}
				out[k] = f(k)
			}
		}()
	}
	all.Wait()
	return out
}

// shape gives the families of pools in turn.
func shape(k int) simulate.Shape { return simulate.Shapes[k%len(simulate.Shapes)] }

// solve runs the chain on a case; nil when the book is refused, a mark of the truth has no place,
// or the figure is the mirror image of the true one.
func solve(c simulate.Case) *survey.Result {
	b, err := fieldbook.Parse("pool.yaml", c.Book)
	if err != nil {
		return nil
	}
	r, err := survey.Run(context.Background(), survey.Input{Book: &b}, nil)
	if err != nil {
		return nil
	}
	for _, name := range everyMark(c) {
		if m := r.Marks[name]; m == nil || m.X == nil {
			return nil
		}
	}
	if mirrored(c, r) {
		return nil
	}
	return r
}

// everyMark lists pegs and marks.
func everyMark(c simulate.Case) []string {
	return append(append([]string(nil), c.Pegs...), c.Order...)
}

// mirrored says that the figure lies nearer to the mirror image of the truth in the base than to
// the truth.
func mirrored(c simulate.Case, r *survey.Result) bool {
	right, wrong := 0.0, 0.0
	for _, name := range everyMark(c) {
		m, t := r.Marks[name], c.Truth[name]
		right += math.Hypot(*m.X-t.X, *m.Y-t.Y)
		wrong += math.Hypot(*m.X-t.X, *m.Y+t.Y)
	}
	return wrong < right
}

// byNumber finds a reading by its place in the book.
func byNumber(r *survey.Result, n string) *survey.Reading {
	for i := range r.Readings {
		if r.Readings[i].N == n {
			return &r.Readings[i]
		}
	}
	return nil
}
