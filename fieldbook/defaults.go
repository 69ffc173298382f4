package fieldbook

import "math"

// Default is the standard deviation that a reading has where neither it, its tool nor the book's
// rules give one: hypot(Sigma, PPM·1e-6·length, PerMetre·distance), where distance is that of
// the mark from the line of an offset. Class is "" for every class but those listed apart.
type Default struct {
	Kind, Part, Class string
	Sigma             float64 // metres; of an angular kind radians
	PPM               float64
	PerMetre          float64 // metres for each metre of distance
	Source            string
}

const commonPractice = "common practice, no source"

// degree in radians.
const degree = math.Pi / 180

// Defaults is the table of them.
var Defaults = []Default{
	{Kind: "tie", Part: "is", Sigma: 0.005, Source: commonPractice},
	{Kind: "offset", Part: "at", Sigma: 0.005, PerMetre: 0.010, Source: commonPractice},
	{Kind: "offset", Part: "left", Sigma: 0.005, Source: commonPractice},
	{Kind: "seen", Part: "x", Sigma: 0.004, Source: commonPractice},
	{Kind: "seen", Part: "y", Sigma: 0.004, Source: commonPractice},
	{Kind: "seen", Part: "z", Sigma: 0.004, Source: commonPractice},
	{Kind: "turn", Part: "is", Sigma: 0.02 * degree, Source: commonPractice},
	{Kind: "straight", Part: "across", Sigma: 0.005, Source: commonPractice},
	{Kind: "arc", Part: "across", Sigma: 0.005, Source: commonPractice},
	{Kind: "square", Part: "is", Sigma: 0.1 * degree, Source: commonPractice},
	{Kind: "bow", Part: "is", Sigma: 0.005, Source: commonPractice},
	{Kind: "along", Part: "is", Sigma: 0.005, PPM: 1000, Source: commonPractice},
	{Kind: "round", Part: "is", Sigma: 0.005, PPM: 1000, Source: commonPractice},
	{Kind: "clear", Part: "is", Sigma: 0.010, Source: commonPractice},
	{Kind: "width", Part: "is", Sigma: 0.003, Source: commonPractice},
	{Kind: "level", Part: "rise", Sigma: 0.002, Source: commonPractice},
	{Kind: "staff", Part: "is", Sigma: 0.001, Source: commonPractice},
	{Kind: "water", Part: "is", Sigma: 0.0015, Source: commonPractice},
	{Kind: "depth", Part: "is", Sigma: 0.008, Source: commonPractice},
	{Kind: "depth", Part: "at", Sigma: 0.050, Source: commonPractice},
	{Kind: "depth", Part: "left", Sigma: 0.050, Source: commonPractice},
	{Kind: "wall", Part: "is", Sigma: 0.005, Source: commonPractice},
	{Kind: "plumb", Part: "down", Sigma: 0.005, Source: commonPractice},
	{Kind: "plumb", Part: "outward", Sigma: 0.003, Source: commonPractice},
	{Kind: "profile", Part: "outward", Sigma: 0.002, Source: commonPractice},
	{Kind: "profile", Part: "down", Sigma: 0.002, Source: commonPractice},
	{Kind: "tie", Part: "is", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "offset", Part: "at", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "offset", Part: "left", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "seen", Part: "x", Class: "drawing", Sigma: 0.300, Source: commonPractice},
	{Kind: "seen", Part: "y", Class: "drawing", Sigma: 0.300, Source: commonPractice},
	{Kind: "seen", Part: "z", Class: "drawing", Sigma: 0.300, Source: commonPractice},
	{Kind: "turn", Part: "is", Class: "drawing", Sigma: 1 * degree, Source: commonPractice},
	{Kind: "straight", Part: "across", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "arc", Part: "across", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "square", Part: "is", Class: "drawing", Sigma: 1 * degree, Source: commonPractice},
	{Kind: "bow", Part: "is", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "along", Part: "is", Class: "drawing", Sigma: 0.300, Source: commonPractice},
	{Kind: "round", Part: "is", Class: "drawing", Sigma: 0.300, Source: commonPractice},
	{Kind: "clear", Part: "is", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "width", Part: "is", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "level", Part: "rise", Class: "drawing", Sigma: 0.100, Source: commonPractice},
	{Kind: "staff", Part: "is", Class: "drawing", Sigma: 0.100, Source: commonPractice},
	{Kind: "water", Part: "is", Class: "drawing", Sigma: 0.100, Source: commonPractice},
	{Kind: "depth", Part: "is", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "depth", Part: "at", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "depth", Part: "left", Class: "drawing", Sigma: 0.150, Source: commonPractice},
	{Kind: "wall", Part: "is", Class: "drawing", Sigma: 0.100, Source: commonPractice},
	{Kind: "plumb", Part: "down", Class: "drawing", Sigma: 0.100, Source: commonPractice},
	{Kind: "plumb", Part: "outward", Class: "drawing", Sigma: 0.050, Source: commonPractice},
	{Kind: "profile", Part: "outward", Class: "drawing", Sigma: 0.050, Source: commonPractice},
	{Kind: "profile", Part: "down", Class: "drawing", Sigma: 0.050, Source: commonPractice},
}

// DefaultSigma gives the standard deviation of one part of a reading by the table, in metres or, of
// an angular kind, radians. The parts of straight and arc, one a mark, are all called across. length is the value of the part, distance that from the line of an offset. Without a row for
// the class the kind's own row counts; without one for the kind the answer is 0.
func DefaultSigma(kind, part, class string, length, distance float64) float64 {
	best := 0.0
	for _, d := range Defaults {
		if d.Kind == kind && d.Part == part && (d.Class == class || d.Class == "") {
			sd := math.Hypot(math.Hypot(d.Sigma, d.PPM*1e-6*length), d.PerMetre*distance)
			if d.Class == class && class != "" {
				return sd
			}
			best = sd
		}
	}
	return best
}
