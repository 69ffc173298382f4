package fieldbook_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"brimline/fieldbook"
)

var someEntries = []fieldbook.Entry{
	{ID: "n1", Body: fieldbook.Reading{Kind: "tie", Marks: []string{"A", "r1"}, Values: []fieldbook.Value{{Part: "is", Metres: 5.21335, Text: `17' 1 1/4"`}}}},
	{ID: "n2", Replaces: "n1", Why: "read again", Time: time.Date(2026, 5, 14, 9, 10, 0, 0, time.UTC), By: "ada",
		Body: fieldbook.Reading{Kind: "tie", Marks: []string{"A", "r1"}, Values: []fieldbook.Value{{Part: "is", Metres: 5.214, Text: "5.214"}}}},
	{ID: "n3", Time: time.Date(2026, 5, 14, 9, 11, 0, 0, time.UTC), Body: fieldbook.Mark{Name: "r1", Kind: "rim"}},
}

func TestAppend(t *testing.T) {
	const tie = `{tie: A r1, is: "17' 1 1/4\"", id: n1}`
	const again = `{tie: A r1, is: 5.214, replaces: n1, why: read again, id: n2, time: "2026-05-14T09:10:00Z", by: ada}`
	const mark = `{set: marks.r1, to: {kind: rim}, id: n3, time: "2026-05-14T09:11:00Z"}`
	for _, c := range []struct{ name, src, want string }{
		{"missing blocks", "brimline: 1\n", "brimline: 1\nadded:\n- " + mark + "\nreadings:\n- " + tie + "\n- " + again + "\n"},
		{"no last line end", "brimline: 1", "brimline: 1\nadded:\n- " + mark + "\nreadings:\n- " + tie + "\n- " + again},
		{"carriage returns", "brimline: 1\r\nreadings:\r\n  - {note: x}\r\n\r\n# end\r\n", "brimline: 1\r\nreadings:\r\n  - {note: x}\r\n  - " + tie + "\r\n  - " + again + "\r\nadded:\r\n- " + mark + "\r\n\r\n# end\r\n"},
		{"in brackets", "brimline: 1\nreadings: [{note: x}]\nadded: []\n", "brimline: 1\nreadings: [{note: x}, " + tie + ", " + again + "]\nadded: [" + mark + "]\n"},
		{"a comma before the bracket", "brimline: 1\nadded: []\nreadings: [\n  {note: x},\n]\n", "brimline: 1\nadded: [" + mark + "]\nreadings: [\n  {note: x},\n " + tie + ", " + again + "]\n"},
		{"nothing written", "brimline: 1\nreadings: # none yet\nadded:\n", "brimline: 1\nreadings: # none yet\n- " + tie + "\n- " + again + "\nadded:\n- " + mark + "\n"},
		{"document end", "---\nbrimline: 1\n...\n", "---\nbrimline: 1\nadded:\n- " + mark + "\nreadings:\n- " + tie + "\n- " + again + "\n...\n"},
		{"a text that looks like a comment", "brimline: 1\nadded: []\nreadings:\n- note: |\n    x\n    # y\nmarks: {}\n",
			"brimline: 1\nadded: [" + mark + "]\nreadings:\n- note: |\n    x\n    # y\n- " + tie + "\n- " + again + "\nmarks: {}\n"},
		{"byte order mark", "\ufeffbrimline: 1\nreadings: []\nadded: []\n", "\ufeffbrimline: 1\nreadings: [" + tie + ", " + again + "]\nadded: [" + mark + "]\n"},
		{"feet", "brimline: 1\nunits: {length: ft}\nreadings: []\nadded: []\n", "brimline: 1\nunits: {length: ft}\nreadings: [" + tie + ", " + strings.Replace(again, "5.214", "5.214 m", 1) + "]\nadded: [" + mark + "]\n"},
	} {
		got, err := fieldbook.Append([]byte(c.src), someEntries...)
		if err != nil || string(got) != c.want {
			t.Errorf("%s: %v\n got %q\nwant %q", c.name, err, got, c.want)
		}
	}
}

// A JSON book stays one.
func TestAppendJSON(t *testing.T) {
	for _, src := range []string{`{"brimline": 1}`, `{"brimline": 1, "readings": [{"note": "x"}], "added": []}` + "\n"} {
		got, err := fieldbook.Append([]byte(src), someEntries...)
		if err != nil {
			t.Fatal(err)
		}
		var any map[string]any
		if err := json.Unmarshal(got, &any); err != nil {
			t.Errorf("%s: %v", got, err)
		}
	}
}

func TestAppendRefuses(t *testing.T) {
	ok := "brimline: 1\nreadings:\n- {tie: A B, is: 1, id: n1}\n"
	for _, c := range []struct {
		src  string
		e    fieldbook.Entry
		want string
	}{
		{"brimline: 2\n", someEntries[0], "version"},
		{ok, someEntries[0], "another one of this id"},
		{"brimline: 1\nreadings: ~\n", someEntries[0], "syntax"},
		{ok, fieldbook.Entry{ID: "s", Body: fieldbook.Strike{Of: "nowhere"}}, "no-such"},
		{ok, fieldbook.Entry{ID: "two words", Body: fieldbook.Remark{Text: "x"}}, "bad-name"},
		{ok, fieldbook.Entry{ID: "r", Body: fieldbook.Reading{Kind: "tie"}}, "no form"},
		{ok, fieldbook.Entry{ID: "e"}, "without a body"},
		{ok, fieldbook.Entry{ID: "m", Replaces: "n1", Body: fieldbook.Mark{Name: "r1"}}, "described anew"},
		{ok, fieldbook.Entry{ID: "c", Body: fieldbook.Reading{Kind: "tie", Marks: []string{"A", "C"}, Computed: true, Values: []fieldbook.Value{{Part: "is", Metres: 1, Text: "1"}}}}, "missing-key"},
		{ok, fieldbook.Entry{ID: "f", Body: fieldbook.Reading{Kind: "tie", Marks: []string{"A", "C"}, Flip: true, Values: []fieldbook.Value{{Part: "is", Metres: 1, Text: "1"}}}}, "cannot be written"},
		{ok, fieldbook.Entry{ID: "2s", Body: fieldbook.Reading{Kind: "straight", Marks: []string{"A", "C"}}}, "no form"},
		{ok + "---\n", someEntries[1], "documents"},
	} {
		got, err := fieldbook.Append([]byte(c.src), c.e)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q + %v: %q, %v; want %s", c.src, c.e, got, err, c.want)
		}
	}
}

// onlyAdded says whether old is new without one stretch in the middle.
func onlyAdded(old, new string) bool {
	head := 0
	for head < len(old) && head < len(new) && old[head] == new[head] {
		head++
	}
	tail := len(old) - head
	return len(new) >= len(old) && new[len(new)-tail:] == old[head:]
}

// Law: for 500 random books, taking away what was added gives the old file, and the new file
// says the old entries and the new.
func TestAppendOnlyAdds(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 500))
	for i := range 500 {
		src := randomText(r)
		before, err := fieldbook.Parse("old", []byte(src))
		if err != nil {
			t.Fatalf("book %d: %v\n%s", i, err, src)
		}
		have := len(before.Log)
		add := appendable(r)
		for _, part := range parts(r, add[:min(len(add), 10)]) {
			out, err := fieldbook.Append([]byte(src), part...)
			if err != nil {
				t.Fatalf("book %d: %v\n%q", i, err, src)
			}
			if !onlyAdded(src, string(out)) {
				t.Fatalf("book %d: bytes changed\nold %q\nnew %q", i, src, out)
			}
			src = string(out)
			have += len(part)
		}
		after, err := fieldbook.Parse("new", []byte(src))
		if err != nil || len(after.Log) != have {
			t.Fatalf("book %d: %d entries, want %d: %v", i, len(after.Log), have, err)
		}
		sameEntries(t, before.Log, after.Log)
	}
}

// parts cuts a log into stretches of entries that belong to one list, in some five pieces.
func parts(r *rand.Rand, l fieldbook.Log) []fieldbook.Log {
	var out []fieldbook.Log
	was := false
	for i, e := range l {
		set := strings.Contains("mark line tool setup place rules corner floor step ledge raised spill", kindOf(e.Body))
		if i == 0 || set != was || r.IntN(5) == 0 {
			out = append(out, nil)
		}
		was = set
		out[len(out)-1] = append(out[len(out)-1], e)
	}
	return out
}

func kindOf(b fieldbook.Body) string {
	return strings.ToLower(strings.TrimPrefix(fmt.Sprintf("%T", b), "fieldbook."))
}

// appendable is a random log whose references exist.
func appendable(r *rand.Rand) fieldbook.Log {
	var out fieldbook.Log
	seen := map[fieldbook.ID]bool{}
	for _, e := range randomLog(r) {
		to := e.Replaces
		if s, ok := e.Body.(fieldbook.Strike); ok {
			to = s.Of
		}
		if seen[e.ID] || to != "" && !seen[to] {
			continue
		}
		seen[e.ID] = true
		out = append(out, e)
	}
	return out
}

func sameEntries(t *testing.T, old, new fieldbook.Log) {
	t.Helper()
	now := map[fieldbook.ID]string{}
	for _, e := range new {
		now[e.ID] = fmt.Sprint(e)
	}
	for _, e := range old {
		if now[e.ID] != fmt.Sprint(e) {
			t.Fatalf("entry %v became %v", e, now[e.ID])
		}
	}
}

// Appending all at once says the same as one after another, and what is there already is not
// written twice.
func TestAppendTwice(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	for range 50 {
		src, add := randomText(r), appendable(r)
		once, err := fieldbook.Append([]byte(src), add...)
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		twice, err := fieldbook.Append(once, add...)
		if err != nil || string(twice) != string(once) {
			t.Fatalf("a second time: %v\n%q\n%q", err, once, twice)
		}
	}
}
