package dxf_test

import (
	"runtime"
	"strings"
	"testing"

	"brimline/sheet"
	"brimline/write/dxf"
)

func TestStructure(t *testing.T) {
	for _, v := range versions {
		for _, u := range []sheet.ModelUnit{sheet.Millimetres, sheet.Inches} {
			list := structure(t, written(t, sample(v, u)), v)
			want := map[dxf.Version]string{dxf.R2000: "AC1015", dxf.R12: "AC1009"}[v]
			if got := list[0].get(1); got != want {
				t.Errorf("version %q, want %q", got, want)
			}
		}
	}
}

// The structural test itself: spoilt files must fail. Each rule is broken once.
func TestStructureSeesFaults(t *testing.T) {
	good := written(t, sample(dxf.R2000, sheet.Millimetres))
	for what, spoil := range map[string][2]string{
		"layer unlisted": {"AcDbEntity\r\n  8\r\nmarks", "AcDbEntity\r\n  8\r\nmarx"},
		"count":          {" 90\r\n8\r\n", " 90\r\n9\r\n"},
		"owner missing":  {"330\r\n1\r\n", "330\r\nFFFF\r\n"},
		"handle twice":   {"  5\r\n2\r\n", "  5\r\n1\r\n"},
		"exponent":       {"1000.0", "1e3"},
		"section":        {"OBJECTS", "OBJEKTS"},
		"line type":      {"  6\r\nLINE_axis", "  6\r\nLINE_axes"},
	} {
		bad := strings.Replace(good, spoil[0], spoil[1], 1)
		if bad == good {
			t.Errorf("%s: nothing to spoil", what)
			continue
		}
		if !fails(func(t testing.TB) { structure(t, bad, dxf.R2000) }) {
			t.Errorf("%s went unseen", what)
		}
	}
}

// fails runs a test aside and says whether it failed.
func fails(f func(testing.TB)) bool {
	done := make(chan bool)
	go func() {
		r := &recorder{}
		defer func() { done <- r.failed }()
		f(r)
	}()
	return <-done
}

// recorder notes a failure in place of a test.
type recorder struct {
	testing.TB
	failed bool
}

func (r *recorder) Helper()               {}
func (r *recorder) Fatal(...any)          { r.stop() }
func (r *recorder) Fatalf(string, ...any) { r.stop() }

func (r *recorder) stop() {
	r.failed = true
	runtime.Goexit()
}
