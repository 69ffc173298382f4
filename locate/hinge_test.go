package locate_test

import (
	"reflect"
	"testing"
)

// A strip of braced bays can fold at every rung: each later mark turns over with the bay before
// it, and all of them must be named. A tie over two bays stiffens it.
func TestHingesCarryAllThatHangsOnThem(t *testing.T) {
	r := strip().say("{side: m3, of: m1 m2, hand: right}").rim("m1", "m3", "m5", "m7", "m9", "m11", "m12", "m10", "m8", "m6", "m4", "m2").find(t)
	want := []string{"m5", "m6", "m7", "m8", "m9", "m10", "m11", "m12"}
	got := map[string]bool{}
	for _, f := range r.Findings {
		if f.Code == "mirror" {
			for _, m := range f.Marks {
				got[m] = true
			}
		}
	}
	for _, m := range want {
		if !got[m] || len(r.Other[r.n.ByName[m]]) == 0 {
			t.Errorf("%s hangs on a hinge and is not named: %v", m, r.Findings)
		}
	}
	s := stiff(strip()).say("{side: m3, of: m1 m2, hand: right}").find(t)
	if got := s.codes(); !reflect.DeepEqual(got, []string{"mirror-said"}) {
		t.Errorf("stiff strip: findings %v", got)
	}
}
