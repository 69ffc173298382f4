package adjust_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/internal/checks"
	"brimline/locate"
	"brimline/network"
	"brimline/plane"

	"gonum.org/v1/gonum/mat"
)

// levelled adjusts a book from nothing.
func levelled(t *testing.T, text string) *adjust.Solution {
	t.Helper()
	b, err := fieldbook.Parse("levels.yaml", []byte("brimline: 1\n"+text))
	if err != nil {
		t.Fatal(err)
	}
	n, _ := network.Build(&b, nil)
	s, _ := solve(t, n, locate.Find(n).X)
	return s
}

// heightOf is the adjusted height of a mark with its standard deviation.
func heightOf(t *testing.T, s *adjust.Solution, name string) (z, sd float64) {
	t.Helper()
	b, ok := adjust.HeightBlock(s.Net, s.Net.ByName[name])
	z, held := s.Height(b)
	if !ok || !held {
		t.Fatalf("%s has no height", name)
	}
	return z, math.Sqrt(math.Max(s.HeightCov(b)[0], 0))
}

// levelBook writes the lines of a published net as `level` readings from the first fixed mark; the
// others fixed are joined to it by their heights themselves.
func levelBook(item checks.Item, fixed []string, heights map[string]float64, key string, sd func(i int) float64) string {
	var b strings.Builder
	b.WriteString("readings:\n")
	for _, m := range fixed[1:] {
		fmt.Fprintf(&b, "- {level: %s %s, rise: %.6f, sigma: 0.000001}\n", fixed[0], m, heights[m]-heights[fixed[0]])
	}
	for i, o := range item.Inputs.Any(key) {
		row := o.([]any)
		fmt.Fprintf(&b, "- {level: %s %s, rise: %.6f, sigma: %.9f}\n", row[0], row[1], row[2], sd(i))
	}
	return b.String()
}

// Ghilani, Adjustment Computations, level nets (LS-01, LS-02), read from a field book. Feet stand for
// metres.
func TestPublishedLevelNetsAsBooks(t *testing.T) {
	one, two := checks.Get(t, "LS-01"), checks.Get(t, "LS-02")
	fixed := one.Inputs.Object("fixed_ft")
	const unit = 0.01 // only the reference sd may know it
	s := levelled(t, levelBook(one, []string{"BMX", "BMY"}, fixed, "observations_ft", func(int) float64 { return unit }))
	var sds []float64
	for _, m := range []string{"A", "B", "C"} {
		z, sd := heightOf(t, s, m)
		one.Compare(m, z+fixed["BMX"])
		sds = append(sds, sd*s.ReferenceSD)
	}
	one.Compare("s0", s.ReferenceSD*unit)
	one.Compare("sd", sds...)
	one.Compare("residuals", s.Residual[1:]...)
	w := two.Inputs.List("weights")
	s = levelled(t, levelBook(two, []string{"BMX", "BMY"}, fixed, "observations_ft", func(i int) float64 { return unit / math.Sqrt(w[i]) }))
	for _, m := range []string{"A", "B", "C"} {
		z, _ := heightOf(t, s, m)
		two.Compare(m, z+fixed["BMX"])
	}
	two.Compare("s0", s.ReferenceSD*unit)
}

// A printed adjustment of a level loop with its statistics (LS-03), and the redundancy numbers of
// LS-09, read from a field book.
func TestPublishedLevelLoopAsBook(t *testing.T) {
	item := checks.Get(t, "LS-03")
	sigma := item.Inputs.Number("sigma_apriori_mm") / 1000
	fixed := item.Inputs.Object("fixed_m")
	s := levelled(t, levelBook(item, []string{"1a"}, fixed, "observations_m", func(int) float64 { return sigma }))
	var z, sd []float64
	for _, m := range []string{"4", "3", "2"} {
		v, e := heightOf(t, s, m)
		z, sd = append(z, v+fixed["1a"]), append(sd, 1000*e)
	}
	item.Compare("heights_4_3_2", z...)
	item.Compare("sd_mm_from_apriori", sd...)
	item.Compare("dof", float64(s.Redundancy))
	item.Compare("pvv_mm2", s.Cost*sigma*sigma*1e6)
	item.Compare("m0_aposteriori_mm", s.ReferenceSD*sigma*1000)
	base, net := checks.Get(t, "LS-09"), checks.Get(t, "LS-01")
	each := base.Inputs.Number("sigma_each")
	s = levelled(t, levelBook(net, []string{"BMX", "BMY"}, net.Inputs.Object("fixed_ft"), "observations_ft", func(int) float64 { return each }))
	base.Compare("redundancy", s.Redund[1:]...)
	base.Compare("w", s.W[1:]...)
}

// A level loop by staff readings (L-02): the raw rises and the misclosure before adjustment, and the
// heights of equal shares of it, which equal weights of the set-ups give.
func TestPublishedStaffLoop(t *testing.T) {
	item := checks.Get(t, "L-02")
	back, fore := item.Inputs.List("backsights"), item.Inputs.List("foresights")
	points := item.Inputs.Any("points")
	var b strings.Builder
	b.WriteString("readings:\n")
	from := "BM7"
	for i, p := range points {
		fmt.Fprintf(&b, "- {staff: %s, setup: S%d, is: %.3f}\n- {staff: %s, setup: S%d, is: %.3f}\n", from, i, back[i], p, i, fore[i])
		from = p.(string)
	}
	s := levelled(t, b.String())
	loops := s.Net.Loops()
	if len(loops) != 1 || loops[0].Setups != len(back) {
		t.Fatalf("loops %+v", loops)
	}
	item.Compare("misclosure_m", math.Abs(loops[0].Misclosure))
	start := item.Inputs.Number("start")
	want := item.Expected.List("adjusted")
	for i, p := range points[:len(points)-1] {
		z, _ := heightOf(t, s, p.(string))
		near(t, p.(string), z+start, want[i], 0.00101) // printed shares are rounded to the millimetre, one after another
	}
}

// Slope 300 ft at 5° (L-04): its level length, from the tape along the slope and the rise.
func TestPublishedSlope(t *testing.T) {
	item := checks.Get(t, "L-04")
	slope := item.Inputs.Object("slope")
	length, angle := slope["s"], slope["angle_deg"]*math.Pi/180
	s := levelled(t, fmt.Sprintf("readings:\n- {tie: A B, is: %.3f, slope: true}\n- {level: A B, rise: %.9f}\n", length, length*math.Sin(angle)))
	item.Compare("horizontal", s.X.Point(s.Net.ByName["A"]).Dist(s.X.Point(s.Net.ByName["B"])))
	item.Compare("rise", length*math.Sin(angle))
}

// mixture is a book of every kind that reads heights, with plan, at invented true places with noise.
func mixture(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 31))
	at, z := map[string]plane.Point{"A": {}, "B": {X: 8}, "C": {X: 3, Y: 9}}, map[string]float64{}
	rim := []string{}
	for k := range 6 {
		name := fmt.Sprintf("r%d", k+1)
		a := 2*math.Pi*float64(k)/6 + 0.3
		at[name] = plane.Point{X: 4 + 3*math.Cos(a), Y: 4.5 + 2*math.Sin(a)}
		rim = append(rim, name)
	}
	names := append([]string{"A", "B", "C"}, rim...)
	for _, m := range names {
		z[m] = 0.3 * r.Float64()
	}
	z["B"], z["C"] = 1.4, -0.9
	var b strings.Builder
	line := func(format string, a ...any) { fmt.Fprintf(&b, "- {"+format+"}\n", a...) }
	space := func(p, q string) float64 { return math.Hypot(at[p].Dist(at[q]), z[q]-z[p]) }
	noise := func(sd float64) float64 { return sd * r.NormFloat64() }
	for i, p := range names[:3] {
		for _, q := range names[i+1:] {
			line("tie: %s %s, is: %.5f, slope: true, tool: reel", p, q, 1.001*(space(p, q)+0.02)+noise(0.005))
		}
	}
	for s := range 2 {
		for _, m := range names {
			far := 4 + 10*r.Float64()
			line("staff: %s, setup: S%d, is: %.5f, sight: %.2f", m, s, 2.1+0.1*float64(s)-z[m]+0.0002*far+noise(0.001), far)
		}
	}
	for k, m := range rim {
		line("water: w%d, under: %s, is: %.5f", 1+k%2, m, z[m]+0.2+0.03*float64(k%2)+noise(0.0015))
		line("level: %s %s, rise: %.5f", m, rim[(k+1)%6], z[rim[(k+1)%6]]-z[m]+noise(0.002))
		line("seen: %s, setup: T, at: [%.5f, %.5f, %.5f]", m, 1.02*at[m].X+noise(0.004), 1.02*at[m].Y+noise(0.004), 1.02*(z[m]+1.3)+noise(0.004))
	}
	u := at["r1"].Sub(at["r4"]).Unit()
	for k := range 3 {
		x := 1 + 2*float64(k)
		f, bottom := at["r4"].Add(u.Mul(x)).Add(u.Left().Mul(0.2)), -1.6
		line("depth: f%d, below: w1, is: %.5f, line: r4 r1, at: %.5f, left: %.5f", k, -0.2-bottom+noise(0.008), x+noise(0.005), 0.2+noise(0.005))
		line("depth: f%d, below: rim, is: %.5f", k, rimAt(f, rim, at, z)-bottom+noise(0.008))
		line("depth: f%d, below: A, is: %.5f, slope: true", k, math.Hypot(f.Dist(at["A"]), bottom-z["A"])+noise(0.008))
	}
	return "tools: {reel: {zero: solve, scale: solve}}\nsetups: {S0: {collimation: solve}, S1: {collimation: solve}, T: {scale: solve}}\n" +
		"lines: {rim: {closed: true, runs: [{curve: [r1, r2, r3, r4, r5, r6, r1]}]}}\nreadings:\n" + b.String()
}

// rimAt is the height of the straights round the rim where they are nearest to p.
func rimAt(p plane.Point, rim []string, at map[string]plane.Point, z map[string]float64) float64 {
	best, height := math.Inf(1), 0.0
	for k, m := range rim {
		q := rim[(k+1)%len(rim)]
		for i := range 2001 {
			share := float64(i) / 2000
			if d := p.Dist(plane.Lerp(at[m], at[q], share)); d < best {
				best, height = d, z[m]+share*(z[q]-z[m])
			}
		}
	}
	return height
}

// A second method: the same problem by full matrices, with derivatives by differences over every scalar,
// and every figure of plan and height from the QR of the whitened rows.
func TestHeightsAgainstFullMatrices(t *testing.T) {
	for seed := range uint64(4) {
		s := levelled(t, mixture(seed))
		live := alive(s)
		a, u := whitened(s, live)
		if rows, _ := a.Dims(); rows != s.Rows || len(live) != s.Unknowns || s.Redundancy != rows-len(live) {
			t.Fatalf("rows %d, unknowns %d, redundancy %d; full %v × %d", s.Rows, s.Unknowns, s.Redundancy, rows, len(live))
		}
		var grad mat.VecDense
		grad.MulVec(a.T(), mat.NewVecDense(len(u), u))
		var normal, cov mat.Dense
		normal.Mul(a.T(), a)
		if err := cov.Inverse(&normal); err != nil {
			t.Fatal(err)
		}
		var step mat.VecDense
		step.MulVec(&cov, &grad)
		for k := range live {
			near(t, "step of a scalar from the full solution", step.AtVec(k)/math.Sqrt(cov.At(k, k)), 0, 1e-5)
		}
		compareHeights(t, s, live, &cov)
		compareRedundancy(t, s, a, &cov)
	}
}

// alive lists the scalars that have a place and are not held by the datum.
func alive(s *adjust.Solution) []int {
	n := s.Net
	datum, _ := n.Datum()
	var out []int
	for i, v := range s.X {
		if !math.IsNaN(v) && i != 2*s.Base[0] && i != 2*s.Base[0]+1 && i != 2*s.Base[1]+1 && i != n.Offset[datum] {
			out = append(out, i)
		}
	}
	return out
}

// whitened gives the rows of derivatives by differences and the misfits, over sd.
func whitened(s *adjust.Solution, live []int) (*mat.Dense, []float64) {
	const h = 1e-6
	var u []float64
	var rows [][]float64
	for i := range s.Net.Obs {
		if !s.In[i] {
			continue
		}
		o := &s.Net.Obs[i]
		value := func() []float64 {
			v := make([]float64, len(o.Values))
			o.Kind.Predict(s.X, o, v, make([]float64, len(v)*o.Size))
			return v
		}
		here := value()
		block := make([][]float64, len(here))
		for k := range block {
			block[k] = make([]float64, len(live))
			u = append(u, (here[k]-o.Values[k])/o.SD[k])
		}
		for c, at := range live {
			was := s.X[at]
			s.X[at] = was + h
			more := value()
			s.X[at] = was - h
			less := value()
			s.X[at] = was
			for k := range block {
				block[k][c] = (more[k] - less[k]) / (2 * h) / o.SD[k]
			}
		}
		rows = append(rows, block...)
	}
	a := mat.NewDense(len(rows), len(live), nil)
	for r, row := range rows {
		a.SetRow(r, row)
	}
	return a, u
}

func compareHeights(t *testing.T, s *adjust.Solution, live []int, cov *mat.Dense) {
	t.Helper()
	place := map[int]int{}
	for k, at := range live {
		place[at] = k
	}
	compared := 0
	for i := range s.Net.Free {
		b := s.Net.FreeBlock(i)
		k, ok := place[s.Net.Offset[b]]
		if !s.Net.Free[i].Upward() || !ok {
			continue
		}
		compared++
		want := cov.At(k, k)
		near(t, "variance of "+s.Net.Free[i].Name, s.HeightCov(b)[0]/want, 1, 1e-5)
	}
	if compared < 15 {
		t.Errorf("only %d heights compared", compared)
	}
	for m := range s.Net.Marks {
		if k, ok := place[2*m]; ok && m != s.Base[1] {
			near(t, "variance of x of "+s.Net.Marks[m], s.MarkCov(m)[0]/cov.At(k, k), 1, 1e-5)
		}
	}
}

func compareRedundancy(t *testing.T, s *adjust.Solution, a, cov *mat.Dense) {
	t.Helper()
	var hat, ac mat.Dense
	ac.Mul(a, cov)
	hat.Mul(&ac, a.T())
	row, sum := 0, 0.0
	for i := range s.Net.Obs {
		for p := s.First[i]; s.In[i] && p < s.First[i+1]; p++ {
			near(t, fmt.Sprintf("redundancy of observation %d", i), s.Redund[p], 1-hat.At(row, row), 1e-5)
			sum += s.Redund[p]
			row++
		}
	}
	near(t, "sum of redundancies", sum, float64(s.Redundancy), 1e-6)
}
