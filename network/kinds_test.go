package network_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brimline/network"
)

// shape says how to make an observation of a kind: its marks, whether it has a set-up, and the
// free blocks that it brings along.
type shape struct {
	name  string
	kind  string
	marks int
	setup bool
	half  bool // the other half of the kind, of network.Halves
	extra []func(*rand.Rand) []float64
	edit  func(o *network.Obs)
	at    func(k int, r *rand.Rand) (x, y float64) // where its marks are; nil: anywhere
}

// bean puts n marks round a line that turns both ways.
func bean(n int) func(int, *rand.Rand) (x, y float64) {
	return func(k int, r *rand.Rand) (x, y float64) {
		a := 2 * math.Pi * float64(k) / float64(n)
		rad := 3 + math.Cos(2*a) + 0.2*r.Float64()
		return rad * math.Cos(a+0.2), rad * math.Sin(a+0.2)
	}
}

// stray puts the first mark anywhere within 6 m, the others round a bean.
func stray(k int, r *rand.Rand) (x, y float64) {
	if k == 0 {
		return 12*r.Float64() - 6, 12*r.Float64() - 6
	}
	return bean(9)(k-1, r)
}

// upTo lists the numbers from a below b.
func upTo(a, b int) []int {
	var out []int
	for i := a; i < b; i++ {
		out = append(out, i)
	}
	return out
}

// seesRing makes an observation see a closed line of a straight, an arc, a curve and two straights
// that meet in a rounded corner nobody reached, of nine marks from the given one; outward is the
// distance of its parallel.
func seesRing(first int, outward float64, mitre bool) func(o *network.Obs) {
	return func(o *network.Obs) {
		at := func(places ...int) []int {
			var out []int
			for _, p := range places {
				if p >= 0 {
					p += first
				}
				out = append(out, p)
			}
			return out
		}
		run := func(kind string, places ...int) network.TrackRun {
			return network.TrackRun{Kind: kind, At: at(places...), Rise: -1, In: true, Last: len(places) - 1}
		}
		o.Track = &network.Track{Whole: true, Outward: outward, Mitre: mitre, Ring: o.Marks[first:],
			Runs:    []network.TrackRun{run("straight", 0, 1), run("arc", 1, 2, 3, 4), run("curve", 4, 5, 6), run("straight", 6, 7, -1), run("straight", -1, 8, 0)},
			Corners: []network.TrackCorner{{Meet: [4]int(at(6, 7, 8, 0)), Round: 0.15}}}
		o.Track.Runs[2].Tangent, o.Track.Runs[3].Tangent = true, true
	}
}

// seesPart is a stretch from one inner mark of an arc over a curve to an inner mark of an arc.
func seesPart(outward float64) func(o *network.Obs) {
	return func(o *network.Obs) {
		o.Track = &network.Track{Outward: outward, Ring: o.Marks, Runs: []network.TrackRun{
			{Kind: "arc", At: upTo(0, 4), Rise: -1, In: true, First: 1, Last: 3}, {Kind: "curve", At: upTo(3, 7), Rise: -1, In: true, Last: 3, Tangent: true},
			{Kind: "arc", At: []int{6, 7, 8, 0}, Rise: -1, In: true, Last: 2}}}
	}
}

// seesLoop is a single fair ring, from its fifth mark past its first.
func seesLoop(first int) func(o *network.Obs) {
	return func(o *network.Obs) {
		o.Track = &network.Track{Whole: first > 0, Ring: o.Marks[first:], Outward: 0.1,
			Runs: []network.TrackRun{{Kind: "curve", At: upTo(first, 9+first), Loop: true, Rise: -1, In: true, First: 4, Last: 11}}}
		if first > 0 {
			o.Track.Runs[0].First, o.Track.Runs[0].Last = 0, 9
		}
	}
}

// seesRise is an arc of two marks whose rise is read, between two others.
func seesRise(o *network.Obs) {
	o.Track = &network.Track{Outward: -0.1, Ring: o.Marks, Runs: []network.TrackRun{
		{Kind: "curve", At: upTo(0, 4), Rise: -1, In: true, First: 1, Last: 3}, {Kind: "arc", At: []int{3, 5}, Rise: 0, Water: true, In: true, Last: 1, Tangent: true},
		{Kind: "straight", At: []int{5, 7}, Rise: -1, In: true, Last: 1}}}
}

// Free blocks as the tests make them.
func freeLine(r *rand.Rand) []float64 { return []float64{6*r.Float64() - 3, 4*r.Float64() - 2} }

func freeCircle(r *rand.Rand) []float64 { return append(freeLine(r), 0.2*r.Float64()-0.1) }

func nearlyLine(r *rand.Rand) []float64 { return append(freeLine(r), 1e-9*r.Float64()) }

func freeRise(r *rand.Rand) []float64 { return []float64{r.Float64()} }

func zeroOnly(r *rand.Rand) []float64 { return []float64{0.1 * r.Float64()} }

func scaleOnly(r *rand.Rand) []float64 { return []float64{0.9 + 0.2*r.Float64()} }

func zeroAndScale(r *rand.Rand) []float64 { return append(zeroOnly(r), scaleOnly(r)...) }

func solves(zero, scale bool) func(o *network.Obs) {
	return func(o *network.Obs) { o.Zero, o.Scale, o.SolveZero, o.SolveScale = 0.03, 1.01, zero, scale }
}

// shapes has at least one entry for every member of network.Kinds.
func shapes() []shape {
	return []shape{
		{name: "tie", kind: "tie", marks: 2},
		{name: "tie with zero and scale", kind: "tie", marks: 2, edit: func(o *network.Obs) { o.Zero, o.Scale = 0.03, 1.01 }},
		{name: "offset", kind: "offset", marks: 3},
		{name: "seen", kind: "seen", marks: 1, setup: true},
		{name: "seen, y downward", kind: "seen", marks: 1, setup: true, edit: func(o *network.Obs) { o.Flip = true }},
		{name: "seen, solved scale", kind: "seen", marks: 1, setup: true, edit: func(o *network.Obs) { o.Solve = true }},
		{name: "seen, both", kind: "seen", marks: 1, setup: true, edit: func(o *network.Obs) { o.Solve, o.Flip = true, true }},
		{name: "tie, zero solved", kind: "tie", marks: 2, extra: blocks(zeroOnly), edit: solves(true, false)},
		{name: "tie, scale solved", kind: "tie", marks: 2, extra: blocks(scaleOnly), edit: solves(false, true)},
		{name: "tie, both solved", kind: "tie", marks: 2, extra: blocks(zeroAndScale), edit: solves(true, true)},
		{name: "turn", kind: "turn", marks: 3},
		{name: "straight of three", kind: "straight", marks: 3, extra: blocks(freeLine)},
		{name: "straight of six", kind: "straight", marks: 6, extra: blocks(freeLine)},
		{name: "arc of four", kind: "arc", marks: 4, extra: blocks(freeCircle)},
		{name: "arc of five, all but straight", kind: "arc", marks: 5, extra: blocks(nearlyLine)},
		{name: "square", kind: "square", marks: 3},
		{name: "bow", kind: "bow", marks: 2, extra: blocks(freeRise)},
		{name: "bow, tool solved", kind: "bow", marks: 2, extra: blocks(freeRise, zeroAndScale), edit: solves(true, true)},
		{name: "bow of an arc", kind: "bow", marks: 3},
		{name: "along a part", kind: "along", marks: 9, at: bean(9), edit: seesPart(0)},
		{name: "along a part of a parallel", kind: "along", marks: 9, at: bean(9), edit: seesPart(0.3)},
		{name: "along past the first mark", kind: "along", marks: 9, at: bean(9), edit: seesLoop(0)},
		{name: "along with a rise, tool solved", kind: "along", marks: 9, at: bean(9), extra: blocks(freeRise, zeroAndScale),
			edit: func(o *network.Obs) { seesRise(o); solves(true, true)(o) }},
		{name: "round", kind: "round", marks: 9, at: bean(9), edit: seesRing(0, 0, false)},
		{name: "round, outward", kind: "round", marks: 9, at: bean(9), edit: seesRing(0, 0.25, false)},
		{name: "round, inward", kind: "round", marks: 9, at: bean(9), edit: seesRing(0, -0.25, false)},
		{name: "round, mitred, scale solved", kind: "round", marks: 9, at: bean(9), extra: blocks(scaleOnly),
			edit: func(o *network.Obs) { seesRing(0, 0.25, true)(o); solves(false, true)(o) }},
		{name: "clear", kind: "clear", marks: 10, at: stray, edit: seesRing(1, 0, false)},
		{name: "clear of a curve's parallel", kind: "clear", marks: 10, at: stray, edit: seesLoop(1)},
		{name: "width", kind: "width", marks: 2},
		{name: "bow of an arc, tool solved", kind: "bow", marks: 3, extra: blocks(zeroAndScale), edit: solves(true, true)},
		{name: "tie along the slope", kind: "tie", marks: 2, extra: blocks(freeHeight, freeHeight), edit: slopes(false, false)},
		{name: "tie along the slope, tool solved", kind: "tie", marks: 2, extra: blocks(freeHeight, freeHeight, zeroAndScale), edit: slopes(true, true)},
		{name: "level", kind: "level", extra: blocks(freeHeight, freeHeight)},
		{name: "staff", kind: "staff", extra: blocks(freeHeight, freeHeight), edit: func(o *network.Obs) { o.Zero = 0.002 }},
		{name: "staff, collimation solved", kind: "staff", extra: blocks(freeHeight, freeHeight, tilt), edit: func(o *network.Obs) { o.Sight = 12.5 }},
		{name: "water", kind: "water", extra: blocks(freeHeight, freeHeight)},
		{name: "depth below water", kind: "depth", extra: blocks(freeHeight, freeHeight)},
		{name: "depth below a ring", kind: "depth", marks: 10, at: inBean, extra: blocks(freeHeight, freeHeight, freeHeight, freeHeight, freeHeight), edit: below(true, false, 2, 4, 6, 8)},
		{name: "depth below a part, along the slope", kind: "depth", marks: 10, at: inBean, extra: blocks(freeHeight, freeHeight, freeHeight), edit: below(false, true, 3, 7)},
		{name: "depth along the slope from a mark", kind: "depth", marks: 2, extra: blocks(freeHeight, freeHeight), edit: below(false, true, 1)},
		{name: "seen height", half: true, kind: "seen", extra: blocks(freeHeight, freeHeight)},
		{name: "seen height, solved scale", half: true, kind: "seen", setup: true, extra: blocks(freeHeight, freeHeight), edit: func(o *network.Obs) { o.Solve = true }},
		{name: "wall", kind: "wall"}, {name: "plumb", kind: "plumb"}, {name: "profile", kind: "profile"},
	}
}

func freeHeight(r *rand.Rand) []float64 { return []float64{3 * r.Float64()} }

func tilt(r *rand.Rand) []float64 { return []float64{0.001 * r.Float64()} }

func slopes(zero, scale bool) func(o *network.Obs) {
	return func(o *network.Obs) {
		solves(zero, scale)(o)
		o.Slope = true
	}
}

// below makes a depth read below the marks given, of the first.
func below(closed, slant bool, marks ...int) func(o *network.Obs) {
	return func(o *network.Obs) { o.Foot = &network.Foot{Mark: 0, Marks: marks, Closed: closed, Slant: slant} }
}

// inBean puts the first mark near the middle, the others round a bean.
func inBean(k int, r *rand.Rand) (x, y float64) {
	if k == 0 {
		return r.Float64() - 0.5, r.Float64() - 0.5
	}
	return bean(9)(k-1, r)
}

func blocks(fs ...func(*rand.Rand) []float64) []func(*rand.Rand) []float64 { return fs }

// made gives the observation and a random state: marks within 20 m, any turn, scale near 1.
func made(t *testing.T, s shape, r *rand.Rand) (*network.Obs, network.State) {
	t.Helper()
	k, ok := network.KindNamed(s.kind)
	if !ok {
		t.Fatalf("%s: no such kind", s.name)
	}
	for _, h := range network.Halves {
		if s.half && h.Name() == s.kind {
			k = h
		}
	}
	o := &network.Obs{Kind: k, Setup: -1, Scale: 1, Use: true}
	var x network.State
	for m := range s.marks {
		o.Marks = append(o.Marks, m)
		o.At = append(o.At, len(x))
		px, py := 20*r.Float64()-10, 20*r.Float64()-10
		if s.at != nil {
			px, py = s.at(m, r)
		}
		x = append(x, px, py)
	}
	if s.setup {
		o.Setup = s.marks
	}
	if s.edit != nil {
		s.edit(o)
	}
	if o.Track != nil {
		o.Track.Marks = o.Marks
	}
	if s.setup {
		o.At = append(o.At, len(x))
		x = append(x, 20*r.Float64()-10, 20*r.Float64()-10, 6*r.Float64()-3)
		if o.Solve {
			x = append(x, 0.7+0.6*r.Float64())
		}
	}
	for k, f := range s.extra {
		o.Extra = append(o.Extra, network.Unknown(s.marks+k))
		o.At = append(o.At, len(x))
		x = append(x, f(r)...)
	}
	if s.kind == "bow" && s.marks == 2 { // its marks take no part
		o.At, x = o.At[2:], x[4:]
		for k := range o.At {
			o.At[k] -= 4
		}
	}
	lay(o, s)
	o.Size = len(scalars(o, x))
	o.Blocks = k.Touches(o)
	o.Values = make([]float64, len(k.Parts(o)))
	return o, x
}

// lay puts the blocks of a reading of heights in the order that its kind touches them: heights first,
// then what it sees in plan.
func lay(o *network.Obs, s shape) {
	plan := len(o.At) - len(s.extra)
	first := o.At[plan:]
	switch {
	case o.Foot != nil: // of the marks those alone that the foot lies between
		at := append([]int(nil), first...)
		for _, m := range append([]int{o.Foot.Mark}, o.Foot.Marks...) {
			at = append(at, o.At[m])
		}
		o.At = at
	case s.half:
		o.At = append(append([]int(nil), first...), o.At[:plan]...)
	}
}

// scalars are the places in the state of what a reading touches, in its order.
func scalars(o *network.Obs, x network.State) []int {
	var out []int
	_, half := o.Kind.(network.SeenHeight)
	for k, at := range o.At {
		dim := 1
		switch {
		case o.Foot == nil && !half:
			return upTo(0, len(x))
		case k >= len(o.Extra) && half:
			dim = 4
		case k >= len(o.Extra):
			dim = 2
		}
		out = append(out, upTo(at, at+dim)...)
	}
	return out
}

// predict gives the values and the derivatives.
func predict(o *network.Obs, x network.State) (value, jac []float64) {
	value, jac = make([]float64, len(o.Values)), make([]float64, len(o.Values)*o.Size)
	o.Kind.Predict(x, o, value, jac)
	return value, jac
}

// differences are the derivatives of the parts by scalar c, from four predictions: exact to the
// fourth order (M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 1964, 25.3.6).
func differences(o *network.Obs, x network.State, c int) []float64 {
	const h = 1e-4
	was := x[c]
	at := func(k float64) []float64 {
		x[c] = was + k*h
		v, _ := predict(o, x)
		return v
	}
	far, near, back, behind := at(2), at(1), at(-1), at(-2)
	x[c] = was
	for p := range near {
		near[p] = (8*(near[p]-back[p]) - far[p] + behind[p]) / (12 * h)
	}
	return near
}

// Every kind's derivatives agree with central differences; every kind is in the table.
func TestDerivatives(t *testing.T) {
	left := map[string]bool{}
	for _, k := range network.Kinds {
		left[k.Name()] = true
	}
	r := rand.New(rand.NewPCG(1, 2))
	for _, s := range shapes() {
		delete(left, s.kind)
		for range 50 {
			o, x := made(t, s, r)
			if len(o.Blocks) != len(o.At) {
				t.Fatalf("%s: touches %d blocks, made %d", s.name, len(o.Blocks), len(o.At))
			}
			_, jac := predict(o, x)
			for c, at := range scalars(o, x) {
				for p, want := range differences(o, x, at) {
					if got := jac[p*o.Size+c]; math.Abs(got-want) > 1e-7*(1+math.Abs(want)) {
						t.Fatalf("%s: part %d by scalar %d is %.10g, by differences %.10g at %v", s.name, p, c, got, want, x)
					}
				}
			}
		}
	}
	for name := range left {
		t.Errorf("kind %s has no derivative test", name)
	}
}

// Second derivatives agree with central differences of the first ones; the force is not 1, and
// Curve adds to what stands there.
func TestCurve(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	const h = 1e-5
	curved := 0
	for _, s := range shapes() {
		k, _ := network.KindNamed(s.kind)
		c, ok := k.(network.Curved)
		if !ok {
			continue
		}
		curved++
		for range 50 {
			o, x := made(t, s, r)
			f := make([]float64, len(o.Values))
			for p := range f {
				f[p] = 4*r.Float64() - 2
			}
			hess := make([]float64, o.Size*o.Size)
			for i := range hess {
				hess[i] = 7
			}
			c.Curve(x, o, f, hess)
			for b := range x {
				was := x[b]
				x[b] = was + h
				_, up := predict(o, x)
				x[b] = was - h
				_, down := predict(o, x)
				x[b] = was
				for a := range x {
					want := 7.0
					for p := range f {
						want += f[p] * (up[p*o.Size+a] - down[p*o.Size+a]) / (2 * h)
					}
					if got := hess[a*o.Size+b]; math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
						t.Fatalf("%s: entry %d,%d is %.9g, by differences %.9g", s.name, a, b, got, want)
					}
				}
			}
		}
	}
	if curved < 6 {
		t.Errorf("%d curved shapes tested, want the tie's five and the turn", curved)
	}
}

// Where two marks coincide the direction is +x, and nothing is NaN.
func TestCoincidentMarks(t *testing.T) {
	x := network.State{2, 3, 2, 3, 5, 7}
	tie := &network.Obs{Kind: network.Tie{}, Marks: []int{0, 1}, At: []int{0, 2}, Size: 4, Scale: 1, Values: []float64{0}}
	v, j := predict(tie, x)
	if v[0] != 0 || j[0] != -1 || j[1] != 0 || j[2] != 1 || j[3] != 0 {
		t.Errorf("tie: %v %v", v, j)
	}
	hess := make([]float64, 16)
	network.Tie{}.Curve(x, tie, []float64{1}, hess)
	for _, h := range hess {
		if h != 0 {
			t.Errorf("tie: curve %v", hess)
			break
		}
	}
	off := &network.Obs{Kind: network.Offset{}, Marks: []int{2, 0, 1}, At: []int{4, 0, 2}, Size: 6, Scale: 1, Values: []float64{0, 0}}
	if v, _ = predict(off, x); v[0] != 3 || v[1] != 4 {
		t.Errorf("offset: %v, want 3 along +x and 4 left", v)
	}
}

// What each kind predicts, by hand.
func TestPredictByHand(t *testing.T) {
	off := &network.Obs{Kind: network.Offset{}, Marks: []int{2, 0, 1}, At: []int{4, 0, 2}, Size: 6, Scale: 1, Values: []float64{0, 0}}
	seen := &network.Obs{Kind: network.Seen{}, Marks: []int{0}, Setup: 1, At: []int{0, 2}, Size: 5, Scale: 1, Values: []float64{0, 0}}
	flip, scaled := *seen, *seen
	flip.Flip = true
	scaled.Solve, scaled.Size = true, 6
	for _, c := range []struct {
		name string
		o    *network.Obs
		x    network.State
		want []float64
	}{
		{"tie", &network.Obs{Kind: network.Tie{}, Marks: []int{0, 1}, At: []int{0, 2}, Size: 4, Scale: 2, Zero: 0.5, Values: []float64{0}}, network.State{1, 1, 4, 5}, []float64{10.5}},
		{"offset left of a line going up", off, network.State{1, 1, 1, 9, 0, 4}, []float64{3, 1}},
		{"offset right of a line going up", off, network.State{1, 1, 1, 9, 3, 0}, []float64{-1, -2}},
		{"seen from a set-up turned by a quarter", seen, network.State{1, 5, 1, 2, math.Pi / 2}, []float64{3, 0}},
		{"seen, to the left of it", seen, network.State{0, 2, 1, 2, math.Pi / 2}, []float64{0, 1}},
		{"seen, y downward", &flip, network.State{0, 2, 1, 2, math.Pi / 2}, []float64{0, -1}},
		{"seen, scale 2", &scaled, network.State{0, 3, 1, 2, math.Pi / 2, 2}, []float64{2, 2}},
	} {
		got, _ := predict(c.o, c.x)
		for p := range c.want {
			if math.Abs(got[p]-c.want[p]) > 1e-12 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}
