package main

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"

	"brimline/fieldbook"
	"brimline/survey"
)

// mostBytes is one more than any book may have: enough for the parser to see that it is too long.
const mostBytes = 8<<20 + 1

// readBook reads and parses BOOK. A file that cannot be read is refused, as is a faulty book.
func readBook(path string, s streams) (fieldbook.Book, error) {
	src, err := readSource(path, s)
	if err != nil {
		return fieldbook.Book{}, refuse("reading the book: %v", err)
	}
	return fieldbook.Parse(path, src)
}

func readSource(path string, s streams) ([]byte, error) {
	if path == "-" {
		return io.ReadAll(io.LimitReader(s.in, mostBytes))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, mostBytes))
}

// runBook solves a book and shows the steps where that takes long.
func runBook(ctx context.Context, b *fieldbook.Book, s streams) (*survey.Result, error) {
	p := follow(s)
	defer p.done()
	return survey.Run(ctx, survey.Input{Book: b}, p.begin)
}

// faultsJSON prints the faults of a refused book on standard output, for programs, and hands the
// error on; an error that is no list of faults prints nothing.
func faultsJSON(err error, s streams) error {
	var faults fieldbook.Faults
	if !errors.As(err, &faults) {
		return err
	}
	if e := printJSON(s.out, map[string]any{"faults": faults}); e != nil {
		return e
	}
	return err
}

// printJSON writes one indented object and nothing when it cannot be encoded.
func printJSON(w io.Writer, v any) error {
	b, err := json.MarshalIndent(v, "", " ")
	if err != nil {
		return err
	}
	_, err = w.Write(append(b, '\n'))
	return err
}
