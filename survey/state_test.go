package survey_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brimline/internal/simulate"
	"brimline/survey"
)

// A reading that is struck or replaced stays listed, says why, shows the residual that it would
// have, and moves nothing.
func TestStruckReadings(t *testing.T) {
	without := run(t, small("", ties()+diagonals(), rim))
	r := run(t, small("", ties()+diagonals()+
		"- {tie: r1 r3, is: 5.2, tool: tape, id: bad}\n- {strike: bad, why: wrong corner}\n"+
		"- {tie: r2 r4, is: 5.9, tool: tape}\n- {replaces: 14, tie: r2 r4, is: 4.996, tool: tape, why: read again}\n- {strike: 15, why: not mine}\n", rim))
	if len(r.Readings) != 14 {
		t.Fatalf("%d readings are listed", len(r.Readings))
	}
	bad := reading(t, r, "12")
	if bad.State != "struck" || bad.Why != "wrong corner" || bad.ID != "bad" {
		t.Errorf("state %q, why %q", bad.State, bad.Why)
	}
	// As if it were put back: r = sd²/(sd² + q), residual = r·(predicted − read), w = (predicted −
	// read)/√(sd² + q).
	d := place(t, r, "r1").Dist(place(t, r, "r3")) - 5.2
	near(t, "residual", *bad.Residual, *bad.Redundancy*d, 1e-9)
	near(t, "w", *bad.W, d*math.Sqrt(*bad.Redundancy)/bad.SD, 1e-6)
	near(t, "adjusted", *bad.Adjusted, 5.2+*bad.Residual, 1e-12)
	back := run(t, small("", ties()+diagonals()+"- {tie: r1 r3, is: 5.2, tool: tape, id: bad}\n", rim))
	put := reading(t, back, "12")
	near(t, "redundancy when put back", *put.Redundancy, *bad.Redundancy, 0.01)
	if math.Abs(*put.W) < 10 || put.State != "good" {
		t.Errorf("put back: w %g, state %s", *put.W, put.State)
	}
	for _, n := range without.MarkOrder {
		// 16 replaces 14 and is in force until it is struck; only entry 15 (the replacement) is left out
		near(t, n, place(t, r, n).Dist(place(t, without, n)), 0, 0.02)
	}
}
