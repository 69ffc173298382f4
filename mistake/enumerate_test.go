package mistake_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"brimline/mistake"

	"gonum.org/v1/gonum/mat"
)

// tieNet is a net of tapes solved by full matrices, for counting through what may be wrong in it.
// Points 0 and 1 carry the datum.
type tieNet struct {
	start []float64 // x and y of all points
	ties  []netTie
	pegs  int // the first so many points
}

type netTie struct {
	a, b     int
	read, sd float64
	text     string
}

// lowest is the least sum of squares over all places, and the logarithm of the determinant of the
// normal matrix there.
func (n tieNet) lowest() (cost, lndet float64) {
	cost, lndet, _ = n.solved()
	return cost, lndet
}

// settled are the places of least squares.
func (n tieNet) settled() []float64 {
	_, _, x := n.solved()
	return x
}

func (n tieNet) solved() (cost, lndet float64, x []float64) {
	x = append([]float64(nil), n.start...)
	var free []int
	for i := range x {
		if i != 0 && i != 1 && i != 3 {
			free = append(free, i)
		}
	}
	for range 30 {
		a, y := mat.NewDense(len(n.ties), len(free), nil), mat.NewVecDense(len(n.ties), nil)
		cost = 0
		for r, t := range n.ties {
			dx, dy := x[2*t.b]-x[2*t.a], x[2*t.b+1]-x[2*t.a+1]
			d := math.Hypot(dx, dy)
			row := make([]float64, len(x))
			row[2*t.a], row[2*t.a+1], row[2*t.b], row[2*t.b+1] = -dx/d, -dy/d, dx/d, dy/d
			for k, c := range free {
				a.Set(r, k, row[c]/t.sd)
			}
			u := (t.read - d) / t.sd
			y.SetVec(r, u)
			cost += u * u
		}
		var ata mat.SymDense
		ata.SymOuterK(1, a.T())
		var chol mat.Cholesky
		if !chol.Factorize(&ata) {
			return math.Inf(1), 0, x
		}
		lndet = chol.LogDet()
		var g, step mat.VecDense
		g.MulVec(a.T(), y)
		if err := chol.SolveVecTo(&step, &g); err != nil {
			return math.Inf(1), 0, x
		}
		move := 0.0
		for k, c := range free {
			x[c] += step.AtVec(k)
			move = math.Max(move, math.Abs(step.AtVec(k)))
		}
		if move < 1e-12 {
			return cost, lndet, x
		}
	}
	return math.Inf(1), 0, x // it does not settle: no such figure
}

// with is the net with one tape changed.
func (n tieNet) with(i int, t netTie) tieNet {
	m := n
	m.ties = append([]netTie(nil), n.ties...)
	m.ties[i] = t
	return m
}

// written are the lengths that a tape's text may have been, by the code of the mistake, from the
// description of the mistakes alone: metres with three decimals.
func (t netTie) written() map[string][]float64 {
	v := t.read
	out := map[string][]float64{
		"metre": {v - 1, v + 1}, "foot": {v - 0.3048, v + 0.3048}, "tenth": {v - 0.1, v + 0.1}, "inch": {v - 0.0254, v + 0.0254},
		"feet-metres": {v * 0.3048},
	}
	var at []int // of the digits
	for i, c := range t.text {
		if c != '.' {
			at = append(at, i)
		}
	}
	put := func(code string, b []byte) {
		if w, err := strconv.ParseFloat(string(b), 64); err == nil && math.Abs(w-v) > 1e-9 {
			out[code] = append(out[code], w)
		}
	}
	for k, i := range at {
		if k+1 < len(at) {
			b := []byte(t.text)
			b[i], b[at[k+1]] = b[at[k+1]], b[i]
			put("digits", b)
		}
		if like, ok := map[byte]byte{'6': '9', '9': '6', '1': '7', '7': '1'}[t.text[i]]; ok {
			b := []byte(t.text)
			b[i] = like
			put("lookalike", b)
		}
	}
	return out
}

// posterior counts through everything: nothing wrong, or one tape, by each listed size, by any size
// (integrated over 10 m), or taped to another peg. It gives the chance of each tape and each code.
func (n tieNet) posterior() (none float64, wrong []float64, code []map[string]float64) {
	prior := map[string]float64{}
	for _, p := range mistake.Priors {
		prior[p.Code] = p.Odds
	}
	cost0, det0 := n.lowest()
	wrong, code = make([]float64, len(n.ties)), make([]map[string]float64, len(n.ties))
	base := cost0 // the best that one tape wrong can do
	for i := range n.ties {
		c := n.ties[i]
		c.sd = 1e3
		cost, _ := n.with(i, c).lowest()
		base = math.Min(base, cost)
	}
	none = math.Exp((base - cost0) / 2)
	total := none
	add := func(i int, name string, odds float64) {
		code[i][name] += odds
		wrong[i] += odds
		total += odds
	}
	for i, t := range n.ties {
		code[i] = map[string]float64{}
		likelihood := func(read float64) float64 {
			c := t
			c.read = read
			cost, _ := n.with(i, c).lowest()
			return math.Exp((base - cost) / 2)
		}
		for name, list := range t.written() {
			for _, v := range list {
				add(i, name, prior[name]/float64(len(list))*likelihood(v))
			}
		}
		add(i, "unknown", prior["unknown"]/10*integral(likelihood, n.without(i)))
		for side := range 2 { // the end that was at the peg, and each other peg
			for q := range n.pegs {
				c := t
				if side == 1 {
					c.a, c.b = t.b, t.a
				}
				if c.a >= n.pegs || q == c.a || q == c.b {
					continue
				}
				c.a = q
				cost, det := n.with(i, c).lowest()
				add(i, "wrong-peg", prior["wrong-peg"]/float64(n.pegs-1)*math.Exp((base-cost+det0-det)/2))
			}
		}
	}
	for i := range wrong {
		wrong[i] /= total
		for name := range code[i] {
			code[i][name] /= total
		}
	}
	return none / total, wrong, code
}

// without is the length of tape i as the other tapes have it.
func (n tieNet) without(i int) float64 {
	c := n.ties[i]
	c.sd = 1e3
	x := n.with(i, c).settled()
	return math.Hypot(x[2*c.b]-x[2*c.a], x[2*c.b+1]-x[2*c.a+1])
}

// integral is that of a likelihood over the true length, by steps of 2 mm to 160 mm either way of
// its peak: the sd of an error in one tape of these nets is 6 mm and more, 40 mm at most.
func integral(f func(float64) float64, about float64) float64 {
	const h = 0.002
	sum := 0.0
	for k := -80; k <= 80; k++ {
		sum += f(about+h*float64(k)) * h
	}
	return sum
}

// small is two marks with a tape from each of the pegs, which are taped to each other; one tape is
// off by so much.
func small(seed uint64, pegs, wrong string, off float64) *court {
	c := newCourt(seed, 2, 0.003)
	c.pegs(pegs)
	c.rows(pegs)
	c.tie(wrong[:1], wrong[2:]).is += off
	c.rim = nil
	return c
}

func netOf(a answer, pegs string) tieNet {
	n := tieNet{pegs: (len(pegs) + 1) / 2}
	for m := range a.net.Marks {
		p := a.first.X.Point(m)
		n.start = append(n.start, p.X, p.Y)
	}
	for i := range a.net.Obs {
		o := &a.net.Obs[i]
		n.ties = append(n.ties, netTie{o.Marks[0], o.Marks[1], o.Values[0], o.SD[0], a.book.Readings[o.Reading].Values[0].Text})
	}
	return n
}

// asked counts what a test of posteriors has asked.
type asked struct{ shown, quiet, sizes, readings, weak int }

// The chances of each reading and of each cause are those of counting through: no mistake, or one
// reading wrong by each listed size, by any size, or taped to another peg, each by its own solution.
// A mistake is shown exactly where that is likelier than none. With four tapes a mark the sizes
// compete, with three the readings do. Two mistakes at once are not counted: where readings cannot
// be told apart these may have as much chance as one of no listed kind, no more.
func TestPosteriorAgainstEnumeration(t *testing.T) {
	var n asked
	for seed := range uint64(3) {
		for k, off := range []float64{0.1, 0.112, -0.3048, 0.047, 0.028, -0.0254, 0.138, 0} {
			wrong := []string{"A r1", "C r2", "B r1", "B r2"}[(int(seed)+k)%4]
			n.compare(t, seed, "A B C D", wrong, off)
			if seed < 2 {
				n.compare(t, seed, "A B C", wrong, off)
			}
		}
	}
	if n.shown < 20 || n.quiet < 5 || n.sizes < 6 || n.readings < 10 || n.weak > 4 {
		t.Errorf("the test asks too little, or too loosely: %+v", n)
	}
}

// compare one net with one tape off.
func (n *asked) compare(t *testing.T, seed uint64, pegs, wrong string, off float64) {
	t.Helper()
	a := ask(t, small(seed, pegs, wrong, off).text(tapeOf5))
	none, chance, code := netOf(a, pegs).posterior()
	what := fmt.Sprintf("seed %d, pegs %s, %s off by %g: none has %.3f, and %s", seed, pegs, wrong, off, none, a.told())
	found := len(a.Mistakes) > 0
	if math.Abs(none-0.5) < 0.05 {
		return
	}
	if found != (none < 0.5) {
		t.Errorf("%s", what)
	}
	if none > 0.5 {
		n.quiet++
		return
	}
	n.shown++
	open, two := 0.0, -1.0 // chance that no listed mistake fits; chance of two mistakes, as told
	for i := range a.Wrong {
		open, two = open+code[i]["unknown"], two+a.Wrong[i]
	}
	if two > 0.1+open { // odds of two are the square of those of one
		t.Errorf("%s: two mistakes at once have %.3f, no listed one %.3f", what, two, open)
	}
	tol := 0.02 + math.Max(two, 0)
	for i := range a.Wrong {
		if chance[i] > 0.1 && a.first.Redund[i] < 0.05 { // far from a normal distribution: the mark swings by more than the error
			tol += 0.08
			n.weak++
			break
		}
	}
	for i := range a.Wrong {
		near(t, what+": "+a.name(i), a.Wrong[i], chance[i], tol)
		if chance[i] > 0.05 && chance[i] < 0.95 {
			n.readings++
		}
		for _, p := range mistake.Priors {
			near(t, what+": "+a.name(i)+" "+p.Code, a.chanceOf(i, p.Code), code[i][p.Code], tol)
			if v := code[i][p.Code] / chance[i]; chance[i] > 0.5 && v > 0.1 && v < 0.9 {
				n.sizes++
			}
		}
		if (a.State[i] == mistake.Suspect) != (chance[i] >= 0.95) && math.Abs(chance[i]-0.95) > tol {
			t.Errorf("%s: %s is %v at %.3f", what, a.name(i), a.State[i], chance[i])
		}
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.6g, want %.6g: off by %.3g, allowed %.3g", what, got, want, math.Abs(got-want), tol)
	}
}
