package main

import (
	"context"
	"fmt"
	"math"
	"os"
	"strconv"

	"brimline/fieldbook"
	"brimline/internal/simulate"
	"brimline/survey"
)

func main() {
	n := 50
	if len(os.Args) > 1 {
		n, _ = strconv.Atoi(os.Args[1])
	}
	for _, m := range simulate.Methods {
		bad := 0
		for i := 0; i < n; i++ {
			c := simulate.Pool(uint64(1000+i), simulate.Shapes[i%len(simulate.Shapes)], m, simulate.Options{})
			b, err := fieldbook.Parse("x.yaml", c.Book)
			if err != nil {
				fmt.Println(m, i, err)
				continue
			}
			r, err := survey.Run(context.Background(), survey.Input{Book: &b}, nil)
			if err != nil {
				panic(err)
			}
			why := ""
			for name, t := range c.Truth {
				k := r.Marks[name]
				if k == nil || k.X == nil {
					why += " no " + name
					continue
				}
				d := math.Hypot(*k.X-t.X, *k.Y-t.Y)
				if d > math.Max(0.06, 4*k.Ellipse95.Major/2.4477) {
					why += fmt.Sprintf(" %s off %.3f (%.3f)", name, d, k.Ellipse95.Major/2.4477)
				}
			}
			if why != "" {
				bad++
				if len(why) > 300 {
					why = why[:300]
				}
				fmt.Println(m.Name(), "seed", 1000+i, c.Shape, "chi", r.Statistics.ChiSquare.Value, r.Statistics.Redundancy, r.Statistics.Iterations, why)
			}
		}
		fmt.Println(m.Name(), "bad", bad, "of", n)
	}
}
