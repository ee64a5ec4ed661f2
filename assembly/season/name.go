package season

import (
	"fmt"
	"strings"
)

// NameError says that there is no kind of a name, and what kinds there are.
type NameError struct {
	Name  string   // as it was asked for
	What  string   // "fuel", "unit of fuel", "heating plant"
	Known []string // names that would do
}

// Error returns such as `season: "peat" is no fuel (use gas, propane, …)`.
func (e *NameError) Error() string {
	return fmt.Sprintf("season: %q is no %s (use %s)", e.Name, e.What, strings.Join(e.Known, ", "))
}

// lookUp finds a name in a list whose first entry stands for "not given".
func lookUp(name, what string, names []string) (int, error) {
	asked := strings.Join(strings.Fields(strings.ToLower(name)), " ")
	for i, n := range names[1:] {
		if asked == strings.ToLower(n) {
			return i + 1, nil
		}
	}
	return 0, &NameError{Name: name, What: what, Known: names[1:]}
}

// nameOf returns the name of a kind, also of one that does not exist.
func nameOf(i int, what string, names []string) string {
	if i < len(names) {
		return names[i]
	}
	return fmt.Sprintf("%s %d", what, i)
}
