package draft_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/plane"
	"brimline/survey"
	"brimline/unit"
)

// staked is a pool of a simulated family with so many marks: one at every joint, the others dealt
// out by length; pegs A and B below it and C beyond.
func staked(seed uint64, family string, marks int) pool {
	f := figureOf(seed, family)
	p := pool{}
	for i, n := range dealt(f, marks) {
		piece := plane.Path{Segs: f[i].Segs}
		var at []plane.Point
		for k := 0; k <= n; k++ {
			at = append(at, along(piece, float64(k)/float64(n)))
		}
		for _, q := range at[:n] {
			p.marks, p.names, p.of = append(p.marks, q), append(p.names, fmt.Sprintf("r%d", len(p.marks)+1)), append(p.of, i)
		}
		p.tangent, p.kinds = append(p.tangent, f[i].Tangent), append(p.kinds, f[i].Kind)
		if f[i].Kind != "curve" {
			p.path.Segs = append(p.path.Segs, f[i].Segs...)
			continue
		}
		for k := range n { // a fair curve through the marks, by arcs
			p.path.Segs = append(p.path.Segs, plane.ArcThrough(at[k], along(piece, (float64(k)+0.5)/float64(n)), at[k+1]))
		}
	}
	p.path.Closed = true
	b := p.path.Bounds()
	w := b.Max.X - b.Min.X
	p.pegs = []plane.Point{{X: b.Min.X + 0.15*w, Y: b.Min.Y - 1.8}, {X: b.Min.X + 0.85*w, Y: b.Min.Y - 1.8}, {X: b.Min.X + 0.4*w, Y: b.Max.Y + 1.6}}
	return p.from(p.pegs[0])
}

// from puts a point at the origin.
func (p pool) from(o plane.Point) pool {
	by := plane.Turned(0, o.Mul(-1))
	p.path = p.path.Move(by)
	for _, list := range [][]plane.Point{p.marks, p.pegs} {
		for i := range list {
			list[i] = by.Apply(list[i])
		}
	}
	return p
}

func figureOf(seed uint64, family string) simulate.Figure {
	for _, s := range simulate.Shapes {
		if s.Name() == family {
			return s.Draw(rand.New(rand.NewPCG(seed, 4)))
		}
	}
	panic("no family " + family)
}

// dealt is how many marks begin on each piece: one at least, the rest where the room is largest.
func dealt(f simulate.Figure, marks int) []int {
	n := make([]int, len(f))
	for i := range n {
		n[i] = 1
	}
	for left := marks - len(f); left > 0; left-- {
		best := 0
		for i := range f {
			if f[i].Length()/float64(n[i]) > f[best].Length()/float64(n[best]) {
				best = i
			}
		}
		n[best]++
	}
	return n
}

// along is the place at a share of a path's length.
func along(p plane.Path, share float64) plane.Point {
	seg, t, ok := p.Place(share * p.Length())
	if !ok {
		last := p.Segs[len(p.Segs)-1]
		return last.B
	}
	return p.Segs[seg].At(t)
}

// made is a fixture with a made-up solution.
func made(seed uint64, family string, marks int, u unit.Unit) fixture {
	return makeOf(fmt.Sprintf("%s of %d marks in %s", family, marks, u), staked(seed, family, marks), u)
}

// taped is the field book of a staked pool, tied to its three pegs by a tape with noise, with
// neighbours taped and a few checks, and what the whole chain makes of it.
func taped(t testing.TB, seed uint64, family string, marks int, u string) fixture {
	t.Helper()
	p := staked(seed, family, marks)
	b, err := fieldbook.Parse("staked.yaml", []byte(bookOf(seed, family, p, u)))
	if err != nil {
		t.Fatal(err)
	}
	r, err := survey.Run(context.Background(), survey.Input{Book: &b}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return fixture{name: fmt.Sprintf("%s of %d marks taped in %s", family, marks, u), book: &b, result: r}
}

func bookOf(seed uint64, family string, p pool, u string) string {
	noise := rand.New(rand.NewPCG(seed, 5))
	var b strings.Builder
	fmt.Fprintf(&b, "brimline: 1\njob: {name: %s of %d marks, measured: 2026-05-14, by: crew 4}\nunits: {length: %s}\n", family, len(p.marks), u)
	b.WriteString("tools: {tape: {sigma: 3 mm}}\nmarks: {A: {kind: peg}, B: {kind: peg}, C: {kind: peg}}\nreadings:\n")
	at := map[string]plane.Point{}
	names := append([]string{"A", "B", "C"}, p.names...)
	for i, q := range append(append([]plane.Point(nil), p.pegs...), p.marks...) {
		at[names[i]] = q
	}
	tie := func(m, n, more string) {
		fmt.Fprintf(&b, "- {tie: %s %s, is: %s, tool: tape%s}\n", m, n, typed(at[m].Dist(at[n])+0.003*noise.NormFloat64(), u), more)
	}
	tie("A", "B", "")
	tie("A", "C", "")
	tie("B", "C", "")
	n := len(p.names)
	for i, m := range p.names {
		for _, peg := range names[:3] {
			tie(peg, m, "")
		}
		if i%3 == 0 {
			tie(m, p.names[(i+n/2)%n], "")
		}
	}
	for k := range 4 {
		tie(p.names[k*n/8], p.names[(k*n/8+n/3)%n], ", check: true")
	}
	fmt.Fprintf(&b, "- {side: %s, of: A B, hand: left}\nlines: {rim: {closed: true, edge: nose, runs: [%s]}}\n", p.names[0], strings.Join(p.runs(), ", "))
	return b.String()
}

// typed is a length as a measurer would write it.
func typed(m float64, u string) string {
	if u != "ft" {
		return fmt.Sprintf("%.3f m", m)
	}
	sixteenths := int(math.Round(m / 0.0254 * 16))
	return fmt.Sprintf("\"%d' %d %d/16\\\"\"", sixteenths/192, sixteenths/16%12, sixteenths%16)
}

// runs are the runs of the rim as the book writes them.
func (p pool) runs() []string {
	var out []string
	for i, kind := range p.kinds {
		var list []string
		last := p.names[0]
		for k, of := range p.of {
			if of == i {
				list = append(list, p.names[k])
				last = p.names[(k+1)%len(p.names)]
			}
		}
		joint := "kink"
		if p.tangent[i] {
			joint = "tangent"
		}
		out = append(out, fmt.Sprintf("{%s: [%s, %s], joint: %s}", kind, strings.Join(list, ", "), last, joint))
	}
	return out
}
