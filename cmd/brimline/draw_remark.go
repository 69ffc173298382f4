package main

import (
	"fmt"
	"strings"

	"brimline/cmd/brimline/internal/answer"
	"brimline/finding"
	"brimline/survey"
)

// remark says on standard error, a line each, what a person who cuts from the file must know of it:
// that lines are missing in it, and that figures in it must not be used.
func (d drawing) remark(r *survey.Result, s streams) error {
	says := d.missing(r)
	for _, f := range r.Findings {
		if f.Severity == string(finding.Stop) || f.Code == "unheld" {
			says = append(says, d.to+": do not cut from it: "+f.Text)
		}
	}
	for _, t := range says {
		if _, err := fmt.Fprintln(s.err, "brimline:", oneLine(answer.Plain(t))); err != nil {
			return err
		}
	}
	return nil
}

// missing says that the file holds no outline, or not all of them, and what the others wait for.
func (d drawing) missing(r *survey.Result) []string {
	drawn := 0
	var waits []string
	for _, name := range r.LineOrder {
		l := r.Lines[name]
		switch {
		case l != nil && len(l.Vertices) > 0:
			drawn++
		case l != nil && len(l.Waits) > 0:
			waits = append(waits, "line "+name+" waits for "+finding.List(l.Waits))
		default:
			waits = append(waits, "line "+name+" has no place yet")
		}
	}
	switch {
	case len(r.LineOrder) == 0:
		return []string{d.to + " holds no outline: the book names no line"}
	case drawn == 0:
		return []string{d.to + " holds no outline: " + strings.Join(waits, "; ")}
	case len(waits) > 0:
		return []string{d.to + " does not hold every line: " + strings.Join(waits, "; ")}
	}
	return nil
}
