package fieldbook_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"brimline/fieldbook"
)

const head = "brimline: 1\n"

// badBook is a refused book: the text, and every fault as "code line:column".
type badBook struct{ src, want string }

// malformed is the table of refused books.
var malformed = slices.Concat(malformedShape, malformedHeights)

// malformedShape is its part that tells of no heights.
var malformedShape = []badBook{
	// the bytes
	{head + "job: {name: \"a\x00b\"}\n", "control 2:15"},
	{head + "job: {name: \xff}\n", "not-utf8 2:13"},
	{head + "# é \xc3\n", "not-utf8 2:5"},
	{"brimline: 1\rjob: {}\n", "line-break 1:12"},
	{head + strings.Repeat("#", 8<<20), "too-big 1:1"},
	{head + "readings: [" + strings.Repeat("x, ", 500_000) + "]\n", "too-many 2:1500001"},
	// YAML that is no field book
	{"", "not-a-book 1:1"},
	{"# nothing\n", "not-a-book 1:1"},
	{"- a\n", "not-a-book 1:1"},
	{"  just words\n", "not-a-book 1:3"},
	{head + "a: &x 1\nb: *x\nc: {<<: 1}\n", "anchor 2:4, alias 3:4, merge 4:5"},
	{head + "job: !!str x\n", "tag 2:6"},
	{"%YAML 1.2\n---\n" + head, "directive 1:1"},
	{head + "? job\n: {}\n", "complex-key 2:1"},
	{head + "---\njob: {}\n", "documents 2:1"},
	{head + "...\njob: {}\n", "documents 3:1"},
	{head + "job:\n\tname: x\n", "tab 3:1"},
	{head + "job: {name: x\n", "syntax 2:6"},
	{head + "readings: [\n", "syntax 2:11"},
	{head + "job: {name: \"x}\n", "syntax 2:13"},
	{head + "job: a: b\n", "syntax 2:6"},
	{head + "job: {name: `x}\n", "syntax 2:13"},
	{head + "job: {}\n  ref: x\n", "syntax 3:3"},
	{head + "readings: " + strings.Repeat("[", 70), "nesting 2:74"},
	{head + "readings: " + strings.Repeat("{a: ", 70), "nesting 2:263"},
	{head + strings.Repeat("- ", 70), "nesting 2:127"},
	// keys
	{"job: {}\n", "missing-key 1:1"},
	{"brimline: 2\n", "version 1:11"},
	{"brimline:\n", "missing-key 1:1, wrong-type 1:1"},
	{head + "jop: {}\n", "unknown-key 2:1"},
	{head + "job: {nane: x, ref: y}\n", "unknown-key 2:7"},
	{head + "walks: []\ndecks: []\n", "later 2:1, later 3:1"},
	{head + "job: {name: x, name: y}\n", "duplicate-key 2:16"},
	{head + "marks:\n  A: {}\n  A: {}\n", "duplicate-key 4:3"},
	{head + "job: [x]\n", "wrong-type 2:6"},
	{head + "job: x\n", "wrong-type 2:6"},
	{head + "job: {name: [x]}\n", "wrong-type 2:13"},
	{head + "job: {alone: yes}\n", "wrong-type 2:14"},
	{head + "job: {measured: 14.5.2026, start: noon}\n", "bad-date 2:17, bad-date 2:35"},
	{head + "units: {length: yd}\n", "bad-choice 2:17"},
	{head + "place: {shallow: two words, north: {line: A B}}\n", "bad-name 2:18, missing-key 2:36"},
	{head + "place: {north: {line: A B, bearing: 42°61'}}\n", "minutes-over 2:37"},
	{head + "marks:\n  two words: {}\n", "bad-name 3:3"},
	// readings
	{head + "readings: {tie: A B}\n", "wrong-type 2:11"},
	{head + "readings:\n- tie A B\n", "wrong-type 3:3"},
	{head + "readings:\n- {is: 5}\n", "no-kind 3:3"},
	{head + "readings:\n- {tye: A B, is: 5}\n", "unknown-key 3:4"},
	{head + "readings:\n- {pixel: A, at: [1, 2]}\n- {pixel: A, note: x}\n", "later 3:4, later 4:4"},
	{head + "readings:\n- {tie: A B, is: 5, slope: steep, dip: 0.1}\n", "wrong-type 3:28"},
	{head + "readings:\n- {tie: A B, is: 5, dip: 1.3}\n", "too-large 3:26"},
	{head + "readings:\n- {tie: A B, is: 5, dip: -0.1}\n", "negative 3:26"},
	{head + "readings:\n- {tie: A B, is: 5, side: C, of: A B}\n", "two-kinds 3:21"},
	{head + "readings:\n- {tie: A B}\n- {tie: A, is: 5}\n- {tie: A B C, is: 5}\n", "missing-key 3:3, bad-pair 4:9, bad-pair 5:9"},
	{head + "readings:\n- {tie: A A, is: 5}\n- {offset: A, line: A B, at: 1, left: 1}\n- {side: B, of: A B, hand: left}\n", "self 3:9, self 4:12, self 5:10"},
	{head + "readings:\n- {tie: A B, is: 0}\n- {tie: A B, is: -5}\n", "zero-length 3:18, negative 4:18"},
	{head + "readings:\n- {tie: A B, is: .nan}\n- {tie: A B, is: -.inf}\n- {tie: A B, is: 1e400}\n", "not-finite 3:18, not-finite 4:18, unreadable 5:18"},
	{head + "readings:\n- {tie: A B, is: 5,214}\n- {tie: A C, is: \"5,214\"}\n", "decimal-comma 3:18, decimal-comma 4:18"},
	{head + "readings:\n- {tie: A B, is: 17' 13\"}\n- {tie: A C, is: 1 1/3\"}\n", "inches-over 3:18, fraction 4:18"},
	{head + "units: {length: ft}\nreadings:\n- {tie: A B, is: 12.6}\n", "ambiguous 4:18"},
	{head + "readings:\n- {tie: A B, is: \"\"}\n- {tie: A B, is: 9e12}\n- {tie: A B, is: }\n", "empty 3:18, too-large 4:18, missing-key 5:3, wrong-type 5:14"},
	{head + "readings:\n- {tie: A B, is: 5, sigma: 0}\n- {tie: A B, is: 5, sigma: [1 mm, 2 mm]}\n", "not-positive 3:28, count 4:28"},
	{head + "readings:\n- {tie: A B, is: 5, time: today}\n- {tie: A B, is: 5, class: guess}\n", "bad-time 3:27, bad-choice 4:28"},
	{head + "readings:\n- {tie: A B, is: 5, tool: tape}\n", "no-such 3:27"},
	{head + "readings:\n- {tie: A B, is: 5, why: x}\n", "missing-key 3:26"},
	{head + "readings:\n- {offset: r1, line: A B, at: 1}\n- {offset: r1, line: A B, at: 1, left: 1, right: 1}\n", "one-of 3:12, one-of 4:12"},
	{head + "readings:\n- {offset}\n- {seen: , setup: T, at: []}\n", "missing-key 3:3, missing-key 3:3, missing-key 3:3, one-of 3:3, wrong-type 3:4, count 4:3, missing-key 4:3, wrong-type 4:4"},
	{head + "readings:\n- {offset: r1, line: A B, at: 1, left: -1}\n", "negative 3:40"},
	{head + "readings:\n- {seen: r1, setup: T, at: [1]}\n- {seen: r1, setup: T, at: 1}\n- {seen: r1, at: [1, 2]}\n", "count 3:29, wrong-type 4:28, missing-key 5:3"},
	{head + "readings:\n- {side: r1, of: A B, hand: up}\n", "bad-choice 3:29"},
	{head + "readings:\n- {note: \"\"}\n- {note: x, of: y}\n", "empty 3:10, no-such 4:17"},
	{head + "readings:\n- {tie: A B, is: 5, id: x}\n- {tie: A C, is: 5, id: x}\n", "duplicate-id 4:25"},
	{head + "readings:\n- {strike: x}\n- {strike: 9}\n- {strike: 3}\n- {strike: 5}\n- {tie: A B, is: 5}\n", "no-such 3:12, no-such 4:12, self 5:12, forward 6:12"},
	{head + "readings:\n- {tie: A B, is: 5, id: \"2\"}\n- {tie: A C, is: 5, id: c}\n- {strike: 2}\n", "ambiguous 5:12"},
	// columns
	{head + "readings:\n- {from: A, to: []}\n- {from: A}\n- {from: A, to: r1}\n", "no-rows 3:10, missing-key 4:3, wrong-type 5:17"},
	{head + "readings:\n- {from: A, to: [r1, [r2], [r3, 5, 6 m], [A, 5], [r4, 0], [r5, x]]}\n", "bad-row 3:18, bad-row 3:22, bad-row 3:28, self 3:43, zero-length 3:55, unreadable 3:64"},
	{head + "readings:\n- {from: A, to: [[r1, 5,214], [two words, 5]]}\n", "decimal-comma 3:23, bad-name 3:32"},
	{head + "readings:\n- {from: A, to: [[r1, 5], [r2, 5]], tool: tape, computed: true, replaces: 1}\n", "no-such 3:43, unknown-key 3:49, unknown-key 3:65"},
	{head + "readings:\n- {from: A, to: [[r1, 5], [r2, 5]], id: c}\n- {strike: 1}\n- {strike: c}\n- {strike: 1.3}\n- {tie: A B, is: 5, id: c.2}\n", "ambiguous 4:12, ambiguous 5:12, no-such 6:12, duplicate-id 7:25"},
	// soft, slide, derived lines, unreached corners
	{head + "lines: {rim: {runs: [{soft: [a, b]}, {straight: [b, c], sigma: 5 mm}, {any: [c, d], slide: 0}]}}\n", "missing-key 2:22, not-here 2:64, not-positive 2:92"},
	{head + "lines: {tile: {from: rum, outward: 30 mm}, rim: {outward: 30 mm}, t2: {from: tile}}\n", "no-such 2:9, missing-key 2:49, one-of 2:78"},
	{head + "lines: {a: {from: b, outward: 1}, b: {from: a, inward: 1}, c: {from: c, inward: 1, outward: 1}}\n", "cycle 2:9, cycle 2:35, one-of 2:70, self 2:70"},
	{head + "lines: {r: {runs: [{straight: [a, b]}]}, t: {from: r, outward: profile, runs: [], corners: round}, u: {from: r, inward: -5 mm, sigma: 0}}\n", "missing-key 2:42, missing-key 2:64, unknown-key 2:73, bad-choice 2:92, negative 2:121, not-positive 2:135"},
	{head + "unreached:\n  c1: {round: 150 mm}\n  c2: {meet: [[a, b]]}\n  c3: {meet: [[a, b, c], [d, e]]}\n  c4: {meet: [[a, a], [c4, b]], round: 1, like: [c4]}\n", "missing-key 3:7, count 4:3, count 5:3, self 6:19, self 6:24, one-of 6:40, self 6:50"},
	// along, round, clear, width
	{head + "readings:\n- {along: a b, is: 3}\n- {along: a b, line: rim, round: rim, is: 3}\n- {along: a, line: rim}\nlines: {rim: {runs: [{any: [a, b]}]}}\n", "one-of 3:11, one-of 4:11, not-here 4:34, missing-key 5:3, bad-pair 5:11"},
	{head + "readings:\n- {along: a x, line: rim, is: 3}\n- {along: a b, line: rom, is: 0}\n- {round: rim, is: 9, bent: true}\nlines: {rim: {runs: [{any: [a, b]}]}}\n", "not-on-line 3:22, no-such 4:22, zero-length 4:31, not-here 5:11, not-here 5:29"},
	{head + "readings:\n- {clear: a, line: rim, is: 1}\n- {clear: h, is: 1}\n- {clear: h, line: rim, until: hedge, is: -1}\n- {clear: a, until: \"\", is: 1, check: true}\nlines: {rim: {runs: [{any: [a, b]}]}}\n", "self 3:20, one-of 4:11, one-of 5:11, negative 5:43, empty 6:21, not-here 6:39"},
	{head + "readings:\n- {width: a b, is: 0}\n- {width: a a, is: 1}\n- {width: a b, tie: a b, is: 1}\n", "zero-length 3:20, self 4:11, two-kinds 5:4"},
	// turn, straight, arc, square, bow
	{head + "readings:\n- {turn: A B, at: A, is: 5}\n- {turn: A A, at: B, is: -5}\n- {turn: A B, at: C, is: 361}\n- {turn: A B, is: 5}\n", "self 3:19, self 4:10, negative 4:26, too-large 5:26, missing-key 6:3"},
	{head + "readings:\n- {turn: A B, at: C, is: 42°61', sigma: 0}\n- {turn: A B, at: C, is: 4, sigma: [0.1, 0.2]}\n", "minutes-over 3:26, not-positive 3:41, count 4:36"},
	{head + "readings:\n- {straight: A B}\n- {arc: A B C}\n- {square: A B}\n- {square: A B C D}\n- {straight: A B A}\n", "count 3:14, count 4:9, count 5:12, count 6:12, self 7:14"},
	{head + "readings:\n- {straight: A B C, is: 5, sigma: [1 mm, 2 mm]}\n", "unknown-key 3:21, count 3:35"},
	{head + "readings:\n- {straight: A B C, check: true}\n- {square: A B C, check: true}\n- {arc: A B C D, computed: true}\n- {straight: A B C, bent: true}\n", "not-here 3:28, not-here 4:26, not-here 5:28, not-here 6:27"},
	{head + "readings:\n- {bow: A B, is: -1, toward: garden}\n- {bow: A A, is: 1, bent: true}\n- {offset: r1, line: A B, at: 1, left: 1, bent: true}\n", "negative 3:18, bad-choice 3:30, self 4:9, not-here 4:27, not-here 5:49"},
	// check, computed, moved, cannot
	{head + "readings:\n- {tie: A B, is: 5, computed: true}\n- {tie: A B, is: 5, check: yes}\n", "missing-key 3:31, wrong-type 4:28"},
	{head + "readings:\n- {moved: A B, whz: x}\n- {cannot: A, why: x}\n- {cannot: A A}\n", "bad-name 3:11, unknown-key 3:16, bad-pair 4:12, self 5:12"},
	{head + "readings:\n- {replaces: y, tie: A B, is: 5}\n- {strike: z, id: z}\n", "no-such 3:14, self 4:12"},
	// settings
	{head + "tools: {t: {zero: solved, ppm: many, sigma: -1 mm}}\n", "unreadable 2:19, bad-number 2:32, negative 2:45"},
	{head + "tools: {t: {ppm: .inf, scale: 0}}\n", "not-finite 2:18, not-positive 2:31"},
	{head + "tools: {t: {scale: \"1,0002\"}}\n", "decimal-comma 2:20"},
	{head + "setups: {T: {scale: 1.1}}\n", "bad-choice 2:21"},
	{head + "rules: {priors: {feet: 0.1, foot: 2}, sigma: {pixel: 1 mm, ties: 1 mm, turn: 1 mm}}\n", "bad-choice 2:18, too-large 2:35, later 2:47, bad-choice 2:60, unreadable 2:78"},
	{head + "marks: {A: {at: [0], kind: hole, edge: -1}}\n", "count 2:18, bad-choice 2:28, negative 2:40"},
	{head + "lines: {rim: {closed: true}}\n", "missing-key 2:14"},
	{head + "lines: {rim: {runs: []}}\n", "short-line 2:9"},
	{head + "lines:\n  rim:\n    runs:\n    - straight: [A]\n    - arc: [A, A, B]\n", "short-line 5:7, self 6:16"},
	{head + "lines: {rim: {runs: [{straight: [A, B], arc: [A, B]}, {joint: kink}, {walk: w, from: a, to: b}]}}\n", "one-of 2:22, one-of 2:55, later 2:71, later 2:80, later 2:89"},
	{head + "lines: {rim: {closed: true, runs: [{any: [A, B]}, {any: [C, D]}]}}\n", "runs-apart 2:51, runs-apart 2:51"},
	{head + "lines: {rim: {edge: rim, runs: [a]}}\n", "bad-choice 2:21, wrong-type 2:33"},
	{head + "added:\n- {set: liens.rim, to: {}}\n- {set: walks, to: {}}\n- {set: lines, to: {}}\n- {set: marks.A}\n", "bad-set 3:9, later 4:9, bad-set 5:9, missing-key 6:3"},
	{head + "added:\n- {set: job, to: {nam: x}, id: a}\n- {set: job, to: {}, id: a}\n", "unknown-key 3:19, duplicate-id 4:26"},
	// with other line ends, other characters, and every fault in one answer
	{"brimline: 1\r\nreadings:\r\n- {tie: ä ö, is: x}\r\n", "unreadable 3:18"},
	{head + "readings:\n- {note: \"größer → ∞\", tie: A A, is: 5}\n", "self 3:29"},
	{"jop: 1\nreadings:\n- {tie: A B, is: x}\n- {strike: q}\nlines: {l: {}}\n", "missing-key 1:1, unknown-key 1:1, unreadable 3:18, no-such 4:12, missing-key 5:12"},
}

func faultText(err error) string {
	var fs fieldbook.Faults
	if !errors.As(err, &fs) {
		return fmt.Sprint(err)
	}
	var out []string
	for _, f := range fs {
		out = append(out, fmt.Sprintf("%s %d:%d", f.Code, f.Line, f.Column))
	}
	return strings.Join(out, ", ")
}

func short(s string) string {
	if len(s) > 160 {
		return s[:160] + "…"
	}
	return s
}

func TestMalformed(t *testing.T) {
	for _, c := range malformed {
		b, err := fieldbook.Parse("bad.yaml", []byte(c.src))
		if got := faultText(err); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", short(c.src), got, c.want)
		}
		if len(b.Log) > 0 {
			t.Errorf("%q: a book beside faults", short(c.src))
		}
	}
}

// Every code of the list is met by the table, and no other.
func TestFaultCodes(t *testing.T) {
	listed, met := map[string]bool{}, map[string]bool{}
	for _, c := range fieldbook.FaultCodes {
		listed[c.Code] = true
	}
	for _, c := range malformed {
		_, err := fieldbook.Parse("bad.yaml", []byte(c.src))
		var fs fieldbook.Faults
		errors.As(err, &fs)
		for _, f := range fs {
			met[f.Code] = true
			if !listed[f.Code] {
				t.Errorf("the code %s is not listed", f.Code)
			}
			if f.Text == "" || f.File != "bad.yaml" {
				t.Errorf("%+v lacks its text or file", f)
			}
		}
	}
	for _, c := range fieldbook.FaultCodes {
		if !met[c.Code] {
			t.Errorf("no book of the table meets %s", c.Code)
		}
	}
}

func TestFaultsPrint(t *testing.T) {
	_, err := fieldbook.Parse("pool/a.yaml", []byte("brimline: 1\nreadings:\n- {tie: A B, is: 5,214}\n- {tie: A A, is: 1}\n"))
	want := "pool/a.yaml:3:18: decimal-comma: 5,214 has a decimal comma; expected 5.214\n" +
		"pool/a.yaml:4:9: self: \"A\" to itself; expected two different marks"
	if err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

// What would take a parser of nested lists seconds, or all memory, is refused at once.
func TestHostileIsRefusedAtOnce(t *testing.T) {
	for _, src := range []string{
		strings.Repeat("[", 200_000), strings.Repeat("{a: ", 200_000), strings.Repeat("- ", 200_000), strings.Repeat("? ", 200_000),
		head + "readings: " + strings.Repeat("[", 200_000), head + strings.Repeat("[", 8<<20-20), head + manyKeys(60_000),
		head + "job: {name: x\n" + strings.Repeat("[", 400_000), strings.Repeat("&a ", 100_000), strings.Repeat("---\n", 100_000),
		deepIndent(2_000),
	} {
		begin := time.Now()
		_, err := fieldbook.Parse("x", []byte(src))
		if err == nil {
			t.Errorf("%q is taken", short(src))
		}
		if took := time.Since(begin); took > 2*time.Second {
			t.Errorf("%q: %v", short(src), took)
		}
	}
}

func manyKeys(n int) string {
	var b strings.Builder
	b.WriteString("marks:\n")
	for i := range n {
		fmt.Fprintf(&b, "  r%d:\n", i)
	}
	return b.String()
}

func deepIndent(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// Brackets, anchors and indentation that are only text refuse nothing.
func TestTextIsOnlyText(t *testing.T) {
	many := strings.Repeat("[{", 200)
	for _, src := range []string{
		head + "job: {name: \"" + many + " &a *b <<: !c\"}\n",
		head + "job: {name: '" + many + " &a *b'}\n",
		head + "# " + many + " &a *b\n",
		head + "job:\n  name: |\n    " + many + "\n    &a *b\n    - - - -\n    ? x\n    ---\n",
		head + "job:\n  name: >-\n    " + many + "\n\n     more\n",
		head + "job:\n  name: words and\n    [[[ more & more * words\n",
		head + "job: {name: a & b * c ! d - e ? f}\n",
		head + "job: {name: x} # ]]] }}} \" '\n",
		"---\n" + head + "...\n",
		"---\n" + head + "... # the end\n# really\n",
		head + "readings: " + strings.Repeat(" ", 5000) + "[]\n",
	} {
		if _, err := fieldbook.Parse("x", []byte(src)); err != nil {
			t.Errorf("%q: %v", short(src), err)
		}
	}
}
