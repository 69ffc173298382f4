package fieldbook

import (
	"crypto/sha256"
	"encoding/hex"
	"reflect"
	"sort"
	"strconv"
	"strings"
	"time"
)

// normal is the canonical text of an entry: what it says, when, by whom, what it replaces. The
// layout of a file, the spelling of a length and who carries the entry are not in it, nor is a
// field that is zero, so that a field added to a body later changes no id. Fields stand in the
// order of the alphabet.
func normal(e Entry) string { return canonical(e, false) }

// verbatim is normal with the texts as typed and the place of the entry: two entries with equal
// texts are the same in everything.
func verbatim(e Entry) string {
	return canonical(e, true) + "|" + string(e.ID) + "|" + strconv.Quote(e.Device) + "|" + strconv.Itoa(e.Place) +
		"|" + string(e.Column) + "|" + strconv.Itoa(e.Row)
}

func canonical(e Entry, typed bool) string {
	var b strings.Builder
	if e.Body != nil {
		b.WriteString(e.Body.body())
		canon(&b, reflect.ValueOf(e.Body), typed)
	}
	if !e.Time.IsZero() {
		b.WriteString("|time " + e.Time.UTC().Format(time.RFC3339Nano))
	}
	for _, f := range []struct{ key, text string }{{"by", e.By}, {"replaces", string(e.Replaces)}, {"why", e.Why}} {
		if f.text != "" {
			b.WriteString("|" + f.key + " " + strconv.Quote(f.text))
		}
	}
	return b.String()
}

func canon(b *strings.Builder, v reflect.Value, typed bool) {
	switch v.Kind() {
	case reflect.String:
		b.WriteString(strconv.Quote(v.String()))
	case reflect.Bool:
		b.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Float64:
		b.WriteString(strconv.FormatFloat(v.Float(), 'g', -1, 64))
	case reflect.Slice, reflect.Array:
		b.WriteByte('[')
		for i := range v.Len() {
			canon(b, v.Index(i), typed)
			b.WriteByte(' ')
		}
		b.WriteByte(']')
	case reflect.Map:
		keys := v.MapKeys()
		sort.Slice(keys, func(i, j int) bool { return keys[i].String() < keys[j].String() })
		b.WriteByte('{')
		for _, k := range keys {
			b.WriteString(strconv.Quote(k.String()) + ":")
			canon(b, v.MapIndex(k), typed)
			b.WriteByte(' ')
		}
		b.WriteByte('}')
	case reflect.Struct:
		canonFields(b, v, typed)
	}
}

func canonFields(b *strings.Builder, v reflect.Value, typed bool) {
	type field struct {
		name string
		v    reflect.Value
	}
	var fields []field
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		if !v.Field(i).IsZero() && (typed || name != "Text" || v.Type() != reflect.TypeFor[Value]()) {
			fields = append(fields, field{name, v.Field(i)})
		}
	}
	sort.Slice(fields, func(i, j int) bool { return fields[i].name < fields[j].name })
	b.WriteByte('{')
	for _, f := range fields {
		b.WriteString(f.name + "=")
		canon(b, f.v, typed)
		b.WriteByte(' ')
	}
	b.WriteByte('}')
}

// hashID is the id of an entry that was given none: the first half of the SHA-256 of its normal
// form and of how many equal ones stand before it, in hexadecimal.
func hashID(norm string, before int) ID {
	sum := sha256.Sum256([]byte(norm + "#" + strconv.Itoa(before)))
	return ID(hex.EncodeToString(sum[:16]))
}
