package survey_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/survey"
)

// accept writes the edits of the first mistake into a book, as corrections that nobody read.
func accept(t *testing.T, src string, r *survey.Result) string {
	t.Helper()
	b := parse(t, src)
	var add []fieldbook.Entry
	for _, e := range r.Mistakes[0].Edit {
		i := slices.IndexFunc(b.Readings, func(x fieldbook.Taken) bool { return x.N == e.N })
		read := b.Readings[i].Reading
		read.Computed = true
		if len(e.Marks) > 0 {
			read.Marks = e.Marks
		}
		if e.Value != nil {
			read.Values = slices.Clone(read.Values)
			k := max(slices.IndexFunc(read.Values, func(v fieldbook.Value) bool { return v.Part == e.Part }), 0)
			read.Values[k].Text = strconv.FormatFloat(*e.Value, 'f', 6, 64)
			read.Values[k].Metres = *e.Value
		}
		add = append(add, fieldbook.Entry{Replaces: b.Readings[i].ID, Why: r.Mistakes[0].Text, Body: read})
	}
	out, err := fieldbook.Append([]byte(src), add...)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// A mistake accepted is gone, what was read stays listed, and nothing else moves.
func TestAcceptedMistake(t *testing.T) {
	metre := crossed(taped("A", "B", "C"))
	metre[at(t, metre, "B", "r5")].is += 1
	peg := crossed(taped("A", "B", "C"))
	peg[at(t, peg, "B", "r5")].is = court["C"].Dist(court["r5"])
	for name, all := range map[string][]tape{"metre": metre, "wrong peg": peg, "columns": swap(t).all, "zero": hook(t).all, "moved": kick(t).all} { // order-free: each is judged alone
		src := written(all, courtRim)
		was := run(t, src)
		now := run(t, accept(t, src, was))
		if len(now.Mistakes) > 0 || len(states(now, "suspect"))+len(states(now, "doubtful")) > 0 || strings.Contains(strings.Join(now.Shape.Why, " "), "suspect") {
			t.Errorf("%s: afterwards %+v, shape %s %v", name, now.Mistakes, now.Shape.State, now.Shape.Why)
		}
		for m := range court { // order-free: each mark is compared alone
			near(t, name+": "+m, place(t, now, m).Dist(place(t, was, m)), 0, 1e-6)
		}
		if len(now.Readings) != len(was.Readings)+len(was.Mistakes[0].Edit) {
			t.Errorf("%s: %d readings, were %d", name, len(now.Readings), len(was.Readings))
		}
		if now.Statistics.Redundancy != was.Statistics.Redundancy || now.Statistics.Readings != was.Statistics.Readings {
			t.Errorf("%s: statistics %+v, were %+v", name, now.Statistics, was.Statistics)
		}
		corrected(t, name, was, now)
	}
}

// corrected wants every edit listed as a correction beside the struck reading.
func corrected(t *testing.T, name string, was, now *survey.Result) {
	t.Helper()
	for i, e := range was.Mistakes[0].Edit {
		old, x := reading(t, now, e.N), now.Readings[len(was.Readings)+i]
		if old.State != "struck" || old.Value != reading(t, was, e.N).Value || !strings.Contains(old.Why, was.Mistakes[0].Text) {
			t.Errorf("%s: reading %s is %s, %q", name, e.N, old.State, old.Why)
		}
		if !x.Computed || x.As == "" || x.As != old.Text {
			t.Errorf("%s: reading %s: computed %v, as %q, read %q", name, x.N, x.Computed, x.As, old.Text)
		}
		if e.Value != nil {
			near(t, name+": value used", x.Value, *e.Value, 1e-6)
		}
		if len(e.Marks) > 0 && !slices.Equal(x.Marks, e.Marks) {
			t.Errorf("%s: marks %v, want %v", name, x.Marks, e.Marks)
		}
	}
}

// A correction worked out proves nothing: as long as others hold the mark it is left out, and where
// it alone holds a mark it takes part without redundancy.
func TestComputedProvesNothing(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	i := at(t, all, "B", "r5")
	without := append(slices.Clone(all[:i]), all[i+1:]...)
	fix := "- {replaces: " + number(i) + ", tie: B r5, is: 6.050, tool: tape, computed: true, why: worked out}\n"
	with := run(t, strings.Replace(written(all, courtRim), "- {side", fix+"- {side", 1))
	bare := run(t, written(without, courtRim))
	if with.Statistics.Redundancy != bare.Statistics.Redundancy {
		t.Errorf("redundancy %d, without it %d", with.Statistics.Redundancy, bare.Statistics.Redundancy)
	}
	for m := range court { // order-free: each mark is compared alone
		near(t, m, place(t, with, m).Dist(place(t, bare, m)), 0, 1e-7)
	}

	two := taped("A", "B") // nothing else holds r5
	i = at(t, two, "B", "r5")
	alone := run(t, strings.Replace(written(two, courtRim), "- {side", strings.Replace(fix, ": 17,", ": "+number(i)+",", 1)+"- {side", 1))
	x := alone.Readings[len(two)]
	if !x.Computed || x.State != "lone" || *x.Redundancy > 1e-9 || x.As != "6.024" {
		t.Errorf("%+v", x)
	}
	near(t, "length used", place(t, alone, "B").Dist(place(t, alone, "r5")), 6.050, 1e-6)
}

// Marks that only mistaken readings hold stand where the corrected lengths put them, and say so.
func TestHeldByCorrectedLengths(t *testing.T) {
	p := hook(t)
	r := run(t, written(p.all, courtRim))
	f := found(r, "held-corrected")
	if f == nil || len(f.Marks) == 0 {
		t.Fatalf("found %s", codes(r))
	}
	for _, m := range f.Marks {
		if r.Marks[m].Controlled || r.Marks[m].Hidden != nil {
			t.Errorf("%s: controlled %v", m, r.Marks[m].Controlled)
		}
		near(t, m, place(t, r, m).Dist(court[m]), 0, 0.010)
	}
	held := 0
	for i, was := range p.was { // order-free: a count, and each reading alone
		x := reading(t, r, number(i))
		if *x.Redundancy < 1e-6 {
			held++
			near(t, "adjusted "+x.N, *x.Adjusted, was, 0.006)
		}
		if math.Abs(x.Value-p.all[i].is) > 0.0006 {
			t.Errorf("reading %s shows %g, not what was read", x.N, x.Value)
		}
	}
	if held == 0 {
		t.Error("no reading holds a mark with the length that it was")
	}
}
