package mistake_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/locate"
	"brimline/mistake"
	"brimline/network"
	"brimline/plane"
)

// tape is one tie of a book that a test writes.
type tape struct {
	a, b  string
	is    float64 // written with three decimals
	words string  // further keys
}

// court holds the true places of marks and the tapes read there.
type court struct {
	at    map[string]plane.Point
	tapes []tape
	rim   []string
	r     *rand.Rand
	sd    float64 // of the noise
}

// newCourt has four pegs and marks r1 … on an oval beside the base, invented; noise of sd metres.
func newCourt(seed uint64, marks int, sd float64) *court {
	c := &court{at: map[string]plane.Point{"A": {}, "B": {X: 8.3}, "C": {X: 9.4, Y: 9.2}, "D": {X: -1.1, Y: 8.6}},
		r: rand.New(rand.NewPCG(seed, 21)), sd: sd}
	for k := range marks {
		a := 2*math.Pi*float64(k)/float64(marks) + 0.3
		name := fmt.Sprintf("r%d", k+1)
		c.at[name] = plane.Point{X: 3.6 + 3.1*math.Cos(a), Y: 4.9 + 2.2*math.Sin(a)}
		c.rim = append(c.rim, name)
	}
	return c
}

// read tapes a to b and gives the tape's place in the list.
func (c *court) read(a, b, words string) int {
	c.tapes = append(c.tapes, tape{a, b, c.at[a].Dist(c.at[b]) + c.sd*c.r.NormFloat64(), words})
	return len(c.tapes) - 1
}

// pegs tapes every two of the pegs named.
func (c *court) pegs(names string) {
	for k, a := range strings.Fields(names) {
		for _, b := range strings.Fields(names)[:k] {
			c.read(b, a, "")
		}
	}
}

// rows tapes mark by mark from the pegs named.
func (c *court) rows(names string) {
	for _, m := range c.rim {
		for _, p := range strings.Fields(names) {
			c.read(p, m, "")
		}
	}
}

// tie finds the tape of two marks.
func (c *court) tie(a, b string) *tape {
	for k := range c.tapes {
		if c.tapes[k].a == a && c.tapes[k].b == b {
			return &c.tapes[k]
		}
	}
	panic("no tape " + a + " " + b)
}

const tapeOf5 = "tools: {tape: {sigma: 5 mm}, reel: {sigma: 5 mm}}\n"

// text is the book, head before its readings.
func (c *court) text(head string) string {
	var b strings.Builder
	b.WriteString("brimline: 1\n" + head + "readings:\n")
	for _, t := range c.tapes {
		words := t.words
		if !strings.Contains(words, "tool:") {
			words += ", tool: tape"
		}
		fmt.Fprintf(&b, "- {tie: %s %s, is: \"%.3f\"%s}\n", t.a, t.b, t.is, words)
	}
	if len(c.rim) > 1 {
		fmt.Fprintf(&b, "lines: {rim: {closed: true, runs: [{curve: [%s, %s]}]}}\n", strings.Join(c.rim, ", "), c.rim[0])
	}
	return b.String()
}

// answer is what was found in a book.
type answer struct {
	*mistake.Report
	first *adjust.Solution // of all readings
	net   *network.Network
	book  *fieldbook.Book
}

// ask runs the chain up to the mistakes.
func ask(t *testing.T, text string) answer {
	t.Helper()
	b, err := fieldbook.Parse("test.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	n, _ := network.Build(&b, nil)
	start := locate.Find(n)
	s, _ := adjust.Solve(context.Background(), n, start.X, adjust.Options{Fallback: start.X})
	r := mistake.Find(context.Background(), s, &b)
	if r == nil {
		t.Fatal("no report")
	}
	return answer{r, s, n, &b}
}

// in lists the readings in a state, as their marks.
func (a answer) in(state mistake.State) []string {
	var out []string
	for i, s := range a.State {
		if s == state {
			out = append(out, a.name(i))
		}
	}
	return out
}

// name is a reading by its marks.
func (a answer) name(i int) string {
	var words []string
	for _, m := range a.net.Obs[i].Marks {
		words = append(words, a.net.Marks[m])
	}
	return strings.Join(words, " ")
}

// names are several.
func (a answer) names(obs []int) []string {
	var out []string
	for _, i := range obs {
		out = append(out, a.name(i))
	}
	return out
}

// of is the observation of two marks.
func (a answer) of(t *testing.T, name string) int {
	t.Helper()
	for i := range a.net.Obs {
		if a.name(i) == name {
			return i
		}
	}
	t.Fatalf("no reading %s", name)
	return 0
}

// told says the mistakes in short, for messages.
func (a answer) told() string {
	out := ""
	for _, m := range a.Mistakes {
		out += fmt.Sprintf("[%s %.4f of %v, %.3f] ", m.Code, m.Size, a.names(m.Obs), m.Chance)
	}
	return out
}
