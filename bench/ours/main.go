// Command ours solves one exchange folder (bench/peers/SOURCE.md says what is in it) with the
// product's own adjust.Solve and prints the line that the peer prints. The coordinates of
// points.csv are the start; everything that Solve computes is counted: pattern, ordering, all
// iterations, the covariance of every mark and the redundancy of every reading.
//
// usage: ours NETDIR
package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"syscall"

	"brimline/adjust"
	"brimline/network"
	"brimline/plane"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: ours NETDIR")
		os.Exit(2)
	}
	n, x, err := load(os.Args[1])
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	began := cpu()
	s, _ := adjust.Solve(context.Background(), n, x, adjust.Options{})
	took := cpu() - began
	sum := 0.0
	for _, r := range s.Redund {
		sum += r
	}
	fmt.Printf("{\"solver\":\"brimline\",\"net\":%q,\"unknowns\":%d,\"rows\":%d,\"iters\":%d,\"t_solve\":%.6f,\"t_cov\":0,\"wssr\":%.9g,\"sum_r\":%.9g,\"dof\":%d}\n",
		filepath.Base(os.Args[1]), s.Unknowns, s.Rows, s.Iterations, took, s.Cost, sum, s.Redundancy)
}

// cpu is the processor time of the process in seconds.
func cpu() float64 {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return math.NaN()
	}
	return float64(r.Utime.Sec+r.Stime.Sec) + 1e-6*float64(r.Utime.Usec+r.Stime.Usec)
}

// load reads a plan network: marks, start, datum and ties.
func load(dir string) (*network.Network, network.State, error) {
	points, err := table(dir, "points.csv")
	if err != nil {
		return nil, nil, err
	}
	datum, err := table(dir, "datum.csv")
	if err != nil {
		return nil, nil, err
	}
	readings, err := table(dir, "readings.csv")
	if err != nil {
		return nil, nil, err
	}
	n := &network.Network{ByName: map[string]int{}, SetupAt: map[string]int{}, Base: [2]int{-1, -1}}
	for i, p := range points {
		n.Marks = append(n.Marks, p[0])
		n.ByName[p[0]] = i
		n.Offset = append(n.Offset, 2*i)
	}
	n.Offset = append(n.Offset, 2*len(points))
	x := n.NewState()
	for i, p := range points {
		x.SetPoint(i, plane.Point{X: number(p[1]), Y: number(p[2])})
	}
	for _, d := range datum {
		switch d[1] {
		case "xy":
			n.Base[0] = n.ByName[d[0]]
		case "y":
			n.Base[1] = n.ByName[d[0]]
		}
	}
	for _, r := range readings {
		if r[0] != "dist" {
			return nil, nil, fmt.Errorf("%s: reading of kind %q", dir, r[0])
		}
		a, b := n.ByName[r[1]], n.ByName[r[2]]
		n.Obs = append(n.Obs, network.Obs{
			Kind: network.Tie{}, Marks: []int{a, b}, Setup: -1, Size: 4, Scale: 1, Use: true,
			Blocks: []network.Unknown{network.Unknown(a), network.Unknown(b)}, At: []int{2 * a, 2 * b},
			Values: []float64{number(r[3])}, SD: []float64{number(r[4])},
		})
	}
	return n, x, nil
}

func table(dir, name string) ([][]string, error) {
	f, err := os.Open(filepath.Join(dir, name))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 2 {
		return nil, fmt.Errorf("%s: no rows (%v)", name, err)
	}
	return rows[1:], nil
}

func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}
