package main

import (
	"bytes"
	"strings"
	"sync"
	"testing"
	"time"

	"brimline/survey"
)

// screen can be read while it is written.
type screen struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (s *screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.Write(p)
}

func (s *screen) text() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}

func TestProgressShowsOnlyWhatTakesLong(t *testing.T) {
	var quick screen
	p := watch(&quick, time.Hour)
	p.begin(survey.StepAdjust)
	p.done()
	if quick.text() != "" {
		t.Errorf("a quick command said %q", quick.text())
	}

	var slow screen
	p = watch(&slow, time.Millisecond)
	p.begin(survey.StepLocate)
	for end := time.Now().Add(10 * time.Second); slow.text() == "" && time.Now().Before(end); {
		time.Sleep(time.Millisecond)
	}
	p.begin(survey.StepAdjust)
	p.done()
	p.begin(survey.StepResult)
	got := slow.text()
	if !strings.Contains(got, string(survey.StepLocate)) || !strings.Contains(got, string(survey.StepAdjust)) ||
		strings.Contains(got, string(survey.StepResult)) || !strings.HasSuffix(got, "\r\x1b[K") {
		t.Errorf("a slow command said %q", got)
	}

	var none *progress // nobody is watching
	none.begin(survey.StepAdjust)
	none.done()
}
