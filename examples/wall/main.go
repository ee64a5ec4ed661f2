// Command wall sums one wall with the library.
package main

import (
	"fmt"
	"log"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func main() {
	spec, err := assembly.Parse("plaster 3/4 in + 2x4 @ 16 in (fiberglass R-13) + board sheathing 3/4 in + wood bevel siding")
	if err != nil {
		log.Fatal(err)
	}
	wall, err := spec.Evaluate(assembly.Setting{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("labelled R-13, effective", wall.Effective.R.In(rvalue.IP))
}
