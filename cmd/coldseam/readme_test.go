package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

const readmeFile = "../../README.md"

// shown are the pieces of the README that are made from what the program and
// the tests print; go test ./cmd/coldseam -update writes them anew.
func shown(t *testing.T) map[string]string {
	t.Helper()
	score, err := os.ReadFile("../../testdata/SCORE.md")
	if err != nil {
		t.Fatal(err)
	}
	from, to := strings.Index(string(score), "| source |"), strings.Index(string(score), "\n\n## What differs")
	if from < 0 || to < from {
		t.Fatal("testdata/SCORE.md has no table")
	}
	rank, _, _ := call(t, "", "rank", "../../examples/flat-1926.toml")
	rank, _, ok := strings.Cut(rank, "\nfilled in,")
	if !ok {
		t.Fatal("rank fills nothing in")
	}
	one, _, _ := call(t, "", "layers", wall)
	better, _, _ := call(t, "", "glass", "glass 1/8 in", "--size", "30 in x 60 in")
	better, _, ok = strings.Cut(better, "\n· no sun")
	if !ok {
		t.Fatal("glass says nothing of the sun")
	}
	slab, _, _ := call(t, "", "section", "../../examples/slab-edge.toml")
	slab, _, ok = strings.Cut(slab, "\nfilled in,")
	if !ok {
		t.Fatal("section fills nothing in")
	}
	steel, _, _ := call(t, "", "section", "../../examples/split-1978.toml")
	if from := strings.Index(steel, "furred-block:"); from >= 0 {
		steel = steel[from:]
	} else {
		t.Fatal("the example has no wall with steel studs")
	}
	return map[string]string{
		"converges": convergence(t),
		"section":   indent(slab),
		"steel":     indent(steel),
		"glass":     indent(better),
		"rank":      indent(rank),
		"layers":    indent(one),
		"score":     string(score)[from:to],
	}
}

// convergence is how many values of the standard's cases are met, and what testdata/section_SCORE.md
// has on how the bounds close in, and at what cost.
func convergence(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/section_SCORE.md")
	if err != nil {
		t.Fatal(err)
	}
	cases, rest, ok := strings.Cut(string(data), "## Convergence in the plane")
	_, rest, ok2 := strings.Cut(rest, "| section |")
	table, _, ok3 := strings.Cut(rest, "\n\n## Convergence in space")
	met := strings.Count(cases, "| yes |\n")
	if !ok || !ok2 || !ok3 || met == 0 {
		t.Fatal("testdata/section_SCORE.md has no cases or no table")
	}
	return fmt.Sprintf("Values of ISO 10211's cases 1 to 4 met within the standard's own tolerance: %d of %d.\n\n| section |%s", met, met+strings.Count(cases, "| **no** |"), table)
}

func indent(s string) string {
	lines := strings.Split(strings.TrimRight(s, "\n"), "\n")
	for i, l := range lines {
		if l != "" {
			lines[i] = "    " + l
		}
	}
	return strings.Join(lines, "\n")
}

// TestReadmeShowsWhatIsPrinted: behind each mark stands what is printed today.
func TestReadmeShowsWhatIsPrinted(t *testing.T) {
	data, err := os.ReadFile(readmeFile)
	if err != nil {
		t.Fatal(err)
	}
	readme := string(data)
	for name, text := range shown(t) {
		open, end := "<!-- "+name+" -->\n", "\n<!-- end -->"
		from := strings.Index(readme, open)
		if from < 0 {
			t.Fatalf("README has no mark %q", open)
		}
		from += len(open)
		to := strings.Index(readme[from:], end)
		if to < 0 {
			t.Fatalf("README has no end for the mark %q", open)
		}
		if got := strings.Trim(readme[from:from+to], "\n"); got != text {
			if !*update {
				t.Errorf("README shows another %s than is printed (go test ./cmd/coldseam -update writes it):\n%s\n---\n%s", name, got, text)
			}
			readme = readme[:from] + "\n" + text + "\n" + readme[from+to:]
		}
	}
	if *update && readme != string(data) {
		if err := os.WriteFile(readmeFile, []byte(readme), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// TestReadmeCommands runs every coldseam command that the README shows, as
// built, and wants it to do what it says.
func TestReadmeCommands(t *testing.T) {
	bin := build(t, ".")
	readme, err := os.ReadFile(readmeFile)
	if err != nil {
		t.Fatal(err)
	}
	commands := regexp.MustCompile(`(?m)^ {4}(?:coldseam|go run \./cmd/coldseam) (.*)$`).FindAllStringSubmatch(string(readme), -1)
	if len(commands) < 8 {
		t.Fatalf("the README shows %d commands, it should show all", len(commands))
	}
	for _, c := range commands {
		cmd := exec.Command("sh", "-c", bin+" "+c[1])
		cmd.Dir = "../.."
		var stderr bytes.Buffer
		cmd.Stderr = &stderr
		out, err := cmd.Output()
		if err != nil || len(out) == 0 || stderr.Len() > 0 {
			t.Errorf("coldseam %s: %v, %d bytes, %s", c[1], err, len(out), stderr.String())
		}
	}
}

// TestReadmeSnippet builds the README's program as another module would.
func TestReadmeSnippet(t *testing.T) {
	readme, err := os.ReadFile(readmeFile)
	if err != nil {
		t.Fatal(err)
	}
	_, code, ok := strings.Cut(string(readme), "```go\n")
	code, _, ok2 := strings.Cut(code, "```")
	if !ok || !ok2 {
		t.Fatal("the README shows no Go program")
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for name, text := range map[string]string{
		"main.go": code,
		"go.mod":  "module example.test/wall\n\ngo 1.26\n\nrequire github.com/coldseam/coldseam v0.0.0\n\nreplace github.com/coldseam/coldseam => " + root + "\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("go", "run", ".")
	cmd.Dir = dir
	out, err := cmd.CombinedOutput()
	if err != nil || !strings.HasPrefix(string(out), "labelled R-13, effective R-1") {
		t.Errorf("the README's program: %v\n%s", err, out)
	}
}

// BenchmarkColdStart times coldseam rank from its start to its exit, and an
// empty Go program in the same run; their ratio is what counts.
func BenchmarkColdStart(b *testing.B) {
	dir := b.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "main.go"), []byte("package main\n\nfunc main() {}\n"), 0o644); err != nil {
		b.Fatal(err)
	}
	empty := build(b, filepath.Join(dir, "main.go"))
	bin := build(b, ".")
	start := func(name string, args ...string) {
		if err := exec.Command(name, args...).Run(); err != nil {
			b.Fatal(err)
		}
	}
	var ours, none float64
	for b.Loop() {
		none += seconds(func() { start(empty) })
		ours += seconds(func() { start(bin, "rank", "../../examples/flat-1926.toml") })
	}
	b.ReportMetric(ours/none, "times-an-empty-program")
}
