package main

import (
	"io"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/survey"
	"brimline/write/glb"
)

// writeGLB writes the pool in space; a book without heights has nothing to show there.
func (d drawing) writeGLB(b *fieldbook.Book, r *survey.Result) error {
	s := glb.Scene{Title: b.Name}
	for _, x := range draft.InSpace(b, r, draft.Options{}) {
		s.Bodies = append(s.Bodies, glb.Body(x))
	}
	if len(s.Bodies) == 0 {
		return refuse("-o %s: no heights are read, so there is nothing to show in space", d.to)
	}
	return writeFile(d.to, func(w io.Writer) error { return glb.Write(w, s) })
}
