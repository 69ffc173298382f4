package simulate

import (
	"math"
	"strconv"
	"strings"

	"brimline/plane"
)

// tapeMost is the longest distance that the tape gets.
const tapeMost = 30.0

// The standard deviations that the book leaves to the defaults of a kind.
const (
	defaultSeen   = 0.004
	defaultLeft   = 0.005
	defaultAlong  = 0.005
	defaultSquare = 0.010 // along the line, per metre of the offset
)

// tie reads the distance between two marks; nothing where the tape is too short.
func (v *visit) tie(a, b, tool string) {
	d := v.at[a].Dist(v.at[b])
	if d > tapeMost {
		return
	}
	v.take(Reading{Kind: "tie", Marks: []string{a, b}, Tool: tool, True: []float64{d}, SD: []float64{v.tieSD(a, b, tool, d)}})
}

// tieSD is the sd of a tie of length d by the book's own words.
func (v *visit) tieSD(a, b, tool string, d float64) float64 {
	t := v.tool(tool)
	return norm(t.Sigma, t.PPM*1e-6*d, v.definition[a], v.definition[b])
}

// offset reads a mark from the line of two pegs. own is the sigma of both parts as written with
// the reading, nil to leave it to the defaults.
func (v *visit) offset(mark, from, to string, own []float64) {
	u := v.at[to].Sub(v.at[from]).Unit()
	d := v.at[mark].Sub(v.at[from])
	at, left := d.Dot(u), u.Cross(d)
	sigma := own
	if sigma == nil {
		sigma = []float64{math.Hypot(defaultAlong, defaultSquare*left), defaultLeft}
	}
	def := v.definition[mark]
	v.take(Reading{
		Kind: "offset", Marks: []string{mark, from, to}, Own: own, True: []float64{at, left},
		SD: []float64{norm(sigma[0], def), norm(sigma[1], def)},
	})
}

// seen reads the coordinates of a mark or peg in the frame of the set-up.
func (v *visit) seen(mark string, s Setup) {
	q := s.Pose.Inverse().Apply(v.at[mark])
	if s.Flip {
		q.Y = -q.Y
	}
	sigma := s.Sigma
	if sigma == 0 {
		sigma = defaultSeen
	}
	var own []float64
	if s.Own {
		own = []float64{sigma}
	}
	sd := norm(sigma, v.definition[mark])
	v.take(Reading{
		Kind: "seen", Marks: []string{mark}, Setup: s.Name, Flip: s.Flip, Own: own,
		True: []float64{q.X, q.Y}, SD: []float64{sd, sd},
	})
}

// take adds noise, types the figures and lists the reading.
func (v *visit) take(x Reading) {
	for i, truth := range x.True {
		value := truth
		if !v.exact {
			value += x.SD[i] * v.noise.NormFloat64()
		}
		text, typed := typedAs(value, v.unit, v.exact)
		if x.Kind == "offset" && i == 1 {
			text = strings.TrimPrefix(text, "-") // the book says left or right instead
		}
		x.Read, x.Text, x.Typed = append(x.Read, value), append(x.Text, text), append(x.Typed, typed)
	}
	v.sign(&x)
	x.N = strconv.Itoa(len(v.readings) + 1)
	v.readings = append(v.readings, x)
}

// typedAs writes a length to the millimetre, or to 0.1 µm, and gives what was written, in
// metres.
func typedAs(value float64, unit string, fine bool) (text string, typed float64) {
	switch {
	case fine:
		text = strconv.FormatFloat(value, 'f', 7, 64)
	case unit == "mm":
		text = strconv.FormatFloat(1000*value, 'f', 0, 64)
	case unit == "ft":
		return feetText(value)
	default:
		text = strconv.FormatFloat(value, 'f', 3, 64)
	}
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text, valueOf(text, unit)
}

// valueOf is the length written, in metres.
func valueOf(text, unit string) float64 {
	if unit == "ft" {
		return feetValue(text)
	}
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("simulate: typed a figure that cannot be read: " + text)
	}
	if unit == "mm" {
		f /= 1000
	}
	return f
}

// norm is the root of the sum of squares.
func norm(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}

// places are the points of the names.
func (v *visit) places(names []string) []plane.Point {
	var out []plane.Point
	for _, n := range names {
		out = append(out, v.at[n])
	}
	return out
}
