// Command screen evaluates a list of walls at once, each in a goroutine of its
// own, and prints them from the best to the worst.
package main

import (
	"cmp"
	"fmt"
	"log"
	"slices"
	"sync"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

var walls = []string{
	"gypsum 1/2 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + wood bevel siding",
	"gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + board sheathing 3/4 in + wood bevel siding",
	"gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-19) + board sheathing 3/4 in + wood bevel siding",
	"gypsum 1/2 in + 2x4 @ 16 in (cellulose) + xps 2 in + wood bevel siding",
	"gypsum 1/2 in + 2x6 @ 24 in (mineral wool R-23) + osb 7/16 in + wood bevel siding",
}

func main() {
	results := make([]*assembly.Result, len(walls))
	var wait sync.WaitGroup
	for i, text := range walls {
		wait.Go(func() {
			spec, err := assembly.Parse(text)
			if err != nil {
				log.Fatal(err)
			}
			if results[i], err = spec.Evaluate(assembly.Setting{}); err != nil {
				log.Fatal(err)
			}
		})
	}
	wait.Wait()
	order := make([]int, len(walls))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(results[b].Effective.R, results[a].Effective.R) })
	for _, i := range order {
		fmt.Printf("%-7s %s\n", results[i].Effective.R.In(rvalue.IP), walls[i])
	}
}
