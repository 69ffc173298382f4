package main

import (
	"math"
	"strings"
	"testing"
)

func TestMedian(t *testing.T) {
	for _, c := range []struct {
		in   []float64
		want float64
	}{{[]float64{3}, 3}, {[]float64{5, 1}, 3}, {[]float64{9, 1, 2}, 2}, {[]float64{4, 1, 3, 2}, 2.5}} {
		if got := median(c.in); got != c.want {
			t.Errorf("median(%v) = %v, want %v", c.in, got, c.want)
		}
	}
}

func TestDisagreements(t *testing.T) {
	good := line{Unknowns: 60, Rows: 100, WSSR: 41.5, SumR: 40}
	rows := func(second line) []row {
		return []row{{net: "A", program: "direct", line: good}, {net: "A", program: "ours", line: second}}
	}
	if got := disagreements(rows(good)); len(got) != 0 {
		t.Errorf("equal answers differ: %v", got)
	}
	for _, bad := range []line{
		{Unknowns: 60, Rows: 100, WSSR: 41.6, SumR: 40},
		{Unknowns: 60, Rows: 100, WSSR: 41.5, SumR: 39.9},
		{Unknowns: 60, Rows: 100, WSSR: math.NaN(), SumR: 40},
	} {
		if got := disagreements(rows(bad)); len(got) != 1 {
			t.Errorf("%+v: %d disagreements, want 1", bad, len(got))
		}
	}
}

func TestRatioIsToTheQuickestReference(t *testing.T) {
	rows := []row{
		{net: "A50", program: "direct-eigen", line: line{Solve: 0.004}},
		{net: "A50", program: "direct-cholmod", line: line{Solve: 0.002}},
		{net: "A50", program: "ours", line: line{Solve: 0.002, Cov: 0.001}},
	}
	if got := markdown(rows, options{runs: 1}); !strings.Contains(got, "| 3.00 | 0.00 | 1.50 |") {
		t.Errorf("no ratio 1.50 in\n%s", got)
	}
}
