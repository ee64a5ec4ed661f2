package house_test

import (
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/house"
	solver "github.com/coldseam/coldseam/assembly/section"
)

// flanked is a floor that runs through a wall 48 in high on either side of it; its warm
// faces are twice as long as what lies between the airs.
const flanked = `air = { rooms = { temperature = "68 °F", film = "wall" }, outdoors = { temperature = "0 °F", film = "wind" } }
piece = [
  { name = "wall", conductivity = "0.04 W/(m·K)", x = ["0 in", "6 in"], y = ["-48 in", "56 in"] },
  { name = "floor", conductivity = "2 W/(m·K)", x = ["0 in", "54 in"], y = ["0 in", "8 in"] },
]
face = [
  { name = "street", air = "outdoors", x = "0 in", y = ["-48 in", "56 in"] },
  { name = "below", air = "rooms", x = "6 in", y = ["-48 in", "0 in"] },
  { name = "ceiling", air = "rooms", x = ["6 in", "54 in"], y = "0 in" },
  { name = "floor", air = "rooms", x = ["6 in", "54 in"], y = "8 in" },
  { name = "above", air = "rooms", x = "6 in", y = ["8 in", "56 in"] },
]
flank = [ { name = "lower", y = "-40 in", internal = "48 in", external = "52 in" }, { name = "upper", y = "50 in", internal = "48 in", external = "52 in" } ]
`

// TestFlankLengths: lengths that no dimensions explain are a mistake, such that some may
// explain a remark, and right ones neither.
func TestFlankLengths(t *testing.T) {
	upper := `{ name = "upper", y = "50 in", internal = "48 in", external = "52 in" }`
	for _, c := range []struct{ name, from, to, mistake, remark string }{
		{name: "right"},
		{"feet for inches", `"50 in", internal = "48 in"`, `"50 in", internal = "48 ft"`, `flank "upper": internal: the flanks are 52 ft (15.85 m) long by internal dimensions`, ""},
		{"doubled", upper, upper + ", " + strings.Replace(upper, "upper", "again", 1), `the flanks are 12 ft (3.658 m) long by internal`, ""},
		{"external, doubled", upper, upper + `, { y = "50 in", external = "52 in" }`, `the flanks are 13 ft (3.962 m) long by external`, ""},
		{"overall internal", upper, strings.Replace(upper, "48 in", "56 in", 1), "", "8 ft 8 in (2.642 m) long by internal dimensions, and what lies between the airs has 8 ft (2.438 m)"},
		{"one left out", ", " + upper, "", "", "the flanks are 4 ft (1.219 m) long by internal"},
		{"U of another", `y = "50 in"`, `u = "U-1"`, "", "would let"},
		{"called alike", `"upper"`, `"lower"`, `flank 2: name: flank 1 is called "lower" too`, ""},
		{"faces called alike", `"ceiling"`, `"floor"`, `face 4: name: face 3 is called "floor" too`, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := house.DecodeDrawing("f", []byte(strings.Replace(flanked, c.from, c.to, 1)))
			if c.mistake != "" {
				if err == nil || !strings.Contains(err.Error(), c.mistake) {
					t.Errorf("%v", err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			text := ""
			for _, m := range solved(t, d, solver.Options{Tolerance: 1e-2, Surface: 1}).Remarks {
				text += m.Text + "\n"
			}
			if !strings.Contains(text, c.remark) || c.remark == "" && text != "" {
				t.Errorf("remarks %q, want %q", text, c.remark)
			}
		})
	}
}

// TestPsiOfNothing: rounding is no bridge.
func TestPsiOfNothing(t *testing.T) {
	d := drawing(t, `air = { rooms = { temperature = "68 °F", film = "wall" }, outdoors = { temperature = "0 °F", film = "wind" } }
piece = [ { material = "brick", x = ["0 in", "40 in"], y = ["0 in", "8 in"] }, { material = "pine", x = ["0 in", "40 in"], y = ["8 in", "9 in"] } ]
face = [ { air = "rooms", x = ["0 in", "40 in"], y = "0 in" }, { air = "outdoors", x = ["0 in", "40 in"], y = "9 in" } ]
flank = [ { x = "20 in", internal = "40 in" } ]`)
	if internal, _ := d.Psi(solved(t, d, solver.Options{})); internal.Psi != 0 || internal.Low > 0 || internal.High < 0 {
		t.Errorf("psi %v between %v and %v", internal.Psi, internal.Low, internal.High)
	}
}

// inHouse is the flanked floor as a section of a house that a bridge goes by.
func inHouse(drawn string) string {
	drawn = strings.NewReplacer("air = {", "[section.floor]\nair = {").Replace(drawn)
	return `zone = "6A"
assembly.wall = { faces = "wall", layers = "brick 8 in" }
part = [ { name = "walls", assembly = "wall", area = "40 ft x 8 ft" } ]
bridge = [ { name = "edge", section = "floor", dimensions = "internal", length = "40 ft" } ]
` + drawn
}

// TestBridgesSayWhatSectionsDo: what is remarked on a section reaches the ranking that
// rests on it, and a section without a bound on its heat gives no psi.
func TestBridgesSayWhatSectionsDo(t *testing.T) {
	h, err := house.Decode("f", []byte(inHouse(strings.Replace(flanked, `y = "50 in", internal = "48 in"`, `y = "50 in", internal = "56 in"`, 1))))
	if err != nil {
		t.Fatal(err)
	}
	r, err := h.Rank()
	if err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, m := range r.Remarks {
		if m.Code == "flanks" && m.About == `section "floor"` {
			said++
		}
	}
	if said != 1 {
		t.Errorf("%d remarks on the flanks", said)
	}
	held := `air = { rooms = { temperature = "68 °F", film = "none" }, outdoors = { temperature = "0 °F", film = "none" } }
piece = [ { material = "brick", x = ["0 in", "40 in"], y = ["0 in", "8 in"] } ]
face = [ { air = "rooms", x = ["0 in", "40 in"], y = "0 in" }, { air = "outdoors", x = ["0 in", "40 in"], y = "8 in" }, { name = "end", air = "outdoors", x = "0 in", y = ["0 in", "8 in"] } ]
flank = [ { x = "30 in", internal = "40 in", external = "40 in" } ]
`
	if _, err := house.Decode("f", []byte(inHouse(held))); err == nil || !strings.Contains(err.Error(), `bridge "edge": section: section "floor" gives no psi: surfaces held at different temperatures touch`) {
		t.Errorf("%v", err)
	}
}
