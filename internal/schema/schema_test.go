package schema_test

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/schema"
	"brimline/survey"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func compile(t *testing.T, make func() ([]byte, error)) *jsonschema.Schema {
	t.Helper()
	text, err := make()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("made.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("made.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// check validates a book in YAML by the schema.
func check(t *testing.T, s *jsonschema.Schema, src []byte) error {
	t.Helper()
	text, err := yaml.YAMLToJSON(src)
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return s.Validate(doc)
}

// What the decoder reads the schema takes.
func TestBookTakesGoodBooks(t *testing.T) {
	s := compile(t, schema.Book)
	files, err := filepath.Glob("../../fieldbook/testdata/good/*")
	if err != nil || len(files) == 0 {
		t.Fatal("no good books")
	}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		src = bytes.TrimPrefix(src, []byte("\ufeff"))
		if err := check(t, s, src); err != nil {
			t.Errorf("%s: %v", f, err)
		}
	}
}

// What is wrong by form both refuse: each of these is a good book with one thing changed.
func TestBookRefusesWhatTheDecoderRefuses(t *testing.T) {
	refused(t, "spine.yaml", [][2]string{
		{"brimline: 1", "brimline: 2"}, {"brimline: 1", "brimlin: 1"}, {"ref: 26-114", "reff: x"}, {"alone: true", "alone: often"},
		{"length: m}", "length: yd}"}, {"zero: 4 mm", "zero: [4 mm]"}, {"kind: peg", "kind: hole"}, {"at: [0, 0]", "at: 0"},
		{"{tie: A B,   is: 9.150", "{tie: A,   is: 9.150"}, {"{tie: A B,   is: 9.150", "{tie: A B"}, {"{tie: A B,", "{pixel: A B,"},
		{"hand: right", "hand: up"}, {"setup: T1, at", "at"}, {"class: drawing", "class: guess"}, {"flip: true", "flip: 1 2"},
		{"scale: solve", "scale: 2"}, {"closed: true", "closed: round"}, {"joint: tangent", "joint: loose"}, {"runs: [{straight: [hs1, hs2]}]}, id: dn", "runs: []}, idd: dn"},
		{"spacing: 0.70, runs", "spacing: 0.70, rons"}, {"sharp: 2 mm", "outward: 2 mm"}, {"set: units", "sett: units"},
	})
	refused(t, "trust.yaml", [][2]string{
		{"[r2, 6.400]", "[r2, 6.400, 1]"}, {"[r2, 6.400]", "r2"}, {"{from: B,", "{from: [B],"}, {"check: true", "check: often"}, {"toward: deck", "toward: lawn"},
		{"{turn: A r5,", "{turn: A,"}, {"at: k1, is: 42.2519,", "is: 42.2519,"}, {"sigma: 0.01}", "sigma: {a: 1}}"}, {"{straight: r1 r2 r3,", "{straight: r1,"},
		{"{arc: r2 r3 r4 r5}", "{arc: [r2, r3, r4, r5]}"}, {"{square: A r1 r2, sigma", "{square: A r1 r2, is"}, {"{cannot: A r12,", "{cannot: A,"},
		{"{moved: B}", "{moved: A B}"}, {"computed: true, why: again", "computed: maybe, why: again"},
	})
	refused(t, "shape.yaml", [][2]string{
		{"{soft: [r4, r5], sigma: 20 mm}", "{soft: r4, sigma: 20 mm}"}, {"slide: 100 mm", "slide: [100 mm]"}, {"{from: rim, outward: 32 mm", "{outward: 32 mm"},
		{"corners: mitre", "corners: round"}, {"inward: 4 mm, edge: wall-foot", "inward: 4 mm, edge: wall"}, {"c1: {meet: [[r5, r6], [r2, r1]],", "c1: {"},
		{"c1: {meet: [[r5, r6], [r2, r1]],", "c1: {meet: [r5, r6],"}, {"like: [c1]", "like: c1"}, {"{along: r1 r4, line", "{along: r1, line"},
		{"{clear: h1, line: rim,", "{clear: [h1], line: rim,"}, {"{width: r2 r3, is: 2.438}", "{width: r2 r3}"}, {"{round: track, is: 18.42,", "{round: track,"},
	})
}

// The same of what tells of heights.
func TestBookRefusesHeights(t *testing.T) {
	refused(t, "heights.yaml", [][2]string{
		{"{level: k1 r1,", "{level: k1,"}, {"rise: -12 mm", "risen: -12 mm"}, {"{staff: k1, setup: S1,", "{staff: k1,"}, {"sight: 12.5 m", "sight: [12.5 m]"}, {"under: r1, is: 0.152", "is: 0.152"},
		{"{depth: f3, below: w1,", "{depth: f3,"}, {"line: r1 r9, at: 3.66", "line: r1, at: 3.66"}, {"is: 1.71, slope: true", "is: 1.71, slope: steep"},
		{"{wall: r5, from: track,", "{wall: r5, from: trick,"}, {"to: cove, is", "is"}, {"{plumb: r5, down: 0.30,", "{plumb: r5,"}, {"to: track, outward: 32 mm", "to: lip, outward: 32 mm"},
		{"at_temperature: 31}", "at_temperature: [31]}"}, {"expansion: 11.5e-6", "expand: 11.5e-6"}, {"collimation: solve", "collimation: [solve]"}, {"level_loop: practical 3 mm", "level_loop: [3 mm]"},
		{"level_loop: practical 3 mm", "level_loop: {flat: 3 mm}"}, {"breaks: [[f1, f2], [f3, f4]]", "breaks: f1 f2"}, {"pad: [f5, f6, f7, f8]", "pad: {a: b}"}, {"shape: round", "shape: square"},
		{"{line: rim, size: 80 mm}", "{line: rim}"}, {"where: bay", "where: outside"}, {"[{name: entry,", "[{"}, {"treads: [{runs", "tread: [{runs"}, {"kind: bench", "kind: sofa"},
		{"foot: nfoot, top: ntop, cap: 40 mm", "foot: nfoot, cap: 40 mm"}, {"plumb: true}", "plumb: often}"}, {"kind: vanishing", "kind: fall"}, {"lip: ntop", "lips: ntop"},
	})
}

func refused(t *testing.T, name string, changes [][2]string) {
	t.Helper()
	s := compile(t, schema.Book)
	raw, err := os.ReadFile("../../fieldbook/testdata/good/" + name)
	if err != nil {
		t.Fatal(err)
	}
	good := string(raw)
	for _, c := range changes {
		bad := strings.Replace(good, c[0], c[1], 1)
		if bad == good {
			t.Fatalf("%q is not in the good book", c[0])
		}
		if err := check(t, s, []byte(bad)); err == nil {
			t.Errorf("the schema takes %q for %q", c[1], c[0])
		}
		if _, err := fieldbook.Parse("bad", []byte(bad)); err == nil {
			t.Errorf("the decoder takes %q for %q", c[1], c[0])
		}
	}
}

// A result as it is printed passes; with a key missing, unknown or of another type it does not.
func TestResult(t *testing.T) {
	s := compile(t, schema.Result)
	src := "brimline: 1\nreadings:\n- {tie: A B, is: 5}\n- {tie: A C, is: 4}\n- {tie: B C, is: 3}\n- {tie: A D, is: 4.5}\nlines: {rim: {runs: [{any: [A, C, B]}]}}\n"
	b, err := fieldbook.Parse("x", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	r, err := survey.Run(context.Background(), survey.Input{Book: &b}, nil)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	validate := func(change func(map[string]any)) error {
		var doc map[string]any
		if err := json.Unmarshal(text, &doc); err != nil {
			t.Fatal(err)
		}
		change(doc)
		return s.Validate(doc)
	}
	if err := validate(func(map[string]any) {}); err != nil {
		t.Errorf("%v\n%s", err, text)
	}
	for name, change := range map[string]func(map[string]any){
		"missing": func(m map[string]any) { delete(m, "statistics") },
		"unknown": func(m map[string]any) { m["surprise"] = 1 },
		"type":    func(m map[string]any) { m["marks"].(map[string]any)["A"].(map[string]any)["x"] = "one" },
	} {
		if validate(change) == nil {
			t.Errorf("the schema takes a result with a key %s", name)
		}
	}
}
