package fieldbook

import (
	"bytes"
	"unicode/utf8"
)

// The limits of a book. They keep the memory of a refusal below some hundred megabytes and let
// through thirty times the largest job thought of; common practice, no source.
const (
	mostBytes   = 8 << 20
	mostSigns   = 500_000 // bytes that can begin or end a YAML token: bounds the number of tokens
	mostEntries = 20_000  // items of one list
	mostKeys    = 4_000   // keys of one block mapping: the YAML library copies them n²/2 times
	mostDepth   = 64
	mostFaults  = 100 // of bytes and tokens; then the file is no book and more would not help
)

// byteOrderMark may stand before a book and is no part of it.
var byteOrderMark = []byte("\ufeff")

// scan looks at the bytes before anything else does: size, encoding, control characters and the
// number of signs. It knows nothing of quotes or comments, so nothing can hide from it.
func scan(src []byte) Faults {
	if len(src) > mostBytes {
		return Faults{{Line: 1, Column: 1, Code: "too-big", Text: "the book is too big", Expected: "at most 8 MiB"}}
	}
	var fs Faults
	signs := 0
	line, start := 1, 0
	fault := func(i int, code, text, expected string) {
		fs = append(fs, Fault{Line: line, Column: utf8.RuneCount(src[start:i]) + 1, Code: code, Text: text, Expected: expected})
	}
	for i := 0; i < len(src) && len(fs) < mostFaults; {
		c := src[i]
		switch {
		case c >= utf8.RuneSelf:
			r, n := utf8.DecodeRune(src[i:])
			if r == utf8.RuneError && n == 1 {
				fault(i, "not-utf8", "a byte that is no UTF-8 text", "a file saved as UTF-8")
			}
			i += n
			continue
		case c == '\n':
			line, start = line+1, i+1
			signs++
		case c == '\r':
			if i+1 >= len(src) || src[i+1] != '\n' {
				fault(i, "line-break", "a carriage return without a line feed", "line feeds, with or without a carriage return before")
			}
		case c < ' ' && c != '\t' || c == 0x7f:
			fault(i, "control", "a control character", "plain text")
		case bytes.IndexByte(tokenSigns, c) >= 0:
			signs++
		}
		if signs > mostSigns {
			fault(i, "too-many", "more lists, keys and lines than a field book has", "")
			return fs
		}
		i++
	}
	return fs
}

var tokenSigns = []byte(`[]{},:-#?&*!|>'"%@`)
