package fieldbook_test

import (
	"math"
	"strings"
	"testing"

	"brimline/fieldbook"

	"github.com/google/go-cmp/cmp"
)

// height is what a test looks at of a reading.
type height struct {
	n, kind, marks, names string // names: set-up, surface, what it is below, edges
	values                string // parts and their texts
	metres                []float64
}

func heightsOf(b fieldbook.Book) []height {
	var out []height
	for _, r := range b.Readings {
		h := height{n: r.N, kind: r.Kind, marks: strings.Join(r.Marks, ",")}
		h.names = strings.Trim(strings.Join([]string{r.Setup, r.Water, r.Below, r.BelowIs, r.From, r.To}, " "), " ")
		for _, v := range r.Values {
			h.values += v.Part + "=" + v.Text + " "
			h.metres = append(h.metres, v.Metres)
		}
		out = append(out, h)
	}
	return out
}

func TestParseHeights(t *testing.T) {
	b := parseGood(t, "heights.yaml")
	want := []height{
		{"4", "level", "k1,r1", "", "rise=-12 mm ", []float64{-0.012}},
		{"5", "staff", "k1", "S1", "is=1.412 ", []float64{1.412}},
		{"6", "staff", "r1", "S1", "is=1.424 ", []float64{1.424}},
		{"7", "staff", "r9", "S2", "is=4' 7 1/2\" ", []float64{1.4097}},
		{"8", "water", "r1", "w1", "is=0.152 ", []float64{0.152}},
		{"9", "water", "r9", "w1", "is=0.149 ", []float64{0.149}},
		{"10", "depth", "f3,r1,r9", "w1 water", "is=1.42 at=3.66 left=0 ", []float64{1.42, 3.66, 0}},
		{"11", "depth", "f4,r1,r9", "rim line", "is=1.60 at=-0.10 left=0.25 ", []float64{1.6, -0.1, -0.25}},
		{"12", "depth", "f1,k1", "k1 mark", "is=1.71 ", []float64{1.71}},
		{"14", "depth", "f2,k1 (2)", "k1 mark", "is=0 ", []float64{0}},
		{"15", "wall", "r5", "track cove", "is=1.067 ", []float64{1.067}},
		{"16", "plumb", "r5", "", "down=0.30 outward=4 mm ", []float64{0.3, 0.004}},
		{"17", "plumb", "r1", "", "down=0.30 outward=6 mm ", []float64{0.3, -0.006}},
		{"18", "profile", "r5", "nose track", "outward=32 mm down=48 mm ", []float64{0.032, 0.048}},
		{"19", "profile", "r1", "track nose", "outward=36 mm ", []float64{-0.036}},
		{"20", "profile", "r9", "nose waterline", "down=5 mm ", []float64{-0.005}},
		{"22", "plumb", "r1", "", "down=0.30 outward=5 mm ", []float64{0.3, -0.005}},
	}
	for i := range want {
		want[i].names = strings.Join(strings.Fields(want[i].names), " ")
	}
	got := heightsOf(b)[4:]
	for i := range got {
		got[i].names = strings.Join(strings.Fields(got[i].names), " ")
	}
	if d := cmp.Diff(want, got, cmp.AllowUnexported(height{})); d != "" {
		t.Errorf("readings (-want +got):\n%s", d)
	}
	read := numbered(b)
	if !read["2"].Slope || !read["12"].Slope || read["1"].Slope || read["10"].Slope {
		t.Error("slope is not where it was written")
	}
	if !read["17"].Struck || !read["19"].Struck || read["19"].Why != "read from the grout" {
		t.Errorf("struck: %+v", read["19"])
	}
	if d := cmp.Diff([]string{"w1"}, b.Surfaces()); d != "" {
		t.Error(d)
	}
}

func TestParseBody(t *testing.T) {
	b := parseGood(t, "heights.yaml")
	steps := []fieldbook.Step{{Name: "entry", Where: "bay", Opening: [2]string{"s1", "s2"}, Treads: []fieldbook.Tread{
		{Runs: []fieldbook.Run{{Kind: "straight", Marks: []string{"s3", "s4"}}}, Down: fieldbook.Down{Below: "k1", Depth: 0.31}},
		{Runs: []fieldbook.Run{{Kind: "arc", Marks: []string{"s5", "s6", "s7"}}}},
	}}}
	ledges := []fieldbook.Ledge{{Name: "seat", Kind: "bench", Down: fieldbook.Down{Below: "w1", Depth: 0.45}, Runs: []fieldbook.Run{
		{Kind: "arc", Marks: []string{"b1", "b2", "b3"}}, {Kind: "straight", Marks: []string{"b3", "b4"}}}}}
	raised := []fieldbook.Raised{{Name: "north wall", Foot: "nfoot", Top: "ntop", Cap: 0.042}} // as added later
	spills := []fieldbook.Spill{{Name: "weir", Kind: "vanishing", Lip: "ntop", Drop: 1.6, Basin: "nfoot"}}
	floor := fieldbook.Floor{Pad: []string{"f5", "f6", "f7", "f8"}}
	if d := cmp.Diff([]any{steps, ledges, raised, spills, floor}, []any{b.Steps, b.Ledges, b.Raised, b.Spills, b.Floor}); d != "" {
		t.Errorf("body (-want +got):\n%s", d)
	}
	// Without what was added, the floor of the block.
	src := string(goodBooks(t)["heights.yaml"])
	src, _, _ = strings.Cut(src, "added:")
	b, err := fieldbook.Parse("x", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	floor = fieldbook.Floor{Breaks: [][]string{{"f1", "f2"}, {"f3", "f4"}}, Pad: floor.Pad, Toe: []string{"f9", "f10"}, Coves: []fieldbook.Cove{
		{Line: "rim", From: "r1", To: "r9", Shape: "round", Size: 0.15}, {Line: "rim", Shape: "round", Size: 0.08}}}
	if d := cmp.Diff(floor, b.Floor); d != "" || !b.Raised[0].Plumb {
		t.Errorf("floor (-want +got):\n%s", d)
	}
	var waits []string
	for _, f := range b.Findings {
		if f.Code == "place-order" {
			waits = append(waits, f.Words["name"]+": "+strings.Join(f.Marks, " "))
		}
	}
	want := []string{"floor: f5 f6 f7 f8 f9 f10", "steps entry: s1 s2 s3 s4 s5 s6 s7", "ledge seat: b1 b2 b3 b4"}
	if d := cmp.Diff(want, waits); d != "" {
		t.Errorf("what waits (-want +got):\n%s", d)
	}
}

// Set-ups, tools and rules that heights need.
func TestParseHeightSettings(t *testing.T) {
	b := parseGood(t, "heights.yaml")
	if s := b.Setup("S1"); !s.SolveCollimation || s.Sight != 12 || s.Collimation != 0 {
		t.Errorf("S1: %+v", s)
	}
	if s := b.Setup("S2"); s.SolveCollimation || s.Collimation != -7e-5 {
		t.Errorf("S2: %+v", s)
	}
	read := numbered(b)
	for n, want := range map[string]float64{"5": 12, "6": 12.5, "7": 0} {
		if got := b.Sight(read[n].Reading); got != want {
			t.Errorf("sight of %s: %v; want %v", n, got, want)
		}
	}
	// The level rule is the one named; a depth rule has its clauses.
	if r := b.LevelRule(); r.Name != "practical 3 mm" || r.Limit(60) != 0.003 {
		t.Errorf("rule %+v", r)
	}
	d, ok := b.DepthRule()
	if !ok || len(d.Limits) != 3 || d.Limits[0].Figure != 1.0/7 || d.Limits[2].Figure != 1.8288 {
		t.Errorf("depth rule %+v", d)
	}
}

// A tape 11 K warmer than at its standard is too long by 11·11.5e-6; one without an expansion is not
// corrected. Textbook case: 368.5 ft at 22 °F, standard 68 °F, 6.5e-6 per °F: −0.11 ft (lecture slides
// "Taping corrections", slideplayer.com/13085605), here in kelvin.
func TestStretch(t *testing.T) {
	b := parseGood(t, "heights.yaml")
	read := numbered(b)
	for n, want := range map[string]float64{"1": 11.5e-6 * 11, "2": 0, "3.1": 11.5e-6 * 11, "4": 0} {
		if got := b.Stretch(read[n].Reading); math.Abs(got-want) > 1e-15 {
			t.Errorf("stretch of %s: %v; want %v", n, got, want)
		}
	}
	celsius := func(f float64) float64 { return (f - 32) / 1.8 }
	book := fieldbook.Book{Tools: []fieldbook.Tool{{Name: "t", Expansion: 6.5e-6 * 1.8, Standard: celsius(68)}}}
	if got := 368.5 * book.Stretch(fieldbook.Reading{Tool: "t", Warmed: true, Celsius: celsius(22)}); math.Abs(got+0.11) > 0.0051 {
		t.Errorf("368.5 ft at 22 °F: %v ft; want −0.11", got)
	}
}

// Every entry of the book, appended to an empty one, says the same.
func TestAppendHeights(t *testing.T) {
	b := parseGood(t, "heights.yaml")
	out, err := fieldbook.Append([]byte("brimline: 1\n"), b.Log...)
	if err != nil {
		t.Fatal(err)
	}
	again, err := fieldbook.Parse("x", out)
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	of := func(l fieldbook.Log) map[fieldbook.ID]fieldbook.Body {
		out := map[fieldbook.ID]fieldbook.Body{}
		for _, e := range l {
			out[e.ID] = e.Body
		}
		return out
	}
	same := cmp.Comparer(func(a, b fieldbook.Value) bool { return a.Part == b.Part && a.Metres == b.Metres })
	if d := cmp.Diff(of(b.Log), of(again.Log), same); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// A name after below is a surface, a line or a mark, whoever's device told of it.
func TestBelowAcrossDevices(t *testing.T) {
	depth, err := fieldbook.Parse("a", []byte("brimline: 1\nreadings:\n- {depth: f1, below: w1, is: 1.2}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if r := depth.Readings[0]; r.BelowIs != "mark" || len(r.Marks) != 2 {
		t.Errorf("alone: %+v", r)
	}
	water, err := fieldbook.Parse("b", []byte("brimline: 1\nreadings:\n- {water: w1, under: k1, is: 0.1}\n- {strike: 1}\n"))
	if err != nil {
		t.Fatal(err)
	}
	both, found := fieldbook.Merge(depth.Log, water.Log)
	if len(found) > 0 {
		t.Fatal(found)
	}
	b, _ := both.Book()
	for _, r := range b.Readings {
		if r.Kind == "depth" && (r.BelowIs != "water" || len(r.Marks) != 1) {
			t.Errorf("together: %+v", r)
		}
	}
	if len(b.Surfaces()) != 0 {
		t.Error("a struck surface is told of")
	}
}
