package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"brimline/survey"
)

// patience is how long a command may be silent before it says what it is doing.
const patience = time.Second

// progress shows the running step on a terminal once a command has taken longer than patience.
type progress struct {
	out   io.Writer
	timer *time.Timer

	mu    sync.Mutex
	step  survey.Step
	shown bool
	ended bool
}

// follow starts to watch; nil when nobody is there to read. Call done when the work has ended.
func follow(s streams) *progress {
	f, ok := s.err.(*os.File)
	if !ok {
		return nil
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return nil
	}
	return watch(f, patience)
}

func watch(out io.Writer, after time.Duration) *progress {
	p := &progress{out: out}
	p.timer = time.AfterFunc(after, func() {
		defer func() { _ = recover() }() // a line about the work is not worth the work
		p.mu.Lock()
		defer p.mu.Unlock()
		p.shown = true
		p.print()
	})
	return p
}

// begin is the callback that survey.Run takes.
func (p *progress) begin(s survey.Step) {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.step = s
	p.print()
}

// print writes over the line before it.
func (p *progress) print() {
	if p.shown && !p.ended && p.step != "" {
		fmt.Fprintf(p.out, "\r\x1b[K%s …", p.step)
	}
}

// done clears the line.
func (p *progress) done() {
	if p == nil {
		return
	}
	p.timer.Stop()
	p.mu.Lock()
	defer p.mu.Unlock()
	p.ended = true
	if p.shown {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
}
