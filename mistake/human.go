package mistake

import (
	"math"

	"brimline/fieldbook"
	"brimline/unit"
)

// Misreading is a way in which a person turns a true length into what stands in the book.
type Misreading interface {
	// Code of the closed list.
	Code() string
	// True lists the lengths that this mistake would have turned into the one written, with a word on
	// each; text is what was typed, u the unit of a bare number.
	True(text string, metres float64, u unit.Unit) []Was
}

// Was is a length that may have been meant.
type Was struct {
	Metres float64
	Cause  string
}

// Misreadings is the family, one file a member or a few of one kind.
var Misreadings = []Misreading{Metre{}, Tenth{}, Foot{}, Inch{}, Digits{}, Lookalike{}, FeetTenths{}, FeetMetres{}}

// candidate is a length that a reading may have been, with the log of its prior.
type candidate struct {
	code, cause string
	metres      float64
	ln          float64
}

// same is how near two candidates count as one, metres.
const same = 0.0005

// candidates lists what a value could have been by a family of misreadings, each length once under its likeliest cause.
func candidates(b *fieldbook.Book, family []Misreading, v fieldbook.Value, metres float64) []candidate {
	var out []candidate
	u := unit.M
	if b != nil {
		u = b.Units.Length
	}
	for _, k := range family {
		was := k.True(v.Text, metres, u)
		p := odds(b, k.Code()) / float64(max(len(was), 1))
		for _, w := range was {
			if math.Abs(w.Metres-metres) >= 2*same && p > 0 {
				out = keep(out, candidate{k.Code(), w.Cause, w.Metres, math.Log(p)})
			}
		}
	}
	return out
}

func keep(all []candidate, c candidate) []candidate {
	for i, o := range all {
		if math.Abs(o.metres-c.metres) < same {
			if c.ln > o.ln {
				all[i] = c
			}
			return all
		}
	}
	return append(all, c)
}
