// Command coldseam computes what building assemblies really resist, ranks the
// parts of a house by the heat they lose, and names its weakest link.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
