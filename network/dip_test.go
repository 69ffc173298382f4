package network_test

import (
	"math"
	"testing"

	"brimline/fieldbook"
	"brimline/network"
)

// A tape of 12 m that hangs 0.20 m in the middle reads 8.889 mm too much (handbook, appendix A): the
// predicted reading is that much longer than the distance, and a quarter of it is unsure.
func TestDip(t *testing.T) {
	b, err := fieldbook.Parse("dip", []byte("brimline: 1\nreadings:\n- {tie: A B, is: 12, dip: 0.20, sigma: 3 mm}\n- {tie: A B, is: 12, sigma: 3 mm}\n"))
	if err != nil {
		t.Fatal(err)
	}
	n, _ := network.Build(&b, nil)
	x := network.State{0, 0, 12, 0}
	v, j := make([]float64, 1), make([]float64, 4)
	o := &n.Obs[0]
	o.Kind.Predict(x, o, v, j)
	if sag := v[0] - 12; math.Abs(sag-0.008889) > 5e-7 || math.Abs(o.SD[0]-math.Hypot(0.003, 0.25*sag)) > 1e-9 {
		t.Errorf("predicted %g, sd %g", v[0], o.SD[0])
	}
	o = &n.Obs[1]
	if o.Kind.Predict(x, o, v, j); v[0] != 12 || o.SD[0] != 0.003 {
		t.Errorf("straight: predicted %g, sd %g", v[0], o.SD[0])
	}
}
