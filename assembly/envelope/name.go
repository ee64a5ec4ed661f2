package envelope

import (
	"fmt"
	"strings"
)

// NameError says that a table has nothing of a name, and what it has.
type NameError struct {
	Name  string   // as it was asked for
	What  string   // what it was taken for, with its article: "no frame in the table"
	Known []string // names that would do
	Hint  string   // what else would do, or nothing
}

// Error returns such as `envelope: "brass" is no frame in the table (use wood,
// vinyl, …)`.
func (e *NameError) Error() string {
	s := fmt.Sprintf("envelope: %q is %s (use %s)", e.Name, e.What, strings.Join(e.Known, ", "))
	if e.Hint != "" {
		s += "; " + e.Hint
	}
	return s
}

// oneLine folds case and runs of blanks.
func oneLine(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
