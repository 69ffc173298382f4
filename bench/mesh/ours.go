//go:build unix

package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"syscall"

	"brimline/mesh"
)

// line is what each program prints: seconds of each part, and what it found.
type line struct {
	Solver    string  `json:"solver"`
	Points    int     `json:"points"`
	Tri       float64 `json:"t_tri"`
	Constrain float64 `json:"t_constrain"` // ours has it in t_tri
	Vol       float64 `json:"t_vol"`
	Triangles int     `json:"triangles"`
	Volume    float64 `json:"volume"`
	Area      float64 `json:"area"`
}

func (l line) total() float64 { return l.Tri + l.Constrain + l.Vol }

// ours reads outline and soundings, triangulates them within the outline and prints the line.
func ours(dir string) error {
	points, err := load(filepath.Join(dir, "outline.csv"))
	if err != nil {
		return err
	}
	ring := make([]int, len(points))
	for i := range ring {
		ring[i] = i
	}
	soundings, err := load(filepath.Join(dir, "soundings.csv"))
	if err != nil {
		return err
	}
	points = append(points, soundings...)
	began := cpu()
	s, issues := mesh.Triangulate(points, nil, ring, nil)
	made := cpu()
	w := s.Under(0)
	done := cpu()
	for _, i := range issues {
		if i.Kind != mesh.Apart { // a few soundings lie between the outline's chords and the curve
			return fmt.Errorf("%s: issue %v", dir, i)
		}
	}
	text, err := json.Marshal(line{"brimline", len(points), made - began, 0, done - made, len(s.Triangles), w.Volume, w.Plan})
	if err != nil {
		return err
	}
	fmt.Println(string(text))
	return nil
}

// cpu is the processor time of the process in seconds.
func cpu() float64 {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return math.NaN()
	}
	return float64(r.Utime.Sec+r.Stime.Sec) + 1e-6*float64(r.Utime.Usec+r.Stime.Usec)
}

// load reads a file of x,y,z with one header line.
func load(name string) ([]mesh.Point3, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	var out []mesh.Point3
	for k, row := range rows[min(1, len(rows)):] {
		var v [3]float64
		if len(row) != len(v) {
			return nil, fmt.Errorf("%s:%d: %d numbers, want 3", name, k+2, len(row))
		}
		for i := range v {
			if v[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				return nil, fmt.Errorf("%s:%d: %w", name, k+2, err)
			}
		}
		out = append(out, mesh.Point3{X: v[0], Y: v[1], Z: v[2]})
	}
	return out, nil
}
