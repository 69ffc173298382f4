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
	"syscall"
	"time"

	"brimline/internal/parallels"
	"brimline/plane"
)

// chordRise is what the chords that stand for arcs may leave them by, in metres: over the length of
// these rings an area of 10⁻⁵ m².
const chordRise = 5e-7

// distances outward and inward in metres.
var distances = []float64{0.3, -0.3}

// enough runs has a reference that takes more than a second for one parallel.
const enough = 3

// line is what each program prints: processor seconds of one parallel, and what it is.
type line struct {
	T     float64 `json:"t"`
	Area  float64 `json:"area"`
	Rings int     `json:"rings"`
}

// row is one ring at one distance: medians over the runs.
type row struct {
	kind       string
	n, points  int // segments of ours, corners of the chords that GEOS gets
	d          float64
	ours, geos line
	exact      float64 // area
}

func race(o options) error {
	peer, err := buildPeer(o.out)
	if err != nil {
		fmt.Printf("GEOS is not here (%v): racing alone.\n\n", err)
	}
	var rows []row
	for _, kind := range parallels.Kinds {
		for _, n := range o.sizes {
			p := parallels.Ring(kind, n)
			file := filepath.Join(o.out, fmt.Sprintf("ring-%s-%d.csv", kind, n))
			points, err := write(file, p)
			if err != nil {
				return err
			}
			for _, d := range distances {
				r := row{kind: kind, n: n, points: points, d: d, exact: parallels.Area(p, d)}
				if err := r.run(o, peer, file); err != nil {
					return err
				}
				rows = append(rows, r)
			}
		}
	}
	fmt.Print(markdown(rows, o))
	return wrong(rows)
}

// run lets both programs go in turns.
func (r *row) run(o options, peer, file string) error {
	self, err := os.Executable()
	if err != nil {
		return err
	}
	millis := strconv.Itoa(o.millis)
	var mine, theirs []line
	for range o.runs {
		l, err := once(self, "-ms", millis, "-ours", name(r.kind, r.n, r.d))
		if err != nil {
			return err
		}
		mine = append(mine, l)
		if peer == "" || len(theirs) == enough && theirs[0].T > 1 {
			continue
		}
		if l, err = once(peer, file, fmt.Sprint(r.d), "8", millis); err != nil {
			return err
		}
		theirs = append(theirs, l)
	}
	r.ours, r.geos = median(mine), median(theirs)
	return nil
}

// once runs a program on one thread and reads its line.
func once(program string, args ...string) (line, error) {
	c := exec.Command(program, args...)
	c.Env = append(os.Environ(), "GOMAXPROCS=1")
	c.Stderr = os.Stderr
	text, err := c.Output()
	if err != nil {
		return line{}, fmt.Errorf("%s %v: %w", program, args, err)
	}
	var l line
	return l, json.Unmarshal(text, &l)
}

// median is the line with the middle time.
func median(ls []line) line {
	if len(ls) == 0 {
		return line{T: math.NaN(), Area: math.NaN()}
	}
	slices.SortFunc(ls, func(a, b line) int {
		if a.T < b.T {
			return -1
		}
		return 1
	})
	return ls[len(ls)/2]
}

// named reads back what name made.
func named(text string) (plane.Path, float64, error) {
	var kind string
	var n int
	var d float64
	if _, err := fmt.Sscanf(text, "%s %d %g", &kind, &n, &d); err != nil {
		return plane.Path{}, 0, fmt.Errorf("-ours: %q: %w", text, err)
	}
	return parallels.Ring(kind, n), d, nil
}

func name(kind string, n int, d float64) string { return fmt.Sprintf("%s %d %g", kind, n, d) }

// ours times our own parallel of one ring.
func ours(text string, millis int) error {
	p, d, err := named(text)
	if err != nil {
		return err
	}
	out, err := p.Offset(d, plane.RoundCorners)
	if err != nil {
		return err
	}
	l := line{Rings: len(out.Paths)}
	for _, q := range out.Paths {
		l.Area += q.Area()
	}
	began, rounds := cpu(), 0
	for ; rounds == 0 || cpu()-began < 1e-3*float64(millis); rounds++ {
		if _, err := p.Offset(d, plane.RoundCorners); err != nil {
			return err
		}
	}
	l.T = (cpu() - began) / float64(rounds)
	return json.NewEncoder(os.Stdout).Encode(l)
}

// cpu is the processor time of the process, seconds.
func cpu() float64 {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return math.NaN()
	}
	return (time.Duration(r.Utime.Nano()) + time.Duration(r.Stime.Nano())).Seconds()
}

// buildPeer compiles the reference; an error says that the compiler or GEOS is missing.
func buildPeer(out string) (string, error) {
	bin := filepath.Join(out, "bin", "buffer")
	if err := os.MkdirAll(filepath.Dir(bin), 0o755); err != nil {
		return "", err
	}
	c := exec.Command("g++", "-O3", "-std=c++17", "-o", bin, filepath.Join("bench", "peers", "buffer", "buffer.cpp"), "-lgeos_c")
	if err := c.Run(); err != nil {
		return "", err
	}
	return bin, nil
}

// write gives the ring as chords to a file, and their number.
func write(file string, p plane.Path) (int, error) {
	points := p.Flatten(chordRise)
	text := []byte("x,y\n")
	for _, q := range points {
		text = fmt.Appendf(text, "%.17g,%.17g\n", q.X, q.Y)
	}
	return len(points), os.WriteFile(file, text, 0o644)
}
