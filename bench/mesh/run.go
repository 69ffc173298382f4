//go:build unix

package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// What ours may take at limitPoints: so many times CGAL's time, and where CGAL is not installed so many seconds.
const (
	limitPoints  = 100_000
	limitRatio   = 3
	limitSeconds = 1
)

// race builds the programs, makes the soundings, runs all in turns and judges.
func race(o options) error {
	programs, err := build(o.out)
	if err != nil {
		return err
	}
	fmt.Printf("Medians of %d runs, run alternately, CPU milliseconds of one thread.\n\n", o.runs)
	fmt.Println("| points | program | triangles | triangulate ms | volume ms | both ms | least ms | ratio |\n|---:|---|---:|---:|---:|---:|---:|---:|")
	var wrong []string
	for _, n := range o.points {
		dir, err := soundings(o.out, n)
		if err != nil {
			return err
		}
		rows := make([][]line, len(programs))
		for range o.runs {
			for k, p := range programs {
				l, err := once(append(slices.Clone(p), dir))
				if err != nil {
					return fmt.Errorf("%s on %s: %w", p[0], dir, err)
				}
				rows[k] = append(rows[k], l)
			}
		}
		wrong = append(wrong, judge(n, rows)...)
	}
	if len(wrong) > 0 {
		return fmt.Errorf("%s", strings.Join(wrong, "; "))
	}
	return nil
}

// judge prints the rows of one size, ours first, and says what is wrong with them.
func judge(n int, rows [][]line) []string {
	reference := median(rows[len(rows)-1])
	for _, ls := range rows {
		m := median(ls)
		least := math.Inf(1)
		for _, x := range ls {
			least = min(least, x.total())
		}
		fmt.Printf("| %d | %s | %d | %.2f | %.2f | %.2f | %.2f | %.2f |\n", n, m.Solver, m.Triangles,
			1e3*(m.Tri+m.Constrain), 1e3*m.Vol, 1e3*m.total(), 1e3*least, m.total()/reference.total())
	}
	return faults(n, rows)
}

// faults are where the programs differ, and ours being too slow.
func faults(n int, rows [][]line) []string {
	var out []string
	mine := rows[0][0]
	for _, ls := range rows[1:] {
		l := ls[0]
		if l.Triangles != mine.Triangles || !(math.Abs(l.Volume-mine.Volume) <= 1e-9*l.Volume) || !(math.Abs(l.Area-mine.Area) <= 1e-9*l.Area) {
			out = append(out, fmt.Sprintf("%d points: %+v differs from %+v", n, mine, l))
		}
	}
	limit := float64(limitSeconds)
	if len(rows) > 1 {
		limit = limitRatio * median(rows[len(rows)-1]).total()
	}
	if took := median(rows[0]).total(); n == limitPoints && !(took <= limit) {
		out = append(out, fmt.Sprintf("%d points take %.3f s, may take %.3f s", n, took, limit))
	}
	return out
}

// median is each time's own median; what was found is the first's.
func median(ls []line) line {
	of := func(time func(line) float64) float64 {
		var v []float64
		for _, l := range ls {
			v = append(v, time(l))
		}
		slices.Sort(v)
		return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
	}
	m := ls[0]
	m.Tri = of(func(l line) float64 { return l.Tri })
	m.Constrain = of(func(l line) float64 { return l.Constrain })
	m.Vol = of(func(l line) float64 { return l.Vol })
	return m
}

// once runs a program on one thread with the CPU clock and reads its line.
func once(args []string) (line, error) {
	c := exec.Command(args[0], args[1:]...)
	c.Env = append(os.Environ(), "PERF_CLOCK=cpu", "GOMAXPROCS=1")
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

// build compiles this command, and CGAL's where it is installed, and gives how to start each.
func build(out string) ([][]string, error) {
	bin := filepath.Join(out, "bin")
	if err := os.MkdirAll(bin, 0o755); err != nil {
		return nil, err
	}
	mine, peer := filepath.Join(bin, "mesh"), filepath.Join(bin, "peer_tri_cgal")
	if err := command("go", "build", "-o", mine, "./bench/mesh"); err != nil {
		return nil, fmt.Errorf("building bench/mesh: %w", err)
	}
	programs := [][]string{{mine, "-one"}}
	if _, err := os.Stat("/usr/include/CGAL/version.h"); err != nil {
		fmt.Fprintln(os.Stderr, "CGAL is not installed: only the limit in seconds is held against ours")
		return programs, nil
	}
	err := command("g++", "-O3", "-march=native", "-std=c++17", "-DNDEBUG", "-frounding-math", "-o", peer,
		filepath.Join("bench", "peers", "tri", "peer_tri_cgal.cpp"), "-lgmp", "-lmpfr")
	if err != nil {
		return nil, fmt.Errorf("building CGAL's program: %w", err)
	}
	return append(programs, []string{peer}), nil
}

// soundings makes the folder of one size if it is missing, seeded.
func soundings(out string, n int) (string, error) {
	dir := filepath.Join(out, "nets", "C"+strconv.Itoa(n))
	if _, err := os.Stat(filepath.Join(dir, "truth.txt")); err == nil {
		return dir, nil
	}
	python, err := numpyPython()
	if err != nil {
		return "", err
	}
	if err := command(python, filepath.Join("bench", "peers", "gen", "gen_surface.py"), strconv.Itoa(n), dir); err != nil {
		return "", fmt.Errorf("making %s: %w", dir, err)
	}
	return dir, nil
}

// numpyPython is the first interpreter on the path that can import numpy.
func numpyPython() (string, error) {
	for _, dir := range filepath.SplitList(os.Getenv("PATH")) {
		p := filepath.Join(dir, "python3")
		if exec.Command(p, "-c", "import numpy").Run() == nil {
			return p, nil
		}
	}
	return "", fmt.Errorf("no python3 on the path can import numpy")
}

func command(name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = os.Stderr, os.Stderr
	return c.Run()
}
