package fieldbook_test

import (
	"errors"
	"testing"

	"brimline/fieldbook"
)

func seeds(f *testing.F) {
	for _, c := range malformed {
		if len(c.src) < 2000 {
			f.Add([]byte(c.src))
		}
	}
	for _, src := range goodBooks(f) {
		f.Add(src)
	}
}

// Whatever the bytes, Parse ends, with a book or with faults that have a place.
func FuzzParse(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, src []byte) {
		_, err := fieldbook.Parse("x", src)
		if err == nil {
			return
		}
		var fs fieldbook.Faults
		if !errors.As(err, &fs) || len(fs) == 0 {
			t.Fatalf("%T", err)
		}
		for _, x := range fs {
			if x.Line < 1 || x.Column < 1 || x.Code == "" || x.Text == "" {
				t.Fatalf("a fault without a place: %+v", x)
			}
		}
	})
}

// Whatever the book, Append only adds or refuses.
func FuzzAppend(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, src []byte) {
		for _, e := range []fieldbook.Entry{someEntries[0], someEntries[2]} {
			out, err := fieldbook.Append(src, e)
			if err == nil && !onlyAdded(string(src), string(out)) {
				t.Fatalf("bytes changed:\n%q\n%q", src, out)
			}
		}
	})
}
