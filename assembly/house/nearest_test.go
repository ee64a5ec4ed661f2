package house

import "testing"

func TestNearest(t *testing.T) {
	words := []string{"area", "assembly", "openings", "toward", "u", "name"}
	for _, tt := range []struct{ name, written, want string }{
		{"a letter too many", "areaa", "area"},
		{"two letters swapped", "aera", "area"},
		{"another case", "Assembly", "assembly"},
		{"singular", "opening", "openings"},
		{"nothing like it", "colour", ""},
		{"one letter is not guessed from another", "x", ""},
		{"a whole sentence", "the wall toward the street, which has no insulation whatever in it", ""},
	} {
		if got := nearest(tt.written, words); got != tt.want {
			t.Errorf("%s: nearest(%q) = %q, want %q", tt.name, tt.written, got, tt.want)
		}
	}
}
