package rvalue_test

import (
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// The layer notation parses one length or resistance a layer, and eight layers
// should take no more than 5 µs together.

func BenchmarkParseLength(b *testing.B) {
	for _, s := range []string{"90 mm", "3 1/2 in", `5'-4 1/2"`, "8 ft 6 in"} {
		b.Run(s, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := rvalue.ParseLength(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkParseResistance(b *testing.B) {
	for _, s := range []string{"R-13", "RSI 2.3", "2.3 m²·K/W", "13 h·ft²·°F/Btu"} {
		b.Run(s, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := rvalue.ParseResistance(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLengthIn(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if (64.5 * rvalue.Inch).In(rvalue.IP) == "" {
			b.Fatal("nothing printed")
		}
	}
}
