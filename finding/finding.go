// Package finding says what a person should know although the work went on: a code from a
// closed list, how much it matters, where it is, the figures behind it and the cure. Sentences
// are made here and nowhere else, from the code and the figures; shells only sort and print.
package finding

import (
	"math"
	"sort"
	"strconv"
	"strings"
)

// Severity says what a finding asks of the reader.
type Severity string

// The severities, the weightiest first.
const (
	Stop Severity = "stop" // the figures it concerns must not be used
	Ask  Severity = "ask"  // a person has to decide or to read something
	Warn Severity = "warn" // the figures hold, with a reservation
	Note Severity = "note" // worth knowing
)

// Rank orders severities, 0 the weightiest.
func (s Severity) Rank() int {
	for i, x := range []Severity{Stop, Ask, Warn, Note} {
		if s == x {
			return i
		}
	}
	return 4
}

// Finding is one thing to know. Figures are in metres, radians, m² or plain numbers, as the
// code's template says; Words are names that are neither marks nor readings.
type Finding struct {
	Code     string
	Marks    []string
	Lines    []string
	Readings []string // the numbers people use ("31"), in book order
	Figures  map[string]float64
	Words    map[string]string
}

// Severity is the one that the list of codes gives.
func (f Finding) Severity() Severity {
	if c, ok := lookup(f.Code); ok {
		return c.Severity
	}
	return Warn
}

// Code is one member of the closed list: its template may hold {marks}, {lines}, {readings},
// a word's name, or a figure's name with a form: {move:len}, {turn:deg}, {part:pct}, {n:count}, {v:num}.
type Code struct {
	Code     string
	Severity Severity
	Text     string
	Cure     string
}

func lookup(code string) (Code, bool) {
	for _, c := range Codes {
		if c.Code == code {
			return c, true
		}
	}
	return Code{}, false
}

// Text is the sentence. length prints metres in the reader's unit; nil prints millimetres below
// one metre and metres from there.
func (f Finding) Text(length func(metres float64) string) string {
	c, ok := lookup(f.Code)
	if !ok {
		return f.Code
	}
	return f.fill(c.Text, length)
}

// Cure says what to do about it; empty where nothing needs doing.
func (f Finding) Cure(length func(metres float64) string) string {
	c, _ := lookup(f.Code)
	return f.fill(c.Cure, length)
}

func (f Finding) fill(t string, length func(float64) string) string {
	if length == nil {
		length = metric
	}
	var b strings.Builder
	for {
		i := strings.IndexByte(t, '{')
		if i < 0 {
			break
		}
		j := strings.IndexByte(t[i:], '}')
		if j < 0 {
			break
		}
		b.WriteString(t[:i])
		b.WriteString(f.value(t[i+1:i+j], length))
		t = t[i+j+1:]
	}
	b.WriteString(t)
	return b.String()
}

func (f Finding) value(key string, length func(float64) string) string {
	name, form, _ := strings.Cut(key, ":")
	if form == "" {
		switch name {
		case "marks":
			return List(f.Marks)
		case "lines":
			return List(f.Lines)
		case "readings":
			return List(f.Readings)
		}
		return f.Words[name]
	}
	v, ok := f.Figures[name]
	if !ok || math.IsNaN(v) {
		return "unknown"
	}
	switch form {
	case "len":
		return length(v)
	case "deg":
		return strconv.FormatFloat(v*180/math.Pi, 'f', 1, 64) + "°"
	case "pct":
		return strconv.FormatFloat(100*v, 'f', 1, 64) + " %"
	case "count":
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', 2, 64)
}

func metric(v float64) string {
	if math.Abs(v) < 1 {
		return strconv.FormatFloat(v*1000, 'f', 0, 64) + " mm"
	}
	return strconv.FormatFloat(v, 'f', 3, 64) + " m"
}

// List writes "r1, r2 and r3"; past eight names the rest are counted.
func List(names []string) string {
	const most = 8
	n := len(names)
	switch {
	case n == 0:
		return ""
	case n == 1:
		return names[0]
	case n > most:
		return strings.Join(names[:most-1], ", ") + " and " + strconv.Itoa(n-most+1) + " more"
	}
	return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
}

// Sort puts the weightiest first and keeps the order among equals.
func Sort(fs []Finding) {
	sort.SliceStable(fs, func(i, j int) bool { return fs[i].Severity().Rank() < fs[j].Severity().Rank() })
}
