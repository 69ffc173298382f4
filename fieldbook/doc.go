// Package fieldbook holds what was read on site and by whom: facts only, append-only.
//
// In come the bytes of a field book (one YAML 1.2 document, version 1) or entries made on a
// device; out goes a Book: tools, marks, readings, lines as they hold now, each length in
// metres beside its text as typed, each angle in radians. Nothing is computed from readings
// here, no file is opened, no clock is asked.
//
// The stations are
//
//	scan    the bytes: size, encoding, number of signs       scan.go
//	guard   the tokens: nesting, anchors, documents          guard.go
//	tree    the YAML library's syntax tree as plain nodes    tree.go
//	decode  nodes into the forms of the file                 decode.go, form_*.go, kind_*.go
//	build   forms into entries, with every length read       build.go
//	Book    entries into what holds now                      order.go, force.go, book.go
//
// Parse runs them all and answers with every Fault at once. Append puts entries back into the
// text without touching another byte. Merge joins the logs of several devices.
//
// The forms are the one source for both the decoder and the printed JSON Schema: a key is read
// if and only if a form has a field for it. Keys that the format names and this version does
// not read yet stand in a form's `later` tag and are refused as such.
package fieldbook
