// Package examples holds invented measuring jobs to try the program on: each a field book as a
// measurer would write it, the truth that its readings were made from, and a page about it.
// Nothing is computed here.
package examples

import "embed"

//go:embed plain-plum bean-five double-moon oval-oath cold-claim long-drop corner-cat
var files embed.FS

// Example is one job. Name is its folder. Book is a field book of version 1; Truth is JSON with
// the true places of the marks in the frame of the pegs (A at the origin, B on +x), area,
// perimeter and runs, in metres, square metres and degrees, with the mistakes planted and those
// that an answer is expected to name, by number of the reading; Page is Markdown.
type Example struct {
	Name, Title       string
	Book, Truth, Page []byte
}

// All gives the examples, the simplest first. The bytes are the caller's own.
func All() []Example {
	list := []Example{
		{Name: "plain-plum", Title: "Plain Plum: a rectangle in feet and inches"},
		{Name: "bean-five", Title: "Bean Five: a kidney of four arcs and a third peg"},
		{Name: "double-moon", Title: "Double Moon: arcs at both ends, by offsets and ties"},
		{Name: "oval-oath", Title: "Oval Oath: an oval that is no ellipse"},
		{Name: "cold-claim", Title: "Cold Claim: a rectangle as built, the first of two measurings"},
		{Name: "long-drop", Title: "Long Drop: cut corners, and a tape in the track that tells of a leaning wall"},
		{Name: "corner-cat", Title: "Corner Cat: an L with two corners out of reach"},
	}
	for i := range list {
		e := &list[i]
		e.Book, e.Truth, e.Page = read(e.Name+"/book.yaml"), read(e.Name+"/truth.json"), read(e.Name+"/README.md")
	}
	return list
}

func read(name string) []byte {
	b, err := files.ReadFile(name)
	if err != nil {
		panic("examples: " + err.Error()) // every name stands in the embed line above
	}
	return b
}
