package fieldbook_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"time"

	"brimline/fieldbook"
)

// randomLog makes entries of every kind from three devices, some struck, replaced, described
// twice, some against nothing.
func randomLog(r *rand.Rand) fieldbook.Log {
	var l fieldbook.Log
	places := map[string]int{}
	start := time.Date(2026, 5, 14, 8, 0, 0, 0, time.UTC)
	pick := func() fieldbook.ID {
		if len(l) == 0 || r.IntN(20) == 0 {
			return "nowhere"
		}
		return l[r.IntN(len(l))].ID
	}
	for i := range 5 + r.IntN(40) {
		device := []string{"", "p1", "p2"}[r.IntN(3)]
		places[device]++
		e := fieldbook.Entry{ID: fieldbook.ID(fmt.Sprintf("e%02d", i)), Device: device, Place: places[device], Body: randomBody(r, pick)}
		if r.IntN(3) > 0 {
			e.Time = start.Add(time.Duration(r.IntN(7200)) * time.Second)
		}
		if _, ok := e.Body.(fieldbook.Reading); ok && r.IntN(4) == 0 {
			e.Replaces, e.Why = pick(), "read again"
		}
		l = append(l, rowsOf(r, e)...)
	}
	// A circle now and then, and one id used twice.
	if n := len(l); r.IntN(4) == 0 {
		l[0].Body, l[n-1].Body = fieldbook.Strike{Of: l[n-1].ID}, fieldbook.Strike{Of: l[0].ID}
	}
	if r.IntN(3) == 0 {
		twin := l[r.IntN(len(l))]
		twin.By = "somebody else"
		l = append(l, twin)
	}
	return l
}

// rowsOf makes a column of a tie now and then.
func rowsOf(r *rand.Rand, e fieldbook.Entry) fieldbook.Log {
	tie, ok := e.Body.(fieldbook.Reading)
	if !ok || tie.Kind != "tie" || r.IntN(4) > 0 {
		return fieldbook.Log{e}
	}
	var out fieldbook.Log
	id := e.ID
	for k := range 1 + r.IntN(3) {
		e.ID, e.Column, e.Row = fieldbook.ID(fmt.Sprintf("%s.%d", id, k+1)), id+".1", k+1
		out = append(out, e)
	}
	return out
}

func randomBody(r *rand.Rand, pick func() fieldbook.ID) fieldbook.Body {
	m := func() string { return fmt.Sprintf("r%d", r.IntN(8)) }
	two := func() (string, string) {
		a := r.IntN(8)
		return fmt.Sprintf("r%d", a), fmt.Sprintf("r%d", (a+1+r.IntN(7))%8)
	}
	v := func(part string) fieldbook.Value {
		mm := 1 + r.IntN(20000)
		return fieldbook.Value{Part: part, Metres: float64(mm) / 1000, Text: fmt.Sprintf("%d.%03d", mm/1000, mm%1000)}
	}
	a, b := two()
	switch r.IntN(20) {
	case 0:
		return fieldbook.Strike{Of: pick(), Reason: "wrong peg"}
	case 1:
		return fieldbook.Side{Mark: "d7", Line: [2]string{a, b}, Left: r.IntN(2) == 0}
	case 2:
		return fieldbook.Remark{Text: "said: \"yes\", it's\nhere # and – there", Of: ""}
	case 3:
		return fieldbook.Mark{Name: m(), Kind: "rim", At: []float64{float64(r.IntN(9)), -1.25}, Edge: 0.004}
	case 4:
		return fieldbook.Line{Name: "rim", Runs: []fieldbook.Run{{Kind: "any", Marks: []string{a, b, "x1"}}, {Kind: "arc", Marks: []string{"x1", m()}, Joint: "kink"}}, Fuzz: 0.002}
	case 5:
		return fieldbook.Tool{Name: "tape", Sigma: float64(1+r.IntN(9)) / 1000, Serial: "T-7"}
	case 6:
		return fieldbook.Reading{Kind: "offset", Marks: []string{"o", a, b}, Values: []fieldbook.Value{v("at"), {Part: "left", Metres: -1.15, Text: "1.15"}}, Sigma: []float64{0.005, 0.01}}
	case 7:
		return fieldbook.Reading{Kind: "seen", Marks: []string{m()}, Setup: "T1", Values: []fieldbook.Value{v("x"), v("y"), v("z")}, Flip: true, Class: "drawing"}
	case 8:
		return fieldbook.Place{Shallow: a, House: []string{"h1", b}, NorthLine: [2]string{a, b}, NorthBearing: r.Float64() * 6}
	case 9:
		return fieldbook.Rules{Priors: map[string]float64{"foot": 0.002, "metre": r.Float64()}, Sigma: map[string]float64{"tie": 0.004}}
	}
	return randomTrust(r, a, b, v)
}

// randomTrust makes bodies of the kinds that prove others, and of ordinary ties.
func randomTrust(r *rand.Rand, a, b string, v func(string) fieldbook.Value) fieldbook.Body {
	angle := float64(r.IntN(6000)) / 1000
	switch r.IntN(20) {
	case 0:
		return fieldbook.Reading{Kind: "turn", Marks: []string{a, "k1", b}, Values: []fieldbook.Value{{Part: "is", Metres: angle, Text: "no angle"}}, Sigma: []float64{0.0001}}
	case 1:
		return fieldbook.Reading{Kind: "straight", Marks: []string{a, b, "s"}, Sigma: []float64{0.005, 0.006, 0.007}}
	case 2:
		return fieldbook.Reading{Kind: "arc", Marks: []string{a, b, "s", "t"}, Class: "template"}
	case 3:
		return fieldbook.Reading{Kind: "square", Marks: []string{a, "s", b}, Sigma: []float64{0.01}}
	case 4:
		return fieldbook.Reading{Kind: "bow", Marks: []string{a, b}, Values: []fieldbook.Value{v("is")}, Toward: []string{"", "deck", "water"}[r.IntN(3)], Check: r.IntN(2) == 0}
	case 5:
		return fieldbook.Cannot{Marks: [2]string{a, b}, Why: "hedge"}
	case 6:
		return fieldbook.Moved{Mark: a, Why: "dog line"}
	case 7:
		return fieldbook.Tool{Name: "reel", SolveZero: r.IntN(2) == 0, SolveScale: true}
	case 8:
		return fieldbook.Mark{Name: a, NoEdge: true, Definition: 0.002}
	case 9:
		return fieldbook.Rules{Sigma: map[string]float64{"turn": angle + 0.001}}
	case 10:
		return fieldbook.Reading{Kind: "tie", Marks: []string{a, b}, Values: []fieldbook.Value{v("is")}, Bent: true, Check: true}
	}
	return randomShape(r, a, b, v)
}

// randomShape makes bodies that say what the edge is, and ordinary ties.
func randomShape(r *rand.Rand, a, b string, v func(string) fieldbook.Value) fieldbook.Body {
	switch r.IntN(8) {
	case 0:
		return fieldbook.Reading{Kind: "width", Marks: []string{a, b}, Values: []fieldbook.Value{v("is")}, Check: true}
	case 1:
		return fieldbook.Reading{Kind: "clear", Marks: []string{a}, Until: "hedge: tall", Values: []fieldbook.Value{v("is")}, Tool: ""}
	case 2:
		return fieldbook.Corner{Name: "c1", Meet: [2][2]string{{a, "s"}, {b, "t"}}, Like: []string{"c2", "c3"}, Sigma: 0.02}
	case 3:
		return fieldbook.Corner{Name: "c2", Meet: [2][2]string{{a, "s"}, {"t", b}}, Round: 0.15}
	case 4:
		return fieldbook.Line{Name: "edge", Runs: []fieldbook.Run{{Kind: "soft", Marks: []string{a, b}, Sigma: 0.02, Slide: 0.1}}}
	case 5, 6:
		return randomHeight(r, a, b, v)
	}
	return fieldbook.Reading{Kind: "tie", Marks: []string{a, b}, Values: []fieldbook.Value{v("is")}}
}

// randomText makes a book in one of the layouts people and programs use.
func randomText(r *rand.Rand) string {
	if r.IntN(4) == 0 {
		return randomJSON(r)
	}
	var b strings.Builder
	if r.IntN(4) == 0 {
		b.WriteString("# a book\n---\n")
	}
	b.WriteString("brimline: 1\n")
	if r.IntN(2) == 0 {
		fmt.Fprintf(&b, "units: {length: %s} # bare numbers\n", []string{"m", "mm", "ft"}[r.IntN(3)])
	}
	blocks := []func(){func() { randomList(r, &b) }, func() { b.WriteString("marks:\n  r1: {kind: rim}\n  r2:\n") }, func() { b.WriteString("job:\n  name: |\n    one\n    # two\n") }}
	if r.IntN(2) == 0 {
		blocks = append(blocks, func() { b.WriteString("added:\n  - {set: marks.r3, to: {note: x}}\n\n# after the list\n\n") })
	}
	r.Shuffle(len(blocks), func(i, j int) { blocks[i], blocks[j] = blocks[j], blocks[i] })
	for _, f := range blocks {
		f()
	}
	if r.IntN(4) == 0 {
		b.WriteString("... # the end\n")
	}
	text := b.String()
	if r.IntN(3) == 0 {
		text = strings.TrimSuffix(text, "\n")
	}
	if r.IntN(3) == 0 {
		text = strings.ReplaceAll(text, "\n", "\r\n")
	}
	return text
}

func randomList(r *rand.Rand, b *strings.Builder) {
	switch r.IntN(7) {
	case 0: // no list
	case 1:
		b.WriteString("readings:\n")
	case 2:
		b.WriteString("readings: [] # none\n")
	case 3:
		b.WriteString("readings: [\n  {tie: r1 r2, is: 5 m}, # first\n  {tie: r1 r3, is: 5 m}\n  ]\n")
	case 4:
		b.WriteString("readings: [{tie: r1 r2, is: 5 m}, {note: \"a ]\"}, ]\n")
	case 5:
		b.WriteString("readings:\n- {tie: r1 r2, is: 5 m}\n# a word\n- tie: r1 r3\n  is: 4 m\n\n  # below\n")
	case 6:
		b.WriteString("readings:   # all\n    - tie: r1 r2\n      is: 5 m\n      note: |\n        text\n        # more text\n")
	}
}

func randomJSON(r *rand.Rand) string {
	list := []string{``, `, "readings": []`, `, "readings": [ {"tie": "r1 r2", "is": 5} ]`, ", \"readings\": [\n {\"tie\": \"r1 r2\", \"is\": 5},\n {\"note\": \"]}\"}\n]"}[r.IntN(4)]
	text := `{"brimline": 1, "marks": {"r1": {}}` + list + `}`
	if r.IntN(2) == 0 {
		text += "\n"
	}
	return text
}
