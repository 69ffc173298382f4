package main

import (
	"fmt"
	"sort"
	"testing"

	"brimline/internal/simulate"
)

func TestZZ(t *testing.T) {
	for i, p := range jobPlans[:3] {
		by := map[string][]float64{}
		var all []float64
		for k := range 100 {
			c := simulate.Visit(970000+uint64(i)*1000+uint64(k), shape(k), p)
			_, u := c.WorstNormal()
			by[c.Shape.Name()] = append(by[c.Shape.Name()], u*1000)
			all = append(all, u*1000)
			if k < 14 {
				r := solve(c)
				fmt.Printf("%.1f/%.1f ", *r.Shape.Worst*1000, u*1000)
			}
		}
		fmt.Println()
		q := func(a []float64) string {
			sort.Float64s(a)
			n := len(a)
			return fmt.Sprintf("%.1f %.1f %.1f %.1f %.1f", a[0], a[n/10], a[n/2], a[n*9/10], a[n-1])
		}
		fmt.Println(p.Called, q(all))
		for _, s := range simulate.Shapes {
			fmt.Println("   ", s.Name(), q(by[s.Name()]))
		}
	}
}
