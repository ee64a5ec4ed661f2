package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
)

// TestHeldSurfaces: two temperatures held on surfaces that touch, as in case 1 of ISO
// 10211, have no heat flow with a bound; that is said in words, and no face sweats.
func TestHeldSurfaces(t *testing.T) {
	const held = `air = { warm = { temperature = "20 °C", film = "none" }, cold = { temperature = "0 °C", film = "none" } }
piece = [ { conductivity = "1 W/(m·K)", x = ["0 m", "1 m"], y = ["0 m", "2 m"] } ]
face = [ { air = "warm", x = ["0 m", "1 m"], y = "2 m" }, { air = "cold", x = "0 m", y = ["0 m", "2 m"] }, { air = "cold", x = ["0 m", "1 m"], y = "0 m" } ]
`
	out, stderr, code := call(t, held, "section", "-", "--units", "si")
	if code != 0 || strings.Contains(out, "NaN") || strings.Contains(out, "Inf") || strings.Contains(out, "sweats  ") {
		t.Errorf("exit %d, %s\n%s", code, stderr, out)
	}
	for _, want := range []string{"no bound", "surfaces held at different temperatures touch", "held at, and does not say when it sweats"} {
		if !strings.Contains(strings.Join(strings.Fields(out), " "), want) {
			t.Errorf("says nothing of %q:\n%s", want, out)
		}
	}
	out, _, _ = call(t, held, "section", "-", "--json")
	var got struct {
		Coldest  any
		Warnings []struct{ Code string }
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil || got.Coldest != nil || len(got.Warnings) == 0 || got.Warnings[0].Code != "jump" {
		t.Errorf("%v, %+v", err, got)
	}
}

// TestTooManyEdges: of a drawing with too many edges the message says what would do, and
// nothing that was not drawn.
func TestTooManyEdges(t *testing.T) {
	var b strings.Builder
	b.WriteString(`air = { warm = { temperature = "20 °C", film = "wall" }, cold = { temperature = "0 °C", film = "wind" } }
face = [ { air = "warm", x = ["0 m", "4 m"], y = "0 m" }, { air = "cold", x = ["0 m", "4 m"], y = "4 m" } ]
[[piece]]
material = "brick"
x = ["0 m", "4 m"]
y = ["0 m", "4 m"]
`)
	for i := range 190 {
		at := float64(20*i) + 10
		fmt.Fprintf(&b, "[[piece]]\nmaterial = \"pine\"\nx = [\"%.0f mm\", \"%.0f mm\"]\ny = [\"%.0f mm\", \"%.0f mm\"]\n", at, at+7, at, at+7)
	}
	_, stderr, code := call(t, b.String(), "section", "-")
	if code != 1 || strings.Contains(stderr, "allow more") || !strings.Contains(stderr, "the edges of pieces and faces, ") {
		t.Errorf("exit %d: %s", code, stderr)
	}
}

// TestSectionWithoutAFile: what is said of no file and of an empty one goes with section.
func TestSectionWithoutAFile(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"section", "none.toml"}, "coldseam schema section"},
		{[]string{"order", "none.toml"}, "coldseam order without a file"},
		{[]string{"rank", "none.toml"}, "coldseam rank without a file"},
		{[]string{"order", "a.toml", "b.toml"}, "order wants one house file, not 2"},
		{[]string{"section", "-"}, "a drawing needs air, pieces and faces"},
	} {
		if _, stderr, code := call(t, "# nothing yet\n", c.args...); code == 0 || !strings.Contains(stderr, c.want) {
			t.Errorf("%v: exit %d, %q", c.args, code, stderr)
		}
	}
}

// TestSectionFitsTheScreen: long names do not widen the output.
func TestSectionFitsTheScreen(t *testing.T) {
	long := strings.Repeat("a long name ", 20)
	var airs, faces string
	for i := range 8 {
		airs += fmt.Sprintf("\"outdoors of a long name %d\" = { temperature = \"%d °F\", film = \"wind\" }, ", i, i)
		faces += fmt.Sprintf("{ name = \"%s%d\", air = \"outdoors of a long name %d\", x = [\"%d in\", \"%d in\"], y = \"8 in\" },", long, i, i, 5*i, 5*i+5)
	}
	out, stderr, code := call(t, fmt.Sprintf(`name = "%s"
air = { %s indoors = { temperature = "68 °F", film = "wall" } }
piece = [ { material = "brick", x = ["0 in", "40 in"], y = ["0 in", "8 in"] } ]
face = [ { name = "%s", air = "indoors", x = ["0 in", "40 in"], y = "0 in" }, %s ]
point = [ { name = "%s", x = "1 in", y = "1 in" } ]
`, long, airs, long, strings.TrimSuffix(faces, ","), long), "section", "-")
	if code != 0 {
		t.Fatal(stderr)
	}
	for line := range strings.Lines(out) {
		if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > textWidth {
			t.Errorf("%d characters: %s", n, line)
		}
	}
}

// TestRowsApart: two long names that start alike are told apart where they are cut.
func TestRowsApart(t *testing.T) {
	const file = `zone = "6A"
assembly.wall = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (empty) + vinyl siding" }
part = [ { name = "walls", assembly = "wall", area = "120 ft x 8 ft" } ]
bridge = [
  { name = "rim joist with 2 in foam, 2x4", psi = "0.1 W/(m·K)", length = "10 ft" },
  { name = "rim joist with 2 in foam, 2x6", psi = "0.1 W/(m·K)", length = "10 ft" },
]
`
	out, stderr, code := call(t, file, "rank", "-")
	table, _, _ := strings.Cut(out, "the whole")
	if code != 0 || !strings.Contains(table, "m, 2x4 ") || !strings.Contains(table, "m, 2x6 ") {
		t.Errorf("%s\n%s", stderr, table)
	}
}

// TestSectionOfOurs: a section of the catalogue is solved by its name, with the psi that a
// house takes from it, where it is coldest, and a picture; a file goes before a name.
func TestSectionOfOurs(t *testing.T) {
	file := filepath.Join(t.TempDir(), "rim.svg")
	out, stderr, code := call(t, "", "section", "Rim  joist, 2x6", "--json", "--picture", file)
	if code != 0 {
		t.Fatal(stderr)
	}
	detail, _ := section.FindDetail("rim joist, 2x6")
	r, err := detail.Section.Solve(section.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Psi     struct{ SI float64 } `json:"psi_internal"`
		Coldest struct {
			Factor float64 `json:"temperature_factor"`
		}
		Warnings []struct{ Text string }
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	if math.Abs(got.Psi.SI-float64(r.Psi(detail.Flanks...))) > 1e-5 || math.Abs(got.Coldest.Factor-r.Flows[r.Coldest].Factor) > 1e-5 || len(got.Warnings) < 3 {
		t.Errorf("%+v, want psi %v", got, r.Psi(detail.Flanks...))
	}
	if svg, err := os.ReadFile(file); err != nil || !strings.Contains(string(svg), "isotherm") {
		t.Errorf("no picture: %v", err)
	}
	out, _, code = call(t, "", "section", "eave, 2x4")
	if text := strings.Join(strings.Fields(out), " "); code != 0 || !strings.Contains(text, "fRsi 0.") || !strings.Contains(text, "the temperatures of the air are assumed") {
		t.Errorf("exit %d: %s", code, out)
	}
	if _, stderr, code := call(t, "", "section", "rim joists"); code != 1 || !strings.Contains(stderr, "rim joist, 2x4; ") {
		t.Errorf("a name of none: exit %d, %q", code, stderr)
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("eave, 2x4", nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, stderr, code := call(t, "", "section", "eave, 2x4"); code != 1 || !strings.Contains(stderr, "nothing is in this file") {
		t.Errorf("a file of that name: exit %d, %q", code, stderr)
	}
}
