package target

import "fmt"

// Mark says how a value was got. The zero Mark belongs to an absent value.
type Mark uint8

// Marks, from the firmest to the weakest.
const (
	Seen          Mark = iota + 1 // on a page that the Source text names
	FromMemory                    // no page found; check against the edition before relying on it
	Derived                       // our reading or computation, not the source's own figure
	LowConfidence                 // from memory, and pages found disagree or prove little
)

// String returns the words that the output prints for m.
func (m Mark) String() string {
	switch m {
	case 0:
		return ""
	case Seen:
		return "seen"
	case FromMemory:
		return "from memory"
	case Derived:
		return "our reading"
	case LowConfidence:
		return "from memory, low confidence"
	}
	return fmt.Sprintf("Mark(%d)", uint8(m))
}

// at prints m, and for what was seen the page.
func (m Mark) at(page string) string {
	if m == Seen {
		return "seen on " + page
	}
	return m.String()
}

// markOf reads one letter of a table line: s seen, m from memory, l low confidence.
func markOf(letter byte) Mark {
	switch letter {
	case 's':
		return Seen
	case 'm':
		return FromMemory
	case 'l':
		return LowConfidence
	}
	return 0
}

// Note is a footnote or remark on a requirement or an advice.
type Note struct {
	Code    string // stable short name, such as "heated-slab"
	Text    string // one sentence for people
	Applied bool   // whether it has changed a value of this requirement
	Source  string // where the rule stands
	Mark    Mark   // how the rule was seen
}

// Eases reports whether the note is an exception that facts not claimed would open.
func (n Note) Eases() bool {
	switch n.Code {
	case "raised-heel", "no-attic", "fills-cavity", "sheathing-40", "mass-interior", "high-or-windborne", "impact-rated", "exempt-door", "exempt-glazing":
		return !n.Applied
	}
	return false
}
