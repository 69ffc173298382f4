package survey_test

import (
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/survey"
)

var logs = flag.Int("logs", 24, "random logs of TestWarmEqualsCold")

func logCount(t *testing.T) int {
	t.Helper()
	if testing.Short() {
		return min(*logs, 4)
	}
	return *logs
}

func pool(seed uint64) simulate.Case {
	s, m := simulate.Shapes[seed%uint64(len(simulate.Shapes))], simulate.Methods[seed/3%uint64(len(simulate.Methods))]
	return simulate.Pool(seed, s, m, simulate.Options{})
}

// mixed is the log of a simulated pool in random order, with strikes and replacements between.
func mixed(t *testing.T, seed uint64) fieldbook.Log {
	t.Helper()
	b := parse(t, string(pool(seed).Book))
	if seed%2 == 0 { // a level on the same rim
		for _, e := range parse(t, string(simulate.Levels(seed, simulate.LevelPlan{Called: "a level", Setups: 1, Closed: true, Boards: 4, Second: 2}, 0.1, 0).Book)).Log {
			if _, reading := e.Body.(fieldbook.Reading); reading {
				e.Device = "level"
				b.Log = append(b.Log, e)
			}
		}
	}
	r := rand.New(rand.NewPCG(seed, 77))
	var out fieldbook.Log
	for _, k := range r.Perm(len(b.Log)) {
		out = append(out, b.Log[k])
		if r.Float64() > 0.15 {
			continue
		}
		of := b.Log[r.IntN(len(b.Log))] // perhaps one that has not come in yet
		read, ok := of.Body.(fieldbook.Reading)
		if !ok {
			continue
		}
		n := len(out)
		e := fieldbook.Entry{ID: fieldbook.ID(fmt.Sprintf("x%d", n)), Device: "phone", Place: n, Body: fieldbook.Strike{Of: of.ID, Reason: "slack"}}
		if r.IntN(2) == 0 {
			read.Values = append([]fieldbook.Value(nil), read.Values...)
			read.Values[0].Metres += 0.003 * r.NormFloat64()
			e.Body, e.Replaces, e.Why = read, of.ID, "read again"
		}
		out = append(out, e)
	}
	return out
}

// After every prefix of a log the session, which begins from its last coordinates, answers as a
// run that begins from nothing: marks to the larger of 1 nm and a millionth of their major
// semi-axis, and equal states.
func TestWarmEqualsCold(t *testing.T) {
	const batches = 4
	n := uint64(logCount(t))
	for batch := range uint64(batches) {
		t.Run(fmt.Sprint(batch+1), func(t *testing.T) {
			t.Parallel()
			prefixes, worst := 0, 0.0
			for seed := batch + 1; seed <= n && !t.Failed(); seed += batches {
				p, w := everyPrefix(t, seed)
				prefixes, worst = prefixes+p, math.Max(worst, w)
			}
			t.Logf("%d prefixes, each %dth of the seeds 1 to %d: apart by at most %.2g of what is allowed", prefixes, batches, n, worst)
		})
	}
}

// everyPrefix hands a session the entries of one log, one by one.
func everyPrefix(t *testing.T, seed uint64) (prefixes int, worst float64) {
	t.Helper()
	var s survey.Session
	log := mixed(t, seed)
	for k, e := range log {
		warm, err := s.Add(context.Background(), e)
		if err != nil {
			t.Fatal(err)
		}
		b, _ := log[:k+1].Book()
		worst = math.Max(worst, apart(t, fmt.Sprintf("seed %d, prefix %d", seed, k+1), solve(t, &b), warm))
		if t.Failed() {
			break
		}
	}
	return len(log), worst
}

// apart compares two answers and gives the largest distance as a share of what is allowed.
func apart(t *testing.T, what string, cold, warm *survey.Result) float64 {
	t.Helper()
	worst := 0.0
	if len(cold.Marks) != len(warm.Marks) || len(cold.Readings) != len(warm.Readings) {
		t.Fatalf("%s: %d marks, %d readings; warm %d and %d", what, len(cold.Marks), len(cold.Readings), len(warm.Marks), len(warm.Readings))
	}
	for _, name := range cold.MarkOrder {
		a, b := cold.Marks[name], warm.Marks[name]
		if b == nil || (a.X == nil) != (b.X == nil) || (a.Z == nil) != (b.Z == nil) {
			t.Fatalf("%s: %s has a place in one only", what, name)
		}
		if a.Z != nil {
			worst = math.Max(worst, math.Abs(*a.Z-*b.Z)/1e-9)
			if !(math.Abs(*a.Z-*b.Z) <= 1e-9) {
				t.Errorf("%s: %s is at %v, warm %v", what, name, *a.Z, *b.Z)
			}
		}
		if a.X == nil {
			continue
		}
		allowed := 1e-9
		if a.Ellipse95 != nil {
			allowed = math.Max(allowed, 1e-6*a.Ellipse95.Major)
		}
		d := math.Hypot(*a.X-*b.X, *a.Y-*b.Y)
		worst = math.Max(worst, d/allowed)
		if !(d <= allowed) {
			t.Errorf("%s: %s is %.3g m apart, %.3g allowed", what, name, d, allowed)
		}
		// A mark that can move by metres leaves redundancies no figures to compare.
		if a.Controlled != b.Controlled && (a.Ellipse95 == nil || a.Ellipse95.Major < 1) {
			t.Errorf("%s: %s is controlled %v, warm %v", what, name, a.Controlled, b.Controlled)
		}
	}
	for i, a := range cold.Readings {
		if b := warm.Readings[i]; a.N != b.N || a.ID != b.ID || a.State != b.State && !edgeOf(a) {
			t.Errorf("%s: reading %s is %s, warm %s %s", what, a.N, a.State, b.N, b.State)
		}
	}
	if cold.Shape.State != warm.Shape.State || codes(cold) != codes(warm) {
		t.Errorf("%s: shape %s, found %s; warm %s, %s", what, cold.Shape.State, codes(cold), warm.Shape.State, codes(warm))
	}
	return worst
}

// edgeOf says that |w| is within a millionth of its limit, where states may differ.
func edgeOf(x survey.Reading) bool { return x.W != nil && math.Abs(math.Abs(*x.W)-3.29) < 1e-6 }

// However a log is split among devices, and in whatever order the parts come in, the answer has
// the same bytes.
func TestMergeOfSplits(t *testing.T) {
	for seed := range uint64(max(logCount(t)/3, 2)) {
		log := mixed(t, seed+1)
		r := rand.New(rand.NewPCG(seed, 78))
		b, _ := log.Book()
		want := bytesOf(t, solve(t, &b))
		parts := make([]fieldbook.Log, 2+r.IntN(3))
		for _, k := range r.Perm(len(log)) {
			p := r.IntN(len(parts))
			parts[p] = append(parts[p], log[k])
			if r.Float64() < 0.2 { // some reach two devices
				p = r.IntN(len(parts))
				parts[p] = append(parts[p], log[k])
			}
		}
		var merged fieldbook.Log
		for _, k := range r.Perm(len(parts)) {
			merged, _ = fieldbook.Merge(merged, parts[k])
		}
		b, _ = merged.Book()
		if got := bytesOf(t, solve(t, &b)); got != want {
			t.Errorf("seed %d: merged from %d parts\n%s\nwant\n%s", seed+1, len(parts), got, want)
		}
	}
}

// A session keeps the entries of a call that was cancelled, and answers for them the next time.
func TestSessionKeepsFacts(t *testing.T) {
	b := parse(t, small("", ties()+diagonals(), rim))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var s survey.Session
	if _, err := s.Add(ctx, b.Log...); err == nil || len(s.Log) != len(b.Log) {
		t.Fatalf("cancelled: %v, %d entries kept of %d", err, len(s.Log), len(b.Log))
	}
	r, err := s.Add(context.Background())
	if err != nil || len(r.Readings) != 11 || r.Marks["r3"].X == nil {
		t.Fatalf("afterwards: %v, %d readings", err, len(r.Readings))
	}
}
