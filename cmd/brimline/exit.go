package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"brimline/fieldbook"
)

// The exit statuses.
const (
	exitDone     = 0
	exitNotReady = 1
	exitRefused  = 2
	exitFailed   = 3
)

// streams are the three that a command has.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// errNotReady ends solve with 1; the answer itself has said why.
var errNotReady = errors.New("not ready")

// refusal is input, or a use of the command, that was not accepted.
type refusal struct{ text string }

func (r refusal) Error() string { return r.text }

func refuse(format string, args ...any) error { return refusal{fmt.Sprintf(format, args...)} }

// settle prints what an error has to say and gives the exit status.
func settle(err error, s streams) int {
	var faults fieldbook.Faults
	var r refusal
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errNotReady):
		return exitNotReady
	case errors.As(err, &faults):
		fmt.Fprintln(s.err, strings.TrimRight(faults.Error(), "\n"))
		return exitRefused
	case errors.As(err, &r):
		fmt.Fprintln(s.err, "brimline:", oneLine(r.text))
		return exitRefused
	}
	fmt.Fprintln(s.err, "brimline:", oneLine(err.Error()))
	return exitFailed
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
