package mistake

import (
	"math"

	"brimline/fieldbook"
	"brimline/network"
)

// otherSide is what part k of an offset was if it was written on the wrong side of its line: as
// far off it on the other.
func otherSide(b *fieldbook.Book, o *network.Obs, k int) []candidate {
	if _, offset := o.Kind.(network.Offset); !offset || o.Kind.Parts(o)[k] != "left" {
		return nil
	}
	p := odds(b, "mirrored")
	if p <= 0 || math.Abs(o.Values[k]) < same {
		return nil
	}
	return []candidate{{"mirrored", "written on the other side of the line", -o.Values[k], math.Log(p)}}
}
