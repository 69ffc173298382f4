//go:build unix

package main

import (
	"math"
	"testing"
)

func TestMedian(t *testing.T) {
	m := median([]line{{Tri: 3, Vol: 1, Triangles: 8}, {Tri: 1, Vol: 2}, {Tri: 2, Vol: 9}})
	if m.Tri != 2 || m.Vol != 2 || m.Triangles != 8 {
		t.Errorf("%+v", m)
	}
}

func TestFaults(t *testing.T) {
	good := line{Triangles: 9, Volume: 81, Area: 50, Tri: 0.1}
	with := func(change func(*line)) line {
		l := good
		change(&l)
		return l
	}
	for _, c := range []struct {
		name  string
		mine  line
		alone bool
		want  int
	}{
		{"equal", good, false, 0},
		{"other volume", with(func(l *line) { l.Volume += 1e-6 }), false, 1},
		{"no area", with(func(l *line) { l.Area = math.NaN() }), false, 1},
		{"other triangles", with(func(l *line) { l.Triangles++ }), false, 1},
		{"slower, allowed", with(func(l *line) { l.Vol = 0.19 }), false, 0},
		{"too slow", with(func(l *line) { l.Vol = 0.21 }), false, 1},
		{"alone", with(func(l *line) { l.Vol = 0.21 }), true, 0},
		{"alone, too slow", with(func(l *line) { l.Vol = 1 }), true, 1},
	} {
		rows := [][]line{{c.mine}, {good}}
		if c.alone {
			rows = rows[:1]
		}
		if got := faults(limitPoints, rows); len(got) != c.want {
			t.Errorf("%s: %v, want %d faults", c.name, got, c.want)
		}
	}
}
