package fieldbook_test

import (
	"fmt"
	"strings"
	"testing"

	"brimline/fieldbook"
)

// ordinary is a book of 60 marks and 250 readings, with its outline.
func ordinary() []byte {
	var b strings.Builder
	b.WriteString("brimline: 1\njob: {name: speed}\ntools:\n  tape: {sigma: 3 mm, ppm: 100}\nmarks:\n")
	for i := range 60 {
		fmt.Fprintf(&b, "  r%d: {edge: 4 mm, definition: 3 mm}\n", i)
	}
	b.WriteString("readings:\n")
	for i := range 250 {
		fmt.Fprintf(&b, "- {tie: p%d r%d, is: %d.%03d, tool: tape, time: \"2026-05-14T09:%02d:%02dZ\"}  # as read\n", i%3, i%60, 3+i%7, i, i/60, i%60)
	}
	b.WriteString("lines:\n  rim: {closed: true, edge: nose, runs: [{any: [")
	for i := range 60 {
		fmt.Fprintf(&b, "r%d, ", i)
	}
	b.WriteString("r0]}]}\n")
	return []byte(b.String())
}

// Reading an ordinary book allocates some 5.6 MB, most of it in the YAML library. Three times
// that would mean that something has become quadratic.
func TestParseIsFrugal(t *testing.T) {
	src := ordinary()
	r := testing.Benchmark(func(b *testing.B) {
		for range b.N {
			if _, err := fieldbook.Parse("x", src); err != nil {
				b.Fatal(err)
			}
		}
	})
	if got := r.AllocedBytesPerOp(); got > 16<<20 {
		t.Errorf("%d bytes allocated", got)
	}
	t.Logf("%d bytes of text: %v, %d KiB", len(src), r.NsPerOp(), r.AllocedBytesPerOp()>>10)
}

func BenchmarkParse(b *testing.B) {
	src := ordinary()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := fieldbook.Parse("x", src); err != nil {
			b.Fatal(err)
		}
	}
}
