package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"brimline/cmd/brimline/internal/answer"
	"brimline/fieldbook"
	"brimline/survey"
)

// acceptance is what a person took over of the mistakes that solve named: the book before and after.
type acceptance struct {
	path string
	was  []byte
	now  []byte
	book fieldbook.Book // as it stands with the corrections
	said []string       // the numbers of the corrected readings
}

// accept makes the text of the book with the corrections of the mistakes numbered so, from 1. It
// writes nothing.
func accept(ctx context.Context, path string, numbers []int, s streams) (*acceptance, error) {
	if path == "-" {
		return nil, refuse("--accept writes into the book, and standard input is no file")
	}
	src, err := readSource(path, s)
	if err != nil {
		return nil, refuse("reading the book: %v", err)
	}
	book, err := fieldbook.Parse(path, src)
	if err != nil {
		return nil, err
	}
	r, err := runBook(ctx, &book, s)
	if err != nil {
		return nil, err
	}
	return take(path, src, &book, r.Mistakes, numbers)
}

// take makes the text of a book with the chosen ones of its mistakes corrected.
func take(path string, src []byte, b *fieldbook.Book, all []survey.Mistake, numbers []int) (*acceptance, error) {
	chosen, err := choose(all, numbers)
	if err != nil {
		return nil, err
	}
	a := &acceptance{path: path, was: src}
	entries, err := a.corrections(b, chosen)
	if err != nil {
		return nil, err
	}
	if a.now, err = fieldbook.Append(src, entries...); err != nil {
		return nil, fmt.Errorf("correcting the book: %w", err)
	}
	if a.book, err = fieldbook.Parse(path, a.now); err != nil {
		return nil, fmt.Errorf("correcting the book: %w", err)
	}
	return a, nil
}

// pairs are the corrected readings with the entries that stand for them now.
func (a *acceptance) pairs() []answer.Correction {
	var out []answer.Correction
	for _, t := range a.book.Readings {
		if t.Computed && !t.Struck && slices.Contains(a.said, t.Replace) {
			out = append(out, answer.Correction{Was: t.Replace, Now: t.N})
		}
	}
	return out
}

// choose takes the mistakes by their numbers as solve prints them.
func choose(all []survey.Mistake, numbers []int) ([]survey.Mistake, error) {
	var out []survey.Mistake
	for i, n := range numbers {
		switch {
		case n < 1 || n > len(all):
			return nil, refuse("--accept %d: %s", n, howMany(len(all)))
		case slices.Contains(numbers[:i], n):
			return nil, refuse("--accept %d: said twice", n)
		case len(all[n-1].Edit) == 0:
			return nil, refuse("--accept %d: nothing says what the reading should be; only reading it again can tell", n)
		}
		out = append(out, all[n-1])
	}
	return out, nil
}

func howMany(n int) string {
	switch n {
	case 0:
		return "the answer names no mistake"
	case 1:
		return "the answer names one mistake, number 1"
	}
	return fmt.Sprintf("the answer names mistakes 1 to %d", n)
}

// corrections are the entries for the edits of the mistakes: one a reading, however many of its
// values change.
func (a *acceptance) corrections(b *fieldbook.Book, chosen []survey.Mistake) ([]fieldbook.Entry, error) {
	var out []fieldbook.Entry
	by := map[string]int{} // the mistake that corrects a reading
	for k, m := range chosen {
		for _, e := range m.Edit {
			at := slices.IndexFunc(b.Readings, func(t fieldbook.Taken) bool { return t.N == e.N && !t.Struck })
			if at < 0 {
				return nil, fmt.Errorf("correcting reading %s: the book has no such reading in force", e.N)
			}
			t := b.Readings[at]
			other, known := by[e.N]
			if known && other != k {
				return nil, refuse("--accept: both mistakes would correct reading %s; accept one, then look again", e.N)
			}
			if !known {
				by[e.N] = k
				a.said = append(a.said, e.N)
				out = append(out, fieldbook.Entry{Replaces: t.ID, Why: strings.TrimSuffix(m.Text, "."), Body: t.Reading})
			}
			i := slices.Index(a.said, e.N)
			r, err := corrected(out[i].Body.(fieldbook.Reading), e, b.Units.Length)
			if err != nil {
				return nil, fmt.Errorf("correcting reading %s: %w", e.N, err)
			}
			out[i].Body = r
		}
	}
	return out, nil
}

// write puts the new text in place of the old in one step, unless somebody has changed the file in
// the meantime.
func (a *acceptance) write(s streams) error {
	src, err := readSource(a.path, s)
	if err != nil {
		return fmt.Errorf("writing the book: %w", err)
	}
	if !bytes.Equal(src, a.was) {
		return refuse("%s was changed while it was being solved; nothing was written", a.path)
	}
	return writeFile(a.path, func(w io.Writer) error {
		_, err := w.Write(a.now)
		return err
	})
}
