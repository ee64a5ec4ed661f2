package rvalue_test

import (
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// TestFractionCharacters holds every fraction that has a character of its own.
func TestFractionCharacters(t *testing.T) {
	for text, want := range map[string]float64{
		"½": 1. / 2, "⅓": 1. / 3, "⅔": 2. / 3, "¼": 1. / 4, "¾": 3. / 4,
		"⅕": 1. / 5, "⅖": 2. / 5, "⅗": 3. / 5, "⅘": 4. / 5, "⅙": 1. / 6, "⅚": 5. / 6,
		"⅐": 1. / 7, "⅛": 1. / 8, "⅜": 3. / 8, "⅝": 5. / 8, "⅞": 7. / 8, "⅑": 1. / 9, "⅒": 1. / 10,
	} {
		for before, whole := range map[string]float64{"": 0, "3": 3, "3 ": 3, "3-": 3} {
			got, err := rvalue.ParseLength(before + text + " m")
			if err != nil || got.SI() != whole+want {
				t.Errorf("ParseLength(%s%s m) = %v, %v, want %v", before, text, got.SI(), err, whole+want)
			}
		}
	}
}

// TestEndlessDigits holds numbers beyond float64 in every part of a fraction.
func TestEndlessDigits(t *testing.T) {
	endless := strings.Repeat("9", 400)
	for _, text := range []string{endless, endless + "/2", "1/" + endless, "3 " + endless + "/2", "3 1/" + endless} {
		if got, err := rvalue.ParseLength(text + " in"); err == nil {
			t.Errorf("ParseLength(%.10s… in) = %v, want an error", text, got)
		}
	}
	// Many digits are no reason to refuse a small number.
	if got, err := rvalue.ParseLength("0." + endless + " m"); err != nil || got != 1 {
		t.Errorf("ParseLength(0.999… m) = %v, %v, want 1 m", got.SI(), err)
	}
}

// TestLongNumbers holds numbers with more digits than a float64 has.
func TestLongNumbers(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"123456789012345", 123456789012345},
		{"9007199254740993", 9007199254740992}, // 2⁵³+1 lies between two, and goes to the even one
		{"0.1000000000000000055511151231257827", 0.1},
		{"1,234,567", 1234567},
		{"1e-29", 1e-29},
		{"1/3", 1. / 3},
	} {
		got, err := rvalue.ParseLength(c.text + " m")
		if err != nil || got.SI() != c.want {
			t.Errorf("ParseLength(%s m) = %v, %v, want %v", c.text, got.SI(), err, c.want)
		}
	}
}
