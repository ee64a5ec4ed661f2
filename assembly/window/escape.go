package window

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Escape is a bedroom's or basement's way out: the clear opening that is left when
// the window stands open, measured with its sash in place.
type Escape struct {
	Width, Height rvalue.Length
	Sill          rvalue.Length // of the clear opening above the floor
	Grade         bool          // at most 44 in above or below the ground outside
}

// Limits of section R310, seen on a window maker's page and others.
const (
	escapeArea   = 5.7 * rvalue.SquareFoot
	gradeArea    = 5.0 * rvalue.SquareFoot
	escapeHeight = 24 * rvalue.Inch
	escapeWidth  = 20 * rvalue.Inch
	escapeSill   = 44 * rvalue.Inch
)

// Check returns what of IRC R310 the opening fails, nothing if it is an emergency
// escape and rescue opening. It must also open from inside without a key or tool. A
// replacement window that is the largest its frame allows may have relief (from
// memory). The local code decides.
//
// The error names an edition that is not known, or a size that cannot be.
func (e Escape) Check(edition int) ([]Flag, error) {
	if err := checkEdition(edition); err != nil {
		return nil, err
	}
	if !(e.Width > 0 && e.Width <= maxSize && e.Height > 0 && e.Height <= maxSize && e.Sill >= 0 && e.Sill <= maxSize) {
		return nil, refuse("a clear opening of %s x %s with its sill at %s; give sizes above 0 and a sill of 0 or more", said(e.Width), said(e.Height), said(e.Sill))
	}
	area, kind := escapeArea, ""
	if e.Grade {
		area, kind = gradeArea, " at grade"
	}
	c := clauses(edition)
	f := flags{edition: edition}
	add := func(clause, need, format string, args ...any) {
		f.add(clause, seen, format, args...)
		f.out[len(f.out)-1].Need = need
	}
	if got := e.Width.Times(e.Height); less(got, area) {
		add(c.area, e.larger(area), "%s ft² clear is less than the %.1f ft² of an opening%s", short(got, area), area.IP(), kind)
	}
	if less(e.Height, escapeHeight) {
		add(c.height, "at least 24 in high", "%s high is less than 24 in", e.Height.In(rvalue.IP))
	}
	if less(e.Width, escapeWidth) {
		add(c.width, "at least 20 in wide", "%s wide is less than 20 in", e.Width.In(rvalue.IP))
	}
	if more(e.Sill, escapeSill) {
		add(c.sill, "a sill at most 44 in above the floor", "its sill at %s is more than 44 in above the floor", e.Sill.In(rvalue.IP))
	}
	return f.out, nil
}

// larger says how an opening gets its area: by what one side is at the other, where
// that other one is enough by itself.
func (e Escape) larger(area rvalue.Area) string {
	var ways []string
	if !less(e.Width, escapeWidth) {
		ways = append(ways, onTape(max(rvalue.Length(area.SI()/e.Width.SI()), escapeHeight))+" high at this width")
	}
	if !less(e.Height, escapeHeight) {
		ways = append(ways, onTape(max(rvalue.Length(area.SI()/e.Height.SI()), escapeWidth))+" wide at this height")
	}
	if len(ways) == 0 {
		ways = []string{
			onTape(rvalue.Length(area.SI()/escapeWidth.SI())) + " high at the least width of 20 in",
			onTape(rvalue.Length(area.SI()/escapeHeight.SI())) + " wide at the least height of 24 in",
		}
	}
	return fmt.Sprintf("at least %.1f ft² clear: %s", area.IP(), strings.Join(ways, ", or "))
}

// onTape writes a length up to the next eighth of an inch.
func onTape(l rvalue.Length) string {
	const eighth = rvalue.Inch / 8
	n := math.Ceil(l.SI() / eighth.SI() * (1 - exactly))
	return (rvalue.Length(n) * eighth).In(rvalue.IP)
}

// short writes an area in ft² with as many digits as show that it is less than the
// limit.
func short(a, limit rvalue.Area) string {
	const most = 9
	for digits := 2; ; digits++ {
		p := math.Pow10(digits)
		if s := math.Round(a.IP() * p); s < limit.IP()*p*(1-exactly) || digits == most {
			return strconv.FormatFloat(s/p, 'f', digits, 64)
		}
	}
}

// escapeClauses are where an edition has each limit.
type escapeClauses struct{ area, height, width, sill string }

// clauses returns the numbers of an edition, from memory: the limits are the same
// in all of them.
func clauses(edition int) escapeClauses {
	switch {
	case edition < 2015:
		return escapeClauses{"R310.1.1", "R310.1.2", "R310.1.3", "R310.1"}
	case edition < 2021:
		return escapeClauses{"R310.2.1", "R310.2.1", "R310.2.1", "R310.2.2"}
	}
	return escapeClauses{"R310.2.1", "R310.2.2", "R310.2.2", "R310.2.3"}
}
