package rules

// Each source breaks one rule on the lines that end in "// breach", and on no other.
var plantedSources = []struct{ rule, path, src string }{
	{"types", "adjust", `package adjust

var x int = "text" // breach
`},
	{"names", "survey/utils", `package utils // breach
`},
	{"verdicts", "draft", `package draft

// The word safe in a comment is no print.
var texts = []string{
	"unsafe, safety, uncertified",
	"the pool is Safe.", // breach
	` + "`not compliant`" + `, // breach
	"certi" + "fied",
	"not certified", // breach
}
`},
	{"outside world", "adjust", `package adjust

import (
	_ "os" // breach
	_ "maps"
	_ "time"
)
`},
	{"clock and chance", "adjust", `package adjust

import (
	"math/rand/v2"
	old "math/rand"
	"time"
)

func f(seed uint64, at time.Time) (time.Duration, int) {
	r := rand.New(rand.NewPCG(seed, 1))
	now := time.Now // breach
	_ = now
	_ = old.New(old.NewSource(1)).Intn(3)
	_ = old.Intn(3) // breach
	d := time.Since(at) // breach
	return d.Round(time.Second), r.IntN(3) + rand.IntN(3) // breach
}
`},
	{"variables", "adjust", `package adjust

import (
	"slices"
	"sort"
	"sync"
)

type box struct{ n int; list []int }

func (b *box) set()     { b.n = 1 }
func (b box) get() int  { return b.n }

var (
	one   = 1
	list  = []int{3, 1}
	table = map[string]int{}
	b     box
	once  sync.Once
)

func f() *int {
	one := one
	one = 2
	own := list
	for i := range list {
		own[i]++
	}
	_ = b.get() + slices.Max(list) + sort.SearchInts(list, 2)
	_ = slices.Sorted(slices.Values(list))
	return &one
}

func g() {
	one = 2 // breach
	one++ // breach
	list[0] = 1 // breach
	(list)[0] += 1 // breach
	table["x"] = 1 // breach
	b.list[2] = 3 // breach
	for one = range 3 { // breach
	}
	for _, list[0] = range list { // breach
	}
	p := &b.n // breach
	_ = p
	b.set() // breach
	once.Do(g) // breach
	sort.Ints(list) // breach
	slices.Sort(list[1:]) // breach
	copy(list, list[1:]) // breach
	delete(table, "x") // breach
}
`},
	{"map order", "adjust", `package adjust

import (
	"maps"
	"slices"
	"sort"
)

func f[M ~map[string]float64](m map[string]float64, g M) (sum float64, out []string) {
	for _, v := range m { // breach
		sum += v
	}
	for k := range g { // breach
		out = append(out, k)
	}
	for k := range m { // order-free: a largest value has no order
		sum = max(sum, m[k])
	}
	for k := range m { // order-free:
		sum += m[k] // breach above: no reason
	}
	for k := range m {
		delete(m, k)
	}
	for range m {
		sum++
	}
	for k, v := range m {
		if v > 0 {
			out = append(out, k)
		}
	}
	sort.Strings(out)
	for k := range m { // breach
		out = append(out, k)
	}
	sum++
	slices.Sort(out)
	for k := range m { // breach
		out = append(out, k)
		sum += m[k]
	}
	slices.Sort(out)
	for _, k := range slices.Sorted(maps.Keys(m)) {
		sum += m[k]
	}
	for v := range maps.Values(m) { // breach
		sum += v
	}
	switch {
	case sum > 1:
		for _, v := range m { // breach
			sum += v
		}
	}
	func() {
		for _, v := range m { // breach
			sum += v
		}
	}()
	return sum, slices.Collect(maps.Keys(m)) // breach
}
`},
	{"init and goto", "adjust", `package adjust

type t struct{}

func (t) init() {}

func init() {} // breach

func f(n int) int {
again:
	n++
	if n < 3 {
		goto again // breach
	}
	for {
		break
	}
	return n
}
`},
}
