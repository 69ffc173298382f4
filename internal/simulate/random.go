package simulate

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
)

// The streams of one seed: a pool stays the same pool whatever it is measured with.
const (
	streamShape = iota + 1
	streamPlan
	streamNoise
	streamWrong
	streamMistakes
	streamBroken
	streamTape
	streamBasin
)

// stream is a source of its own for a seed, a purpose and names, so that what is drawn for one
// shape or method says nothing of another.
func stream(seed, purpose uint64, names ...string) *rand.Rand {
	h := fnv.New64a()
	for _, n := range names {
		h.Write([]byte(n + "\n"))
	}
	return rand.New(rand.NewPCG(seed, h.Sum64()+purpose))
}

func between(r *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

func chance(r *rand.Rand, p float64) bool { return r.Float64() < p }

func pick[T any](r *rand.Rand, list []T) T { return list[r.IntN(len(list))] }

// stepped draws a multiple of step between lo and hi, so that the book can state it in full.
func stepped(r *rand.Rand, lo, hi, step float64) float64 {
	n := int(math.Round((hi - lo) / step))
	return lo + float64(r.IntN(n+1))*step
}

// tries bounds every search by drawing again. The searches need a few dozen at most.
const tries = 5000

func degrees(d float64) float64 { return d * math.Pi / 180 }
