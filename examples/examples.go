// Package examples holds invented houses to run and to copy from; the
// programs beside it import the library.
package examples

import _ "embed"

// House is the file that coldseam rank takes when it is given none.
//
//go:embed flat-1926.toml
var House []byte

// HouseName is the name of that file.
const HouseName = "flat-1926.toml"
