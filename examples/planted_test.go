package examples_test

import "strings"

// planted is a mistake in one reading, as truth.json has it: what was read, what is typed.
type planted struct {
	Reading string `json:"reading"`
	Kind    string `json:"kind"`
	Read    string `json:"read,omitempty"`
	Typed   string `json:"typed,omitempty"`
}

// expected is a mistake that an answer should name: its code, and the readings by number.
type expected struct {
	Code     string   `json:"code"`
	Readings []string `json:"readings"`
}

// wrong adds a tie with a mistake in it: into turns the text read into the text typed.
func (d *day) wrong(a, b, more, kind string, into func(string) string) {
	text := d.typed(d.read(a, b))
	n := d.put(a, b, into(text), more)
	d.plant(n, kind, text, into(text))
}

// plant notes a mistake, and that an answer should name it by itself.
func (d *day) plant(n, kind, read, typed string) {
	d.note(n, kind, read, typed)
	d.expected = append(d.expected, expected{kind, []string{n}})
}

// note notes a reading with a mistake.
func (d *day) note(n, kind, read, typed string) {
	d.planted = append(d.planted, planted{n, kind, strings.Trim(read, "\""), strings.Trim(typed, "\"")})
}
