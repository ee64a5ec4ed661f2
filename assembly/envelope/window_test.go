package envelope_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
)

// TestWholeWindows rebuilds the remembered cells of the whole-window table from
// centre, edge and frame. Where the print differs, the file says what ours is.
func TestWholeWindows(t *testing.T) {
	differ := 0
	for _, row := range readCSV(t, "windows_whole.csv") {
		u, _, err := envelope.DefaultWindow(row["glass"], row["frame"], row["operable"] == "yes")
		want := row["u"]
		if row["ours"] != "" {
			want = row["ours"]
			differ++
			near(t, "our U against the print's", num(t, want), num(t, row["u"]), 0.01+rounding)
		}
		near(t, fmt.Sprintf("U of %s in %s, operable %s", row["glass"], row["frame"], row["operable"]), must(u, err)(t).IP(), num(t, want), rounding)
	}
	if differ != 2 {
		t.Errorf("%d cells differ, the comment on the table says two", differ)
	}
}

func TestSkylights(t *testing.T) {
	for _, row := range readCSV(t, "windows_skylight.csv") {
		u, source, err := envelope.DefaultSkylight(row["glass"], row["frame"])
		near(t, "U of a skylight, "+row["glass"]+" in "+row["frame"], must(u, err)(t).IP(), num(t, row["u"]), rounding)
		if source != envelope.SkylightSource {
			t.Errorf("source is %q", source)
		}
	}
	u, source, err := envelope.DefaultSkylight("double", "fiberglass")
	near(t, "U of a skylight in fiberglass", must(u, err)(t).IP(), 0.67, rounding)
	if !strings.Contains(source, "stands for fiberglass") {
		t.Errorf("source %q does not say that fiberglass is not in the table", source)
	}
	if _, _, err := envelope.DefaultSkylight("single with storm", "wood"); err == nil || strings.Contains(err.Error(), "with storm,") {
		t.Errorf("a skylight with a storm window gives %v", err)
	}
}

func TestOtherWindowsAndDoors(t *testing.T) {
	const lastDigit = 0.005
	for _, row := range readCSV(t, "windows_other.csv") {
		u, source, err := envelope.DefaultDoor(row["given"])
		if row["what"] == "window" {
			u, source, err = envelope.DefaultWindow(row["given"], "wood", true)
		}
		near(t, "U of "+row["what"]+" "+row["given"], must(u, err)(t).IP(), num(t, row["u"]), lastDigit)
		if !strings.Contains(source, "memory") {
			t.Errorf("source %q does not say that it is from memory", source)
		}
	}
	for _, of := range []string{"glass", "steel", ""} {
		var name *envelope.NameError
		if _, _, err := envelope.DefaultDoor(of); !errors.As(err, &name) || name.Name != of || len(name.Known) != 3 {
			t.Errorf("a door of %q gives %v", of, err)
		}
	}
}

// TestForgivingNames: other words for the same window are the same window.
func TestForgivingNames(t *testing.T) {
	for _, c := range []struct{ glass, frame, asGlass, asFrame string }{
		{"Single pane", "Wooden", "single", "wood"},
		{"storm over single", "timber", "single with storm", "wood"},
		{"double-glazed, low-e, argon-filled", "PVC", "double low-e argon", "vinyl"},
		{"argon double lowe", "vinyl frame", "double low-e argon", "wood"},
		{"dual pane 3/4 in", "Aluminium", "double", "aluminum"},
		{`double 1/4" air`, "metal, no thermal break", "double 1/4 in", "aluminum"},
		{"double 6 mm", "thermally broken aluminium", "1/4 in double", "aluminum with thermal break"},
		{"triple", "aluminum-clad wood", "triple glass", "clad wood"},
		{"triple", "reinforced vinyl", "triple glass", "clad wood"},
		{"triple low e", "insulated fibreglass", "triple low-e", "fiberglass"},
		{"triple low e", "insulated vinyl", "triple low-e", "fiberglass"},
	} {
		got, _, err := envelope.DefaultWindow(c.glass, c.frame, false)
		want, _, err2 := envelope.DefaultWindow(c.asGlass, c.asFrame, false)
		if err != nil || err2 != nil || got != want {
			t.Errorf("DefaultWindow(%q, %q) = %v, %v; want %v, %v as of %q in %q", c.glass, c.frame, got, err, want, err2, c.asGlass, c.asFrame)
		}
	}
	for _, steel := range []string{"insulated steel", "steel, insulated", "Insulated metal door"} {
		if u, _, err := envelope.DefaultDoor(steel); err != nil || u.IP() > 0.61 {
			t.Errorf("a door of %q: %v, %v", steel, u, err)
		}
	}
}

func TestUnknownWindows(t *testing.T) {
	for _, c := range []struct{ glass, frame, what, known string }{
		{"quintuple", "wood", "glazing", "double low-e argon"},
		{"", "wood", "glazing", "single"},
		{"single low-e", "wood", "glazing", "double low-e"},
		{"single 1/4 in", "wood", "glazing", "single"}, // of a pane's own thickness: not a gap
		{"double", "brass", "frame", "aluminum with thermal break"},
		{"double", "wood and aluminum", "frame", "clad wood"},
		{"double", "", "frame", "vinyl"},
	} {
		_, _, err := envelope.DefaultWindow(c.glass, c.frame, true)
		if err == nil || !strings.Contains(err.Error(), "is no "+c.what+" in the table") || !strings.Contains(err.Error(), c.known) {
			t.Errorf("DefaultWindow(%q, %q) gives %v, want an error on the %s that offers %s", c.glass, c.frame, err, c.what, c.known)
		}
	}
}

// TestBetterGlassIsBetter: within a frame each step of glass loses less.
func TestBetterGlassIsBetter(t *testing.T) {
	steps := []string{"single", "double 1/4 in", "double", "double argon", "double low-e", "double low-e argon", "triple low-e", "triple low-e argon"}
	for _, frame := range []string{"aluminum", "aluminum with thermal break", "clad wood", "wood", "fiberglass"} {
		for _, operable := range []bool{false, true} {
			before := 9.0
			for _, glass := range steps {
				u, _, err := envelope.DefaultWindow(glass, frame, operable)
				if err != nil || u.IP() >= before {
					t.Errorf("%s in %s: U %v after %v, %v", glass, frame, u.IP(), before, err)
				}
				before = u.IP()
			}
		}
	}
}

func FuzzWindowNames(f *testing.F) {
	f.Add("double-glazed, low-e", "aluminum with thermal break")
	f.Add(`double 1/4"`, "without")
	f.Add("single with storm", "reinforced vinyl")
	f.Add("\xff-", "no no break")
	f.Fuzz(func(t *testing.T, glass, frame string) {
		for _, operable := range []bool{false, true} {
			u, source, err := envelope.DefaultWindow(glass, frame, operable)
			if (err == nil) != (u.IP() > 0.1 && u.IP() < 1.4 && source != "") {
				t.Errorf("DefaultWindow(%q, %q) = %v, %q, %v", glass, frame, u, source, err)
			}
		}
		if u, _, err := envelope.DefaultSkylight(glass, frame); (err == nil) != (u > 0) {
			t.Errorf("DefaultSkylight(%q, %q) = %v, %v", glass, frame, u, err)
		}
		if u, _, err := envelope.DefaultDoor(glass); (err == nil) != (u > 0) {
			t.Errorf("DefaultDoor(%q) = %v, %v", glass, u, err)
		}
		_, _ = envelope.Described(glass)
		_, _ = envelope.ParseShelter(glass)
	})
}

func ExampleDefaultWindow() {
	for _, glass := range []string{"single", "single with storm", "double low-e argon"} {
		u, _, err := envelope.DefaultWindow(glass, "wood", true)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-18s U-%.2f\n", glass, u.IP())
	}
	// Output:
	// single             U-0.89
	// single with storm  U-0.50
	// double low-e argon U-0.38
}
