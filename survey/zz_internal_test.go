package survey
import ("testing";"context";"fmt";"math";"brimline/fieldbook")
var _ = math.Abs
func zz(t *testing.T, log fieldbook.Log, at int, mark string) {
	var s Session
	for k, e := range log {
		if k == at-1 {
			b, _ := append(fieldbook.Log(nil), log[:k+1]...).Book()
			last := s.last
			w, _, _ := run(context.Background(), Input{Book: &b}, last, nil)
			c, _, _ := run(context.Background(), Input{Book: &b}, nil, nil)
			fmt.Println("chi", c.Statistics, w.Statistics.ChiSquare.Value, w.Statistics.Iterations)
			fmt.Println("remembered", last.marks[mark], "cold", *c.Marks[mark].X, *c.Marks[mark].Y, "warm", *w.Marks[mark].X, *w.Marks[mark].Y)
			for i, x := range c.Readings { for _, m := range x.Marks { if m == mark { fmt.Println(x.N, x.Kind, x.Marks, x.Value, x.State, "res", *x.Residual, "warm res", *w.Readings[i].Residual); for _, q := range x.Marks { if c.Marks[q].X != nil { fmt.Println("  ", q, *c.Marks[q].X, *c.Marks[q].Y)}}}}}
			for _, f := range c.Findings { fmt.Println(f.Code, f.Marks, f.Figures) }
			fmt.Println("WARM"); for _, f := range w.Findings { fmt.Println(f.Code, f.Marks, f.Figures) }
			return
		}
		s.Add(context.Background(), e)
	}
}
var ZZ = zz
