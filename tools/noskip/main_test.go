package main

import (
	"strings"
	"testing"
)

func TestNoskip(t *testing.T) {
	const pass = `{"Action":"output","Package":"p","Test":"TestA","Output":"=== RUN TestA\n"}
{"Action":"pass","Package":"p","Test":"TestA"}
{"Action":"output","Package":"p","Output":"PASS\n"}
{"Action":"output","Package":"p","Output":"ok  \tp\t0.1s\n"}
{"Action":"pass","Package":"p"}
`
	cases := []struct {
		name, in, want, never string
		status                int
	}{
		{"passes", pass, "ok  \tp\t0.1s\n1 passed, 0 failed, 0 skipped\n", "=== RUN", 0},
		{"skips", pass + `{"Action":"skip","Package":"p","Test":"TestB"}` + "\n", "full run does not allow: p TestB\n", "", 1},
		{"fails", pass + `{"Action":"output","Package":"p","Test":"TestC","Output":"c_test.go:9: no\n"}
{"Action":"fail","Package":"p","Test":"TestC"}
`, "c_test.go:9: no\n", "", 1},
		{"dies", pass + `{"Action":"output","Package":"p","Test":"TestD","Output":"panic: d\n"}
{"Action":"fail","Package":"p"}
`, "unfinished: p TestD\npanic: d\n", "", 1},
		{"does not build", pass + `{"Action":"build-output","Output":"p.go:1: syntax error\n"}
{"Action":"build-fail"}
`, "p.go:1: syntax error\n", "", 1},
		{"runs nothing", `{"Action":"output","Package":"p","Output":"?   \tp\t[no test files]\n"}` + "\n", "no test files", "", 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var out strings.Builder
			r := &report{out: &out, held: map[string][]string{}}
			if err := r.read(strings.NewReader(c.in)); err != nil {
				t.Fatal(err)
			}
			if got := r.close(); got != c.status {
				t.Errorf("status %d, want %d", got, c.status)
			}
			if !strings.Contains(out.String(), c.want) || c.never != "" && strings.Contains(out.String(), c.never) {
				t.Errorf("printed %q, want %q", out.String(), c.want)
			}
		})
	}
}
