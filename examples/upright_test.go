package examples_test

import (
	"math"
	"strings"
	"testing"

	"brimline/examples"
	"brimline/plane"
)

// upright are the values of a freeboard or a sounding less the truth, in sd; of a sounding the depth
// first, then the place along the string and across.
func (b page) upright(t *testing.T, r item, s sheet) []float64 {
	t.Helper()
	if r.Water != "" {
		return []float64{(length(t, r.Is) - (s.Heights[r.Under] - s.Surfaces[r.Water])) / boardSD}
	}
	at := func(m string) plane.Point { return plane.Point{X: s.Marks[m][0], Y: s.Marks[m][1]} }
	ends := strings.Fields(r.Line)
	way, off := at(ends[1]).Sub(at(ends[0])).Unit(), at(r.Depth).Sub(at(ends[0]))
	own := sigmas(r.Sigma)
	return []float64{
		(length(t, r.Is) - (s.Surfaces[r.Below] - s.Heights[r.Depth])) / mm(t, own[0]),
		(r.At - off.Dot(way)) / mm(t, own[1]),
		(r.Left - r.Right - way.Cross(off)) / mm(t, own[2]),
	}
}

// The true volume lies within 2 sd of what the answer says the pool holds, and the shortcut of half the
// shallowest and deepest does not. The true height of every mark lies within 4 sd, most within 1.96.
func TestWaterAndHeightsAsAnswered(t *testing.T) {
	pools, n, in := 0, 0, 0
	for _, e := range examples.All() {
		s, r := truthOf(t, e.Name), answerOf(t, e.Name)
		if s.Volume == 0 {
			continue
		}
		pools++
		w := r.Water
		if w == nil || w.VolumeSD == nil {
			t.Errorf("%s: no water", e.Name)
			continue
		}
		z := (w.Volume - s.Volume) / *w.VolumeSD
		t.Logf("%s: %.3f m³, %+.2f sd; shortcut %+.2f m³", e.Name, w.Volume, z, w.Shortcut.Error)
		if math.Abs(z) > 2 || math.Abs(w.Shortcut.Volume-s.Volume) < 3**w.VolumeSD {
			t.Errorf("%s: %.3f m³, sd %.3f, the truth %.3f, shortcut %.3f", e.Name, w.Volume, *w.VolumeSD, s.Volume, w.Shortcut.Volume)
		}
		for m, up := range s.Heights {
			k := r.Marks[m]
			if k == nil || k.Z == nil || *k.SZ == 0 {
				continue
			}
			n++
			off := math.Abs(*k.Z-up) / *k.SZ
			if off < 1.96 {
				in++
			}
			if off > 4 {
				t.Errorf("%s: %s at %.4f, sd %.4f, the truth %.4f", e.Name, m, *k.Z, *k.SZ, up)
			}
		}
	}
	share := float64(in) / float64(n)
	t.Logf("%d of %d heights within 1.96 sd", in, n)
	if pools < 2 || n < 80 || share < 0.88 {
		t.Errorf("%d pools; %d of %d heights within 1.96 sd", pools, in, n)
	}
}

// The level of Corner Cat is found to rise 3 mm in 20 m, and the loop over the wrong staff does not close.
func TestCollimationOfCornerCat(t *testing.T) {
	l := answerOf(t, "corner-cat").Levels
	if len(l.Collimations) != 1 || l.Collimations[0].SD == nil {
		t.Fatalf("collimations %+v", l.Collimations)
	}
	c := l.Collimations[0]
	if math.Abs(*c.Value-catRises) > 2**c.SD || *c.Value < 2**c.SD {
		t.Errorf("rises %.6f, sd %.6f, the truth %.6f", *c.Value, *c.SD, catRises)
	}
	if l.Closure == nil || math.Abs(*l.Closure-0.1) > 0.01 {
		t.Errorf("closure %v", l.Closure)
	}
}

// The walls of Long Drop stand further back where the floor is deep: the section there is wider at the foot
// than at the rim by what the plumb lines read.
func TestWallsOfLongDropLean(t *testing.T) {
	r := answerOf(t, "long-drop")
	ring := func(level float64) float64 {
		for _, s := range r.Water.Stages {
			if math.Abs(s.Depth-level) < 1e-6 {
				return s.Area
			}
		}
		t.Fatalf("no stage at %v", level)
		return 0
	}
	// ∮ behind ds from 0.1 to 1.0 below the water: 18 mm a metre along the leaning stretch, half of that
	// where the lean grows.
	side := func(x float64) float64 { return math.Max(0, math.Min(1, (x+dropLong/2-dropFlat)/dropSlope)) }
	want := 0.0
	for _, s := range cutBox(dropLong, dropWide, legAlong, legAcross).Path().Segs {
		for k := range 200 {
			want += s.Length() / 200 * side(s.At((float64(k)+0.5)/200).X) * dropLeans * 0.9
		}
	}
	if got := ring(1.0) - ring(0.1); math.Abs(got-want) > 0.25*want {
		t.Errorf("the pool is %.3f m² wider below, by the lean %.3f", got, want)
	}
}
