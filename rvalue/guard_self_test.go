package rvalue_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"slices"
	"strings"
	"testing"
)

// TestGuardFinds proves that the guard can fail: the marked lines of this
// source, and only those, must be found.
func TestGuardFinds(t *testing.T) {
	const source = `package bad

import q "github.com/coldseam/coldseam/rvalue"

type layer struct{ R q.Resistance }

const plain, typed = 13, 13 * q.RIP

var declared q.Resistance = 13 // bad
const named q.Length = 2 // bad

func take(q.Length, ...q.Area) {}

func constants(x float64) q.Length {
	var r q.Resistance
	r = plain // bad
	r = plain * q.RIP
	r = typed + 0
	r += 2 // bad
	r += 2 * q.RIP
	_ = r > 5 // bad
	_ = r > 5*q.RIP
	_ = r < 0
	_ = layer{R: 1.5} // bad
	_ = layer{3 * q.RSI}
	_ = []q.Resistance{1} // bad
	_ = map[string]q.Length{"stud": (3.5)} // bad
	_ = q.Resistance(13)
	_ = max(r, 2) // bad
	take(3) // bad
	take(3*q.Inch, 2) // bad
	take(0, 3*q.SquareFoot)
	switch r {
	case 4: // bad
	}
	if x > 1 {
		return -2.5 // bad
	}
	return q.Length(x) * q.Inch
}

func products(a, b q.Length, r q.Resistance, x float64) {
	_ = a * b // bad
	_ = a / b // bad
	_ = float64(a / b)
	_ = float64((a / b))
	_ = float64(a * b) // bad
	_ = a.SI() / b.SI()
	_ = a / 2
	_ = 2 * a
	_ = 1 / r // bad
	_ = 1 / float64(r)
	_ = q.Length(x) * q.Inch
	_ = r / q.RIP
	a *= b // bad
	a /= b // bad
	a *= 2
}
`
	g := newGuard(t)
	f, err := parser.ParseFile(g.fset, "bad.go", source, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	found, err := g.check("bad", []*ast.File{f})
	if err != nil {
		t.Fatal(err)
	}
	var got, want []string
	for _, s := range found {
		got = append(got, strings.Join(strings.SplitN(s, ":", 3)[:2], ":"))
	}
	for i, line := range strings.Split(source, "\n") {
		if strings.HasSuffix(line, "// bad") {
			want = append(want, fmt.Sprintf("bad.go:%d", i+1))
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("the guard finds\n%s\nwant\n%s", strings.Join(found, "\n"), strings.Join(want, "\n"))
	}
}
