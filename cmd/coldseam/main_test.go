package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// call runs the program in this process.
func call(t *testing.T, stdin string, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, err bytes.Buffer
	code = run(args, strings.NewReader(stdin), &out, &err)
	return out.String(), err.String(), code
}

// golden compares got with a file under testdata, or writes it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), got); d != "" {
		t.Errorf("%s, -want +got (go test ./cmd/coldseam -update writes it):\n%s", file, d)
	}
}

const wall = "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding"

func TestOutput(t *testing.T) {
	for _, c := range []struct {
		golden string
		args   []string
	}{
		{"rank-builtin.txt", []string{"rank"}},
		{"rank-flat.txt", []string{"rank", "../../examples/flat-1926.toml"}},
		{"rank-flat-sources.txt", []string{"rank", "--sources", "../../examples/flat-1926.toml"}},
		{"rank-ranch.txt", []string{"rank", "../../examples/ranch-1958.toml"}},
		{"rank-split-si.txt", []string{"rank", "../../examples/split-1978.toml", "--units", "si"}},
		{"layers.txt", []string{"layers", wall}},
		{"layers-si.txt", []string{"layers", "--units=si", "--films", "iso6946", "gypsum 13 mm + 48 x 198 mm @ 600 mm 12 % (mineral wool) + fiberboard 12 mm + air 25 mm vented"}},
		{"layers-sources.txt", []string{"layers", wall, "--sources"}},
		{"layers-steel.txt", []string{"layers", "gypsum 5/8 in + steel 3 1/2 in @ 16 in (fiberglass R-13) + gypsum 5/8 in + stucco 3/4 in"}},
		{"layers-cold.txt", []string{"layers", "gypsum 1/2 in + 2x6 @ 24 in (fiberglass R-21) + polyiso 2 in + vinyl siding", "--cold", "--outdoors", "0 °F"}},
		{"layers-masonry.txt", []string{"layers", "hard 3/4 in + concrete 6 in 25 % (air 6 in) + air 1 in slightly vented + brick 3 5/8 in", "--sources"}},
		{"glass.txt", []string{"glass", "glass 1/8 in"}},
		{"glass-roof-si.txt", []string{"glass", "laminated 7 mm + argon 16 mm + low-e 0.1 tempered glass 5 mm", "--units", "si", "--tilt", "30°", "--frame", "vinyl", "--fixed", "--size", "780 mm x 1180 mm", "--outdoors", "-10 °C"}},
		{"order-flat.txt", []string{"order", "../../examples/flat-1926.toml"}},
		{"order-ranch-si.txt", []string{"order", "../../examples/ranch-1958.toml", "--units", "si"}},
		{"order-split.txt", []string{"order", "../../examples/split-1978.toml", "--units", "ip"}},
		{"section-slab.txt", []string{"section", "../../examples/slab-edge.toml"}},
		{"section-everything.txt", []string{"section", "../../testdata/drawing/good/everything.toml"}},
		{"section-split.txt", []string{"section", "../../examples/split-1978.toml"}},
		{"section-house.txt", []string{"section", "../../testdata/house/good/sections.toml"}},
		{"section-ranch-si.txt", []string{"section", "../../examples/ranch-1958.toml", "--units", "si"}},
		{"materials-words.txt", []string{"materials", "mineral", "wool"}},
		{"zone.txt", []string{"zone", "6A"}},
		{"zone-sources.txt", []string{"zone", "6A", "--edition", "2021", "--sources"}},
		{"zone-county.txt", []string{"zone", "St. Louis County, MN", "--base", "60 °F"}},
		{"zone-altitude-si.txt", []string{"zone", "Denver, CO", "--units", "si", "--altitude", "1610 m"}},
		{"help.txt", []string{"help"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			out, stderr, code := call(t, "", c.args...)
			if code != 0 || stderr != "" {
				t.Fatalf("coldseam %q exits %d and says %q", c.args, code, stderr)
			}
			golden(t, c.golden, out)
		})
	}
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"an unknown command", []string{"rnak"}, 2, `no command "rnak"; did you mean rank?`},
		{"an unknown option", []string{"layers", wall, "--jsno"}, 2, "--jsno; did you mean --json?"},
		{"an option without its value", []string{"layers", wall, "--faces"}, 2, "wants a value"},
		{"a value that is none", []string{"layers", wall, "--faces", "sideways"}, 2, "wall, ceiling, floor"},
		{"no wind", []string{"layers", wall, "--wind", "0 mph"}, 2, "--beyond still"},
		{"units that are none", []string{"layers", wall, "--units", "furlong"}, 2, "ip or si"},
		{"layers of nothing", []string{"layers"}, 2, "in quotes"},
		{"an unknown material", []string{"layers", "gypsm 1/2 in"}, 1, "gypsum"},
		{"a temperature that is none", []string{"layers", wall, "--indoors", "warm"}, 2, "--indoors"},
		{"a file that is not there", []string{"rank", "no-such-house.toml"}, 1, "no-such-house.toml"},
		{"two files", []string{"rank", "a.toml", "b.toml"}, 2, "one"},
		{"a directory", []string{"rank", "."}, 1, "directory"},
		{"a zone that is none", []string{"zone", "9Z"}, 1, "9Z"},
		{"no zone", []string{"zone"}, 2, "6A"},
		{"a county that is none", []string{"zone", "Springfeld, MO"}, 1, "Springfield"},
		{"a zone in words", []string{"zone", "zone six"}, 1, "zones are 0A"},
		{"a town of no state", []string{"zone", "duluth"}, 1, `; write "Duluth, MN"`},
		{"a town of no state, misspelt", []string{"zone", "Milwauke"}, 1, "Milwaukee"},
		{"a county of no state, in small letters", []string{"zone", "st louis"}, 1, `"St. Louis County, MN"`},
		{"a state alone", []string{"zone", "Minnesota"}, 1, `write "COUNTY, MN"`},
		{"a county of no state", []string{"zone", "Franklin County"}, 1, "state"},
		{"a base that is none", []string{"zone", "Denver, CO", "--base", "60"}, 2, "--base"},
		{"a base for a zone", []string{"zone", "6A", "--base", "60 °F"}, 2, "no weather"},
		{"an altitude for a zone", []string{"zone", "6A", "--altitude", "600 ft"}, 2, "no weather"},
		{"an altitude below the Dead Sea", []string{"zone", "Inyo, CA", "--altitude", "-500 m"}, 2, "-430 to 9000 m (-1411 to 29528 ft)"},
		{"an altitude above Everest", []string{"zone", "Denver, CO", "--altitude", "30000 ft"}, 2, "9144 m"},
		{"glass of nothing", []string{"glass"}, 2, "in quotes"},
		{"a pane that is none", []string{"glass", "glas 3 mm"}, 1, "did you mean glass"},
		{"gas in no gap", []string{"glass", "glass 3 mm + argon 0 mm + glass 3 mm"}, 1, "argon 0 mm"},
		{"a fill over 100 %", []string{"glass", "glass 3 mm + argon 120 % 12 mm + glass 3 mm"}, 1, "100 %"},
		{"glass smaller than its frame", []string{"glass", "glass 3 mm", "--size", "3 in x 3 in"}, 1, "smaller than its frame"},
		{"a tilt over 180°", []string{"glass", "glass 3 mm", "--tilt", "200°"}, 2, "180°"},
		{"a frame that is none", []string{"glass", "glass 3 mm", "--frame", "brass"}, 2, "no frame"},
		{"a spacer that is none", []string{"glass", "glass 3 mm", "--spacer", "rope"}, 2, "no spacer"},
		{"a size that is none", []string{"glass", "glass 3 mm", "--size", "3"}, 2, "--size"},
		{"glass without wind", []string{"glass", "glass 3 mm", "--wind", "0 mph"}, 2, "--wind"},
		{"an order of no file", []string{"order", "no-such-house.toml"}, 1, "no-such-house.toml"},
		{"a section of nothing", []string{"section"}, 2, "one file"},
		{"a section of no file", []string{"section", "no-such-slab.toml"}, 1, "no-such-slab.toml"},
		{"a drawing with mistakes", []string{"section", "../../testdata/drawing/bad/meaning/gap.toml"}, 1, "gap.toml:8:3"},
		{"a picture where there is no room", []string{"section", "../../examples/slab-edge.toml", "--picture", "no/such/folder.svg"}, 1, "no/such/folder.svg"},
		{"a schema of nothing", []string{"schema", "house"}, 2, "write section"},
		{"a material nobody knows", []string{"materials", "unobtainium"}, 1, "unobtainium"},
		{"help on nothing", []string{"help", "bogus"}, 2, "bogus"},
		{"an edition that is none", []string{"zone", "6A", "--edition", "1999"}, 2, "2021"},
		{"an option where there is none", []string{"schema", "--json"}, 2, "no option --json"},
		{"too hot outdoors", []string{"layers", wall, "--outdoors", "200 F"}, 1, "200 °F (93.33 °C)"},
		{"what would command a terminal", []string{"layers", wall, "--beyond", "\x1b[31m"}, 2, `--beyond \u001b[31m`},
		{"the zone method on wood", []string{"layers", wall, "--method", "zone"}, 1, "steel"},
		{"completion for no shell", []string{"completion"}, 2, "bash"},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, stderr, code := call(t, "", c.args...)
			if code != c.code || out != "" || !strings.Contains(stderr, c.says) {
				t.Errorf("coldseam %q exits %d, prints %q and says %q; want exit %d, nothing, and something of %q", c.args, code, out, stderr, c.code, c.says)
			}
		})
	}
}

// TestLateOptions: an option counts the same before and after the argument.
func TestLateOptions(t *testing.T) {
	before, _, _ := call(t, "", "layers", "--units", "si", "--json", wall)
	after, _, _ := call(t, "", "layers", wall, "--units", "si", "--json")
	if before == "" || before != after {
		t.Errorf("options behind the argument count otherwise:\n%s", cmp.Diff(before, after))
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

// TestLostOutput: what could not be written is no success.
func TestLostOutput(t *testing.T) {
	var stderr bytes.Buffer
	if code := run([]string{"rank"}, strings.NewReader(""), failing{}, &stderr); code != 1 || !strings.Contains(stderr.String(), "disk is full") {
		t.Errorf("exit %d and %q with a full disk", code, stderr.String())
	}
}

func TestCompletionOffersWords(t *testing.T) {
	bin := build(t, ".") // the library looks at the arguments of the process
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"--generate-bash-completion"}, "rank"},
		{[]string{"layers", "--fi", "--generate-bash-completion"}, "--films"},
	} {
		out, err := exec.Command(bin, c.args...).Output()
		if err != nil || !strings.Contains(string(out), c.want) {
			t.Errorf("coldseam %q: %v, offers %q, want %q among the words", c.args, err, out, c.want)
		}
	}
}

func TestHouseFromStandardInput(t *testing.T) {
	data, err := os.ReadFile("../../examples/ranch-1958.toml")
	if err != nil {
		t.Fatal(err)
	}
	piped, stderr, code := call(t, string(data), "rank", "-")
	read, _, _ := call(t, "", "rank", "../../examples/ranch-1958.toml")
	if code != 0 || piped != read {
		t.Errorf("the house from standard input exits %d, says %q and ranks otherwise:\n%s", code, stderr, cmp.Diff(read, piped))
	}
}

func TestLayersJSON(t *testing.T) {
	out, stderr, code := call(t, "", "layers", wall, "--json")
	if code != 0 {
		t.Fatal(stderr)
	}
	type method struct{ R, U struct{ SI, IP float64 } }
	var got struct {
		Schema  int
		Methods struct {
			ParallelPath     method `json:"parallel_path"`
			IsothermalPlanes method `json:"isothermal_planes"`
			Combined         struct {
				R     struct{ SI, IP float64 }
				Error float64
			}
		}
		Effective struct {
			R      struct{ SI, IP float64 }
			Method string
		}
		Warnings []struct{ Code, Text, Place string }
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	if got.Schema != schemaVersion || got.Effective.Method != "parallel path" || len(got.Warnings) == 0 {
		t.Errorf("schema %d, method %q, %d warnings", got.Schema, got.Effective.Method, len(got.Warnings))
	}
	p, i := got.Methods.ParallelPath.R.IP, got.Methods.IsothermalPlanes.R.IP
	if !(p > i && got.Methods.Combined.R.IP > i && got.Methods.Combined.R.IP < p) {
		t.Errorf("parallel path R-%v, combined R-%v, isothermal planes R-%v are out of order", p, got.Methods.Combined.R.IP, i)
	}
}

func TestGlassJSON(t *testing.T) {
	out, stderr, code := call(t, "", "glass", "--json", "glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm", "--tilt", "45 deg")
	if code != 0 {
		t.Fatal(stderr)
	}
	var got struct {
		U       struct{ SI float64 }
		Upright struct{ SI float64 } `json:"u_upright"`
		EN673   struct{ SI float64 } `json:"u_center_en673"`
		Shares  map[string]float64
		Faces   []struct{ SI float64 }
		Steps   []struct {
			From int
			U    struct{ SI float64 }
			Gain struct{ SI float64 }
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	if !(got.U.SI > got.Upright.SI && got.EN673.SI > 1.2 && len(got.Faces) == 4) {
		t.Errorf("U %v at 45°, %v upright, glass %v by EN 673, %d faces", got.U, got.Upright, got.EN673, len(got.Faces))
	}
	sum := 0.0
	for _, s := range got.Shares {
		sum += s
	}
	if sum < 0.9999 || sum > 1.0001 {
		t.Errorf("shares sum to %v", sum)
	}
	for _, s := range got.Steps[1:] {
		if d := got.Steps[s.From].U.SI - s.U.SI - s.Gain.SI; d > 1e-4 || d < -1e-4 {
			t.Errorf("a step to %v gains %v over %v", s.U.SI, s.Gain.SI, got.Steps[s.From].U.SI)
		}
	}
}

func TestOrderJSON(t *testing.T) {
	out, stderr, code := call(t, "", "order", "--json")
	if code != 0 {
		t.Fatal(stderr)
	}
	var got struct {
		Openings []struct {
			Name   string
			Order  []struct{ Measured bool }
			Escape []struct{ Clause string } `json:"escape_failures"`
		}
		Warnings []struct{ Code string }
		Cautions []string
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	measured, failed := false, false
	for _, o := range got.Openings {
		for _, p := range o.Order {
			measured = measured || p.Measured
		}
		failed = failed || len(o.Escape) > 0
	}
	if len(got.Openings) != 5 || !measured || !failed || got.Warnings[0].Code != "built-in" || len(got.Cautions) == 0 {
		t.Errorf("%d openings, measured %v, a way out that fails %v, warnings %v", len(got.Openings), measured, failed, got.Warnings)
	}
}

func TestRankJSON(t *testing.T) {
	out, stderr, code := call(t, "", "rank", "--json")
	if code != 0 {
		t.Fatal(stderr)
	}
	var got struct {
		Schema int
		Parts  []struct {
			Name                   string
			Area, R, U, UA, Behind *struct{ SI, IP float64 }
			Share, Intensity       *float64
			Year                   struct {
				Heating struct{ Heat struct{ SI, IP float64 } }
				Cooling *struct{}
				Money   float64
			}
		}
		Total struct{ UA struct{ SI, IP float64 } }
		Link  struct{ Part string } `json:"weakest_link"`
		Order []struct {
			Make   string
			Saving struct{ Money float64 }
		}
		Season struct {
			Year struct {
				Heating struct{ Heat struct{ SI, IP float64 } }
				Money   float64
			}
		}
		Now struct{ Loss struct{ SI, IP float64 } } `json:"load_now"`

		Warnings []struct{ Code string }
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	sum, share, heat, money := 0.0, 0.0, 0.0, 0.0
	named := false
	for _, p := range got.Parts {
		sum += p.UA.SI
		share += *p.Share
		heat += p.Year.Heating.Heat.SI
		money += p.Year.Money
		named = named || p.Name == got.Link.Part
	}
	// Six digits are printed of each part.
	if d := sum/got.Total.UA.SI - 1; d > 1e-5 || d < -1e-5 || share < 0.9999 || share > 1.0001 {
		t.Errorf("parts sum to %v of %v W/K, shares to %v", sum, got.Total.UA.SI, share)
	}
	if d := heat/got.Season.Year.Heating.Heat.SI - 1; d > 1e-5 || d < -1e-5 {
		t.Errorf("the parts' heat sums to %v of %v kWh a year", heat, got.Season.Year.Heating.Heat.SI)
	}
	if d := money/got.Season.Year.Money - 1; !(d < 1e-5 && d > -1e-5) || got.Parts[0].Year.Cooling != nil {
		t.Errorf("the parts' money sums to %v of %v a year; cooling of a house without any: %v", money, got.Season.Year.Money, got.Parts[0].Year.Cooling)
	}
	if got.Warnings[0].Code != "built-in" {
		t.Errorf("the first warning is %v, want that no file was given", got.Warnings[0])
	}
	if got.Now.Loss.SI <= 0 || len(got.Order) == 0 || got.Order[0].Saving.Money <= 0 {
		t.Errorf("a year of no money, no design load or an order that saves nothing: %+v, %+v", got.Now, got.Order)
	}
	if !named {
		t.Errorf("the weakest link %q is no part", got.Link.Part)
	}
}

// build compiles a program and returns where it is.
func build(t testing.TB, what string) string {
	t.Helper()
	bin := filepath.Join(t.TempDir(), "program")
	if out, err := exec.Command("go", "build", "-o", bin, what).CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	return bin
}

func seconds(f func()) float64 {
	start := time.Now()
	f()
	return time.Since(start).Seconds()
}
