package fieldbook_test

import (
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"brimline/fieldbook"

	"github.com/google/go-cmp/cmp"
)

// Law: 500 random logs, each split at random into parts that overlap, merged in random order and
// grouping: always the same log and the same Book as the whole.
func TestMergeInAnyOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 500))
	for i := range 500 {
		log := randomLog(r)
		want, _ := log.Book()
		parts := make([]fieldbook.Log, 2+r.IntN(4))
		for _, e := range log {
			for k := range 1 + r.IntN(2) {
				p := r.IntN(len(parts))
				if k == 0 || r.IntN(2) == 0 {
					parts[p] = append(parts[p], e)
				}
			}
		}
		for len(parts) > 1 {
			a, b := r.IntN(len(parts)), r.IntN(len(parts)-1)
			if b >= a {
				b++
			}
			ab, fa := fieldbook.Merge(parts[a], parts[b])
			ba, fb := fieldbook.Merge(parts[b], parts[a])
			if !reflect.DeepEqual(ab, ba) || !reflect.DeepEqual(fa, fb) {
				t.Fatalf("log %d: merging is not commutative", i)
			}
			parts[a] = ab
			parts = append(parts[:b], parts[b+1:]...)
		}
		got, _ := parts[0].Book()
		// That one id was used twice is told where the two meet and no longer once one is gone.
		if d := cmp.Diff(without(want, "same-id"), without(got, "same-id")); d != "" {
			t.Fatalf("log %d (-whole +merged):\n%s", i, d)
		}
	}
}

func without(b fieldbook.Book, code string) fieldbook.Book {
	fs := b.Findings
	b.Findings = nil
	for _, f := range fs {
		if f.Code != code {
			b.Findings = append(b.Findings, f)
		}
	}
	return b
}

func tie(id fieldbook.ID, is float64, replaces fieldbook.ID) fieldbook.Entry {
	return fieldbook.Entry{ID: id, Replaces: replaces, Body: fieldbook.Reading{Kind: "tie", Marks: []string{"A", "B"}, Values: []fieldbook.Value{{Part: "is", Metres: is}}}}
}

func strike(id, of fieldbook.ID) fieldbook.Entry {
	return fieldbook.Entry{ID: id, Body: fieldbook.Strike{Of: of, Reason: "why " + string(id)}}
}

// placed numbers entries as one device would.
func placed(es ...fieldbook.Entry) fieldbook.Log {
	for i := range es {
		es[i].Place = i + 1
	}
	return es
}

func findingCodes(b fieldbook.Book) []string {
	out := []string{}
	for _, f := range b.Findings {
		out = append(out, f.Code)
	}
	return out
}

func TestInForce(t *testing.T) {
	for _, c := range []struct {
		name   string
		log    fieldbook.Log
		struck []bool
		why    []string
		codes  []string
	}{
		{"struck", placed(tie("a", 1, ""), strike("s", "a")), []bool{true}, []string{"why s"}, []string{}},
		{"a strike struck", placed(tie("a", 1, ""), strike("s", "a"), strike("t", "s")), []bool{false}, []string{""}, []string{}},
		{"replaced", placed(tie("a", 1, ""), tie("b", 2, "a")), []bool{true, false}, []string{"replaced by 2", ""}, []string{}},
		{"a correction struck brings the first back", placed(tie("a", 1, ""), tie("b", 2, "a"), strike("s", "b")), []bool{false, true}, []string{"", "why s"}, []string{}},
		{"a correction corrected: the first comes back only if the second goes", placed(tie("a", 1, ""), tie("b", 2, "a"), tie("c", 3, "b")), []bool{false, true, false}, []string{"", "replaced by 3", ""}, []string{}},
		{"two replace one", placed(tie("a", 1, ""), tie("b", 2, "a"), tie("c", 3, "a")), []bool{true, false, false}, []string{"replaced by 2", "", ""}, []string{"two-replace"}},
		{"one of two struck", placed(tie("a", 1, ""), tie("b", 2, "a"), tie("c", 3, "a"), strike("s", "c")), []bool{true, false, true}, []string{"replaced by 2", "", "why s"}, []string{}},
		{"circle", placed(tie("a", 1, "b"), tie("b", 2, "a")), []bool{false, false}, []string{"", ""}, []string{"circle"}},
		{"circle cut from outside", placed(tie("a", 1, "b"), tie("b", 2, "a"), strike("s", "a")), []bool{true, false}, []string{"replaced by 2", ""}, []string{}},
		{"against itself", placed(tie("a", 1, "a")), []bool{false}, []string{""}, []string{"circle"}},
		{"against nothing", placed(tie("a", 1, "x")), []bool{false}, []string{""}, []string{"strike-nothing"}},
	} {
		b, _ := c.log.Book()
		var struck []bool
		var why []string
		for _, r := range b.Readings {
			struck, why = append(struck, r.Struck), append(why, r.Why)
		}
		if d := cmp.Diff(c.struck, struck) + cmp.Diff(c.why, why) + cmp.Diff(c.codes, findingCodes(b)); d != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, d)
		}
	}
}

// The order is by the latest time at or before an entry on its own device: entries without a
// time stay behind the one before them, and a device's sequence is never broken.
func TestBookOrder(t *testing.T) {
	at := func(m int) time.Time { return time.Date(2026, 5, 14, 9, m, 0, 0, time.UTC) }
	entry := func(id, device string, place, minute int) fieldbook.Entry {
		e := tie(fieldbook.ID(id), 1, "")
		e.Device, e.Place = device, place
		if minute > 0 {
			e.Time = at(minute)
		}
		return e
	}
	log := fieldbook.Log{
		entry("p1", "p", 1, 10), entry("p2", "p", 2, 0), entry("p3", "p", 3, 5), entry("p4", "p", 4, 20),
		entry("q1", "q", 1, 0), entry("q2", "q", 2, 15), entry("q3", "q", 3, 10),
	}
	b, _ := log.Book()
	var got []string
	for _, r := range b.Readings {
		got = append(got, string(r.ID)+"="+r.N)
	}
	if d := cmp.Diff([]string{"q1=1", "p1=2", "p2=3", "p3=4", "q2=5", "q3=6", "p4=7"}, got); d != "" {
		t.Errorf("order (-want +got):\n%s", d)
	}
}

// Of several descriptions the latest by time, then by id, holds; two that differ and have no
// time are a finding.
func TestLatestDescriptionHolds(t *testing.T) {
	mark := func(id, note string, minute int) fieldbook.Entry {
		e := fieldbook.Entry{ID: fieldbook.ID(id), Body: fieldbook.Mark{Name: "r1", Note: note}}
		if minute > 0 {
			e.Time = time.Date(2026, 5, 14, 9, minute, 0, 0, time.UTC)
		}
		return e
	}
	for _, c := range []struct {
		log   fieldbook.Log
		note  string
		codes []string
	}{
		{fieldbook.Log{mark("a", "one", 0), mark("b", "two", 0)}, "two", []string{"two-words"}},
		{fieldbook.Log{mark("a", "one", 0), mark("b", "one", 0)}, "one", []string{}},
		{fieldbook.Log{mark("a", "one", 5), mark("b", "two", 0)}, "one", []string{}},
		{fieldbook.Log{mark("a", "one", 5), mark("b", "two", 4)}, "one", []string{}},
		{fieldbook.Log{mark("a", "one", 5), mark("b", "two", 4), strike("s", "a")}, "two", []string{}},
	} {
		b, _ := c.log.Book()
		if len(b.Marks) != 1 || b.Marks[0].Note != c.note || cmp.Diff(c.codes, findingCodes(b)) != "" {
			t.Errorf("%v: %+v, %v; want %s, %v", c.log, b.Marks, findingCodes(b), c.note, c.codes)
		}
	}
}

func TestMergeFindings(t *testing.T) {
	a := fieldbook.Log{tie("x", 1, ""), tie("b", 2, "x")}
	b := fieldbook.Log{tie("x", 1.5, ""), tie("c", 3, "x")}
	l, found := fieldbook.Merge(a, b)
	if len(l) != 3 || len(found) != 2 || found[0].Code != "same-id" || found[1].Code != "two-replace" {
		t.Errorf("%v, %v", l, found)
	}
	if again, none := fieldbook.Merge(l, nil); !reflect.DeepEqual(again, l) || len(none) != 1 {
		t.Errorf("merging with nothing: %v %v", again, none)
	}
}
