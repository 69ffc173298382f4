package survey_test
import ("testing";"fmt";"brimline/survey")
func TestZZ(t *testing.T) {
	for _, c := range []struct{s uint64; at int; m string}{{124,76,"r8"},{185,95,"r2"},{147,76,"r1"}} {
		fmt.Println("######", c)
		survey.ZZ(t, mixed(t, c.s), c.at, c.m)
	}
}
