package mesh

import (
	"math"
	"math/bits"

	"brimline/plane"
)

// Points are put in along a space-filling curve, so that each is near the one before and the
// walk to it is short, in rounds that double or more, so that no order of points makes the
// work grow (N. Amenta, S. Choi, G. Rote, "Incremental constructions con BRIO", SoCG 2003).
// Which round a point is in follows from its number by a fixed mixing function: the same
// points in the same order are always put in alike.

const (
	curveBits = 14 // of each coordinate along the curve
	rounds    = 8
	roundBits = 3 // a round is one in 2^roundBits of the next
)

// insertionOrder is the order to put points in: numbers into pts.
func insertionOrder(pts []plane.Point) []int32 {
	box := boxOf(pts)
	side := max(box[2]-box[0], box[3]-box[1])
	scale := 0.0
	if side > 0 {
		scale = ((1 << curveBits) - 1) / side
	}
	keys := make([]uint64, len(pts))
	for i, p := range pts {
		x, y := uint32((p.X-box[0])*scale), uint32((p.Y-box[1])*scale)
		keys[i] = (roundOf(uint64(i))<<(2*curveBits)|uint64(hilbert(x, y)))<<32 | uint64(i)
	}
	keys = radixSort(keys)
	order := make([]int32, len(pts))
	for i, k := range keys {
		order[i] = int32(uint32(k))
	}
	return order
}

// boxOf is least x, least y, greatest x, greatest y.
func boxOf(pts []plane.Point) [4]float64 {
	b := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range pts {
		b = [4]float64{min(b[0], p.X), min(b[1], p.Y), max(b[2], p.X), max(b[3], p.Y)}
	}
	return b
}

// roundOf is the round of point i: the last for most, one before for one in 2^roundBits, …
// The mixing is the finaliser of splitmix64 (G. Steele, D. Lea, C. Flood, "Fast Splittable
// Pseudorandom Number Generators", OOPSLA 2014).
func roundOf(i uint64) uint64 {
	h := (i + 1) * 0x9e3779b97f4a7c15
	h = (h ^ h>>30) * 0xbf58476d1ce4e5b9
	h = (h ^ h>>27) * 0x94d049bb133111eb
	h ^= h >> 31
	return uint64(max(0, rounds-1-bits.TrailingZeros64(h)/roundBits))
}

// hilbert is how far along Hilbert's curve through a square of 2^curveBits a side the cell x, y lies.
func hilbert(x, y uint32) uint32 {
	d := uint32(0)
	for s := curveBits - 1; s >= 0; s-- {
		rx, ry := x>>s&1, y>>s&1
		d = d<<2 | (3*rx ^ ry)
		if ry == 0 { // turn the quarter so that the curve enters and leaves where its neighbours do
			mask := -rx
			x, y = y^mask, x^mask
		}
	}
	return d
}

// radixSort sorts by the upper half of the keys, equal ones in the order they stand in. It may
// use the slice given; the sorted one is returned.
func radixSort(keys []uint64) []uint64 {
	const digit = 11
	other := make([]uint64, len(keys))
	for shift := 32; shift < 64; shift += digit {
		var count [1 << digit]int32
		for _, k := range keys {
			count[k>>shift&(1<<digit-1)]++
		}
		sum := int32(0)
		for i, c := range count {
			count[i] = sum
			sum += c
		}
		for _, k := range keys {
			d := k >> shift & (1<<digit - 1)
			other[count[d]] = k
			count[d]++
		}
		keys, other = other, keys
	}
	return keys
}
