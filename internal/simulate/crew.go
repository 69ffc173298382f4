package simulate

import "fmt"

// crew is who reads: the first of the names up to the reading number change, then the second.
type crew struct {
	names  []string
	change int
}

// second says that the reading taken next falls to the second of a crew.
func (v *visit) second() bool { return len(v.crew.names) > 1 && len(v.readings) >= v.crew.change }

// hand is the tape of the one who reads next.
func (v *visit) hand() string {
	if v.second() && len(v.tools) > 1 {
		return v.tools[1].Name
	}
	return v.tape
}

// sign writes who reads and when, where a crew is named: a reading every 80 s from nine o'clock.
func (v *visit) sign(x *Reading) {
	if len(v.crew.names) == 0 {
		return
	}
	x.By = v.crew.names[0]
	if v.second() {
		x.By = v.crew.names[1]
	}
	s := 9*3600 + 80*len(v.readings)
	x.Time = fmt.Sprintf("2026-05-14T%02d:%02d:%02d+02:00", s/3600, s/60%60, s%60)
}
