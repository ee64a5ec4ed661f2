package assembly_test

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite testdata/SCORE.md from the published cases")

const (
	testdata  = "../testdata/"
	scoreFile = testdata + "SCORE.md"
)

// The marks of a published value.
const (
	seen   = "seen"           // read on a page of the source
	memory = "from memory"    // not seen, remembered
	own    = "our arithmetic" // computed by us outside this code, printed nowhere
	copied = "looked up"      // a cell of a table that the code holds too: guards the copy, proves no method
)

// bandFiles hold lists whose values can only be bracketed; their own tests in
// published_band_test.go read them.
var bandFiles = []string{"assemblies_sloped.csv", "assemblies_deemedsteel.csv"}

// published is one source: a file of testdata.
type published struct {
	file, key, title string
	values           []value
}

// value is one row of a source: a printed number and how to compute it.
type value struct {
	line           int // in the file
	source         string
	name           string // of the case
	mark           string
	how, given     string
	quantity, unit string
	printed        string // digits as printed; half the last one is the tolerance
	ours           string // set where we differ from the print: our digits
	printedFrom    string // with ours: arithmetic on the source's own figures that gives the print, if found
	remark         string // with ours: why we differ
}

// differs reports whether the row is kept as one that we do not reproduce.
func (v value) differs() bool { return v.ours != "" }

// halfDigit is half a unit of the last digit of a printed number, widened by
// what binary fractions cannot hold (0.0005 is printed, not 0.0005 + 1 ulp).
func halfDigit(t *testing.T, printed string) (number, half float64) {
	t.Helper()
	number, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		t.Fatalf("%q is no printed number", printed)
	}
	decimals := 0
	if i := strings.IndexByte(printed, '.'); i >= 0 {
		decimals = len(printed) - i - 1
	}
	return number, 0.5*math.Pow10(-decimals) + 1e-9*math.Abs(number)
}

// check computes the value and compares it with the print. A row kept as
// differing must give our digits, must really miss the print, and what is said
// to give the print must do so.
func (v value) check(t *testing.T, file string) {
	t.Helper()
	where := fmt.Sprintf("%s:%d: %s: %s", file, v.line, v.name, v.quantity)
	got, err := evaluate(v)
	if err != nil {
		t.Errorf("%s: %v", where, err)
		return
	}
	printed, half := halfDigit(t, v.printed)
	agrees := math.Abs(got-printed) <= half
	if !v.differs() {
		if !agrees {
			t.Errorf("%s = %.6g %s, printed %s (%s)", where, got, v.unit, v.printed, v.source)
		}
		return
	}
	if agrees {
		t.Errorf("%s = %.6g %s agrees with the printed %s, yet the row is kept as differing: %s", where, got, v.unit, v.printed, v.remark)
	}
	if ours, half := halfDigit(t, v.ours); math.Abs(got-ours) > half {
		t.Errorf("%s = %.6g %s, want our %s (printed %s: %s)", where, got, v.unit, v.ours, v.printed, v.remark)
	}
	if v.printedFrom == "" {
		return
	}
	if from, err := number(v.printedFrom); err != nil || math.Abs(from-printed) > half {
		t.Errorf("%s: %s = %.6g, %v, said to give the printed %s", where, v.printedFrom, from, err, v.printed)
	}
}

var columns = []string{"case", "mark", "how", "given", "quantity", "unit", "printed", "ours", "printed_from", "remark"}

// loadPublished reads every source. An empty case continues the one above.
func loadPublished(t *testing.T) []published {
	t.Helper()
	files, err := filepath.Glob(testdata + "assemblies_*.csv")
	if err != nil || len(files) == 0 {
		t.Fatalf("no published cases in %s: %v", testdata, err)
	}
	var all []published
	for _, path := range files {
		file := filepath.Base(path)
		if slices.Contains(bandFiles, file) {
			continue
		}
		p := published{file: file}
		var rows []csvRow
		p.key, p.title, rows = readSource(t, path, columns)
		var last value
		for _, row := range rows {
			f := row.fields
			v := value{
				line: row.line, source: p.key, name: f[0], mark: f[1], how: f[2], given: f[3],
				quantity: f[4], unit: f[5], printed: f[6], ours: f[7], printedFrom: f[8], remark: f[9],
			}
			if v.name == "" {
				v.name, v.how, v.given = last.name, last.how, last.given
			}
			last = v
			switch {
			case !slices.Contains([]string{seen, memory, own, copied}, v.mark):
				t.Fatalf("%s:%d: mark %q", file, v.line, v.mark)
			case v.differs() && (v.remark == "" || v.mark == own || v.mark == copied):
				t.Fatalf("%s:%d: a difference needs a reason, and a print", file, v.line)
			}
			p.values = append(p.values, v)
		}
		all = append(all, p)
	}
	return all
}

type csvRow struct {
	line   int
	fields []string
}

// readSource reads one file: key and title from its first line, and the rows
// below the column heads.
func readSource(t *testing.T, path string, heads []string) (key, title string, rows []csvRow) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	first, _, _ := bufio.NewReader(bytes.NewReader(data)).ReadLine()
	key, title, ok := strings.Cut(strings.TrimPrefix(string(first), "# "), "] ")
	if !ok || !strings.HasPrefix(key, "[") {
		t.Fatalf("%s: no bracket key in the first line", path)
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comment = '#'
	if got, err := r.Read(); err != nil || !slices.Equal(got, heads) {
		t.Fatalf("%s: heads %v, %v, want %v", path, got, err, heads)
	}
	for {
		fields, err := r.Read()
		if err == io.EOF {
			return key + "]", title, rows
		}
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		line, _ := r.FieldPos(0)
		rows = append(rows, csvRow{line, fields})
	}
}

// TestPublished computes every published value and prints the score.
func TestPublished(t *testing.T) {
	sources := loadPublished(t)
	for _, p := range sources {
		t.Run(strings.TrimSuffix(p.file, ".csv"), func(t *testing.T) {
			for _, v := range p.values {
				v.check(t, p.file)
			}
			t.Log(p.score())
		})
	}
	if t.Failed() {
		return // a score is not written for values that fail
	}
	t.Log(total(sources))
	want := scoreTable(sources)
	if *update {
		if err := os.WriteFile(scoreFile, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(scoreFile)
	if err != nil || string(got) != want {
		t.Errorf("%s is out of date (%v); regenerate with go test ./assembly -run Published -update", scoreFile, err)
	}
}

// Every bracket key in the data must be explained.
func TestPublishedKeys(t *testing.T) {
	references, err := os.ReadFile(testdata + "REFERENCES.md")
	if err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob(testdata + "assemblies_*.csv")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		key, _, _ := strings.Cut(strings.TrimPrefix(string(data), "# "), "]")
		if !strings.Contains(string(references), "\n- "+key+"] ") {
			t.Errorf("%s: %s] is not in REFERENCES.md", file, key)
		}
	}
}

// A page counts R-19 squeezed into 5 1/2 in as 18; its U must tell the two
// apart, or the row that agrees would prove nothing.
func TestPublishedCompressionShows(t *testing.T) {
	var squeezed, label float64
	for _, p := range loadPublished(t) {
		for _, v := range p.values {
			if p.file != "assemblies_deemed.csv" || !strings.HasPrefix(v.name, "R-19 + 2") {
				continue
			}
			got, err := evaluate(v)
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasSuffix(v.name, "not squeezed") {
				label = got
			} else {
				squeezed = got
			}
		}
	}
	const printed, half = 0.057, 0.0005 // Btu/(h·ft²·°F)
	if math.Abs(squeezed-printed) > half || math.Abs(label-printed) <= half {
		t.Errorf("U squeezed %.4f, at its label %.4f; only the first may round to the printed %.3f", squeezed, label, printed)
	}
}
