package fieldbook

import (
	"strconv"
	"strings"
	"time"
	"unicode"

	"brimline/unit"
)

// writer makes the text of one item in flow style: {tie: A r1, is: 5.214}. With json set it is
// JSON too. A key whose value is empty or zero is left out.
type writer struct {
	b    strings.Builder
	json bool
	unit unit.Unit // of a bare length in the file
}

func (w *writer) comma() {
	if s := w.b.String(); s != "" && s[len(s)-1] != '{' && s[len(s)-1] != '[' {
		w.b.WriteString(", ")
	}
}

func (w *writer) key(k string) {
	w.comma()
	w.b.WriteString(w.scalar(k) + ": ")
}

// raw writes a value that is right as it stands.
func (w *writer) raw(k, text string) {
	w.key(k)
	w.b.WriteString(text)
}

func (w *writer) text(k, v string) {
	if v != "" {
		w.raw(k, w.scalar(v))
	}
}

func (w *writer) flag(k string, v bool) {
	if v {
		w.raw(k, "true")
	}
}

func (w *writer) figure(k string, v float64) {
	if v != 0 {
		w.number(k, v)
	}
}

// thousandths writes a thousand times a figure, which thousandth reads back to the same one.
func (w *writer) thousandths(k string, v float64) {
	if v != 0 {
		w.raw(k, shifted(strconv.FormatFloat(v, 'e', -1, 64), 3))
	}
}

// shifted moves the point of a decimal number that package strconv can read.
func shifted(text string, places int) string {
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	n, _ := strconv.Atoi(exponent) // no exponent is 0; one too large is left to ParseFloat's limits
	return mantissa + "e" + strconv.Itoa(n+places)
}

// number writes a figure that may be 0.
func (w *writer) number(k string, v float64) { w.raw(k, strconv.FormatFloat(v, 'g', -1, 64)) }

func (w *writer) length(k string, m float64) {
	if m != 0 {
		w.raw(k, w.scalar(metres(m)))
	}
}

// said writes a length that may be said to be 0.
func (w *writer) said(k string, m float64, nought bool) {
	if nought {
		w.raw(k, w.scalar(metres(0)))
		return
	}
	w.length(k, m)
}

func (w *writer) lengths(k string, ms []float64) {
	var vs []string
	for _, m := range ms {
		vs = append(vs, metres(m))
	}
	w.list(k, vs)
}

func (w *writer) list(k string, vs []string) { w.raw(k, w.row(vs)) }

// names writes a list where there is one.
func (w *writer) names(k string, vs []string) {
	if len(vs) > 0 {
		w.list(k, vs)
	}
}

// items writes a list inside a list.
func (w *writer) items(vs []string) {
	w.comma()
	w.b.WriteString(w.row(vs))
}

func (w *writer) row(vs []string) string {
	var out []string
	for _, v := range vs {
		out = append(out, w.scalar(v))
	}
	return "[" + strings.Join(out, ", ") + "]"
}

func (w *writer) value(k string, v Value) { w.raw(k, w.scalar(w.typed(v))) }

func (w *writer) values(k string, vs []Value) {
	var out []string
	for _, v := range vs {
		out = append(out, w.typed(v))
	}
	w.list(k, out)
}

func (w *writer) open(k string) {
	w.key(k)
	w.b.WriteByte('{')
}

func (w *writer) close() { w.b.WriteByte('}') }

func (w *writer) openList(k string) {
	w.key(k)
	w.b.WriteByte('[')
}

func (w *writer) item() {
	w.comma()
	w.b.WriteByte('{')
}

func (w *writer) closeList() { w.b.WriteByte(']') }

// stamp writes who made the entry and when.
func (w *writer) stamp(e Entry) {
	w.text("id", string(e.ID))
	if !e.Time.IsZero() {
		w.text("time", e.Time.UTC().Format(time.RFC3339Nano))
	}
	w.text("by", e.By)
}

// typed is a value's text as typed where it means the same in this file, else its metres.
func (w *writer) typed(v Value) string {
	if got, err := unit.ParseLength(v.Text, w.unit); err == nil && got == v.Metres {
		return v.Text
	}
	return metres(v.Metres)
}

// metres spells a length so that it reads back to the same float64.
func metres(m float64) string { return strconv.FormatFloat(m, 'f', -1, 64) + " m" }

// scalar spells a text so that it is read as typed: plain where nothing in it has a meaning of
// its own, else in double quotes.
func (w *writer) scalar(s string) string {
	if w.json {
		if jsonNumber(s) {
			return s
		}
		return doubleQuoted(s)
	}
	if plainWord(s) {
		return s
	}
	return doubleQuoted(s)
}

func plainWord(s string) bool {
	for i := range len(s) {
		c := s[i]
		word := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_'
		inner := i > 0 && (c == '.' || c == '-' || c == ' ' && s[i-1] != ' ' && i < len(s)-1)
		if !word && !inner {
			return false
		}
	}
	return s != ""
}

// jsonNumber says that a text is a number in JSON and read back as typed.
func jsonNumber(s string) bool {
	body := strings.TrimPrefix(s, "-")
	whole, part, dot := strings.Cut(body, ".")
	return digits(whole) && (whole == "0" || whole[0] != '0') && (!dot || digits(part))
}

// doubleQuoted uses the escapes that YAML and JSON share.
func doubleQuoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r < 0x10000 && !unicode.IsPrint(r):
			b.WriteString(`\u` + strconv.FormatInt(0x10000+int64(r), 16)[1:])
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
