package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"brimline/fieldbook"
	"brimline/survey"
	"brimline/unit"
)

// corrected is a reading with one edit made: the same marks, tool and words, but for the value or
// the marks that the edit changes. It is a correction that nobody read.
func corrected(r fieldbook.Reading, e survey.Edit, u unit.Unit) (fieldbook.Reading, error) {
	r.Computed = true
	if len(e.Marks) > 0 {
		if len(e.Marks) != len(r.Marks) {
			return r, fmt.Errorf("%d marks where the reading has %d", len(e.Marks), len(r.Marks))
		}
		r.Marks = slices.Clone(e.Marks)
	}
	if e.Value == nil {
		return r, nil
	}
	at := slices.IndexFunc(r.Values, func(v fieldbook.Value) bool { return e.Part == "" || v.Part == e.Part })
	if at < 0 || e.Part == "" && len(r.Values) > 1 {
		return r, fmt.Errorf("it has no value %q", e.Part)
	}
	r.Values = slices.Clone(r.Values)
	if fieldbook.Angular(r.Kind) {
		r.Values[at].Metres, r.Values[at].Text = turned(*e.Value)
	} else {
		r.Values[at].Metres, r.Values[at].Text = spelled(*e.Value, u)
	}
	return r, nil
}

// finest is what a correction is rounded to: a tenth of a millimetre, finer than any tape is read.
const finest = 1e-4

// spelled writes a length as the book's own unit would have it typed, and gives what that says in
// metres. In feet a figure that is no sixteenth of an inch is written in metres.
func spelled(metres float64, u unit.Unit) (float64, string) {
	rounded := math.Round(metres/finest) * finest
	if u == unit.FT || u == unit.IN {
		text := unit.StyleFor(u).Length(metres)
		if v, err := unit.ParseLength(text, u); err == nil && math.Abs(v-metres) <= finest/2 {
			return v, text
		}
		return parsed(strconv.FormatFloat(rounded, 'f', -1, 64)+" m", u, rounded)
	}
	per, places := 1.0, 4
	switch u {
	case unit.CM:
		per, places = 100, 2
	case unit.MM:
		per, places = 1000, 1
	}
	return parsed(shortest(rounded*per, places), u, rounded)
}

// turned writes degrees to a ten-thousandth, and gives what that says in radians.
func turned(degrees float64) (float64, string) {
	text := strconv.FormatFloat(math.Round(degrees*1e4)/1e4, 'f', -1, 64)
	if v, err := unit.ParseAngle(text); err == nil {
		return v, text
	}
	return degrees * math.Pi / 180, ""
}

// shortest keeps the figures of a millimetre where there is nothing below it.
func shortest(v float64, places int) string {
	text := strconv.FormatFloat(v, 'f', places, 64)
	if text[len(text)-1] == '0' {
		text = text[:len(text)-1]
	}
	if text[len(text)-1] == '.' {
		text = text[:len(text)-1]
	}
	return text
}

// parsed is what a text says when it is read back.
func parsed(text string, u unit.Unit, otherwise float64) (float64, string) {
	if v, err := unit.ParseLength(text, u); err == nil {
		return v, text
	}
	return otherwise, ""
}
