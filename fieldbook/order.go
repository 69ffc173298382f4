package fieldbook

import (
	"sort"
	"time"
)

// item says that an entry belongs to the list of readings, and so has a number; the others are
// settings.
func item(e Entry) bool {
	switch e.Body.(type) {
	case Reading, Side, Remark, Strike, Cannot, Moved:
		return true
	}
	return false
}

// ordered gives the items of a log, or its settings, in book order: by the latest time at or
// before each in its own device's sequence, then device, place, column and row, and id. The entries
// of a device thus keep the sequence in which it made them, and a column its rows.
func ordered(l Log, items bool) []Entry {
	type ranked struct {
		e      Entry
		latest time.Time
	}
	var rs []ranked
	for _, e := range l {
		if item(e) == items && e.Body != nil {
			rs = append(rs, ranked{e: e})
		}
	}
	within := func(a, b Entry) int {
		switch {
		case a.Device != b.Device:
			return less(a.Device < b.Device)
		case a.Place != b.Place:
			return less(a.Place < b.Place)
		case a.group() != b.group():
			return less(a.group() < b.group())
		case a.Row != b.Row:
			return less(a.Row < b.Row)
		}
		return less(a.ID < b.ID)
	}
	sort.Slice(rs, func(i, j int) bool { return within(rs[i].e, rs[j].e) < 0 })
	for i := range rs {
		rs[i].latest = rs[i].e.Time
		if i > 0 && rs[i-1].e.Device == rs[i].e.Device && rs[i-1].latest.After(rs[i].latest) {
			rs[i].latest = rs[i-1].latest
		}
	}
	sort.SliceStable(rs, func(i, j int) bool {
		if c := rs[i].latest.Compare(rs[j].latest); c != 0 {
			return c < 0
		}
		return within(rs[i].e, rs[j].e) < 0
	})
	out := make([]Entry, len(rs))
	for i, r := range rs {
		out[i] = r.e
	}
	return out
}

// group is what the rows of a column have in common and nothing else has.
func (e Entry) group() ID {
	if e.Column != "" {
		return e.Column
	}
	return e.ID
}

func less(is bool) int {
	if is {
		return -1
	}
	return 1
}
