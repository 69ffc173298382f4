package fieldbook

import (
	"bytes"
	"errors"
	"fmt"
	"sort"
)

// Append puts entries at the end of the list that each belongs to: readings, sides, notes and
// strikes to `readings`, everything else to `added`. It splices text in the file's own style
// and line ends; every other byte stays where it was. An entry that is there already with its
// id is left out. The result is parsed: it says what the old text said and the new entries, or
// Append fails and says why.
//
// Where the file's unit would give a typed figure another meaning, its metres are written.
func Append(src []byte, add ...Entry) ([]byte, error) {
	rest := bytes.TrimPrefix(src, byteOrderMark)
	mark := src[:len(src)-len(rest)]
	old, fs := parse(rest)
	if len(fs) > 0 {
		return nil, fmt.Errorf("append to a book with faults: %w", fs.sorted("book"))
	}
	fresh, err := unknown(old.log, add)
	if err != nil {
		return nil, err
	}
	var readings, added []Entry
	for _, e := range fresh {
		if item(e) {
			readings = append(readings, e)
		} else {
			added = append(added, e)
		}
	}
	for _, part := range []struct {
		key     string
		entries []Entry
	}{{"added", added}, {"readings", readings}} {
		if len(part.entries) == 0 {
			continue
		}
		if old, err = old.extend(part.key, part.entries); err != nil {
			return nil, fmt.Errorf("append to %s: %w", part.key, err)
		}
	}
	return append(bytes.Clone(mark), old.source.bytes...), nil
}

// unknown leaves out entries that the log holds, and refuses ones that differ under one id.
func unknown(old Log, add []Entry) ([]Entry, error) {
	have := make(map[ID]Entry, len(old))
	for _, e := range old {
		have[e.ID] = e
	}
	var out []Entry
	for _, e := range add {
		if e.Body == nil {
			return nil, errors.New("append an entry without a body")
		}
		was, ok := have[e.ID]
		switch {
		case e.ID == "" || !ok:
			out = append(out, e)
			if e.ID != "" {
				have[e.ID] = e
			}
		case normal(was) != normal(e):
			return nil, fmt.Errorf("append entry %s: the book has another one of this id", e.ID)
		}
	}
	return out, nil
}

// extend adds entries to one list and tries the places where its end may be.
func (p *parsed) extend(key string, add []Entry) (*parsed, error) {
	texts, err := p.write(add)
	if err != nil {
		return nil, err
	}
	src := p.source.bytes
	var first error
	for _, c := range p.cuts(key, texts) {
		now, err := p.says(bytes.Join([][]byte{src[:c.at], []byte(c.text), src[c.at:]}, nil), add)
		if err == nil {
			return now, nil
		}
		if first == nil {
			first = err
		}
	}
	return nil, first
}

// write makes the text of each entry.
func (p *parsed) write(add []Entry) ([]string, error) {
	var out []string
	for _, e := range add {
		w := &writer{json: p.root.flow, unit: p.form.Units.length()}
		w.b.WriteByte('{')
		if err := w.entry(e); err != nil {
			return nil, err
		}
		w.b.WriteByte('}')
		out = append(out, w.b.String())
	}
	return out, nil
}

func (w *writer) entry(e Entry) error {
	if s, ok := e.Body.(interface{ write(*writer) }); ok && !item(e) {
		if e.Replaces != "" {
			return fmt.Errorf("entry %s: a description is not replaced but described anew", e.ID)
		}
		w.text("set", settingName(e.Body))
		w.open("to")
		s.write(w)
		w.close()
		w.stamp(e)
		return nil
	}
	for _, family := range families() {
		for _, k := range family {
			if k.write(w, e.Body) {
				w.text("replaces", string(e.Replaces))
				w.text("why", e.Why)
				w.stamp(e)
				return nil
			}
		}
	}
	return fmt.Errorf("entry %s: no form for a %s like this", e.ID, e.Body.body())
}

// says checks a new text: it must hold the old entries as they were, and the new ones.
func (p *parsed) says(src []byte, add []Entry) (*parsed, error) {
	now, fs := parse(src)
	if len(fs) > 0 {
		return nil, fs.sorted("book")
	}
	was := make(map[ID]string, len(p.log))
	for _, e := range p.log {
		was[e.ID] = verbatim(e)
	}
	var fresh []Entry
	for _, e := range now.log {
		if text, old := was[e.ID]; !old {
			fresh = append(fresh, e)
		} else if text != verbatim(e) {
			return nil, fmt.Errorf("the end of the list cannot be told: entry %s would change", e.ID)
		}
	}
	if len(fresh) != len(add) || len(now.log) != len(p.log)+len(add) {
		return nil, errors.New("the end of the list cannot be told: entries would be lost")
	}
	sort.SliceStable(fresh, func(i, j int) bool { return fresh[i].Place < fresh[j].Place })
	for i, e := range add {
		if normal(fresh[i]) != normal(e) || e.ID != "" && e.ID != fresh[i].ID {
			return nil, fmt.Errorf("the entry cannot be written: %s", normal(e))
		}
	}
	return now, nil
}
