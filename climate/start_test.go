package climate

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unsafe"
)

// TestTablesAreSmall: what the tables add to a program that imports the package.
func TestTablesAreSmall(t *testing.T) {
	bytes := len(states)*int(unsafe.Sizeof(states[0])) + len(stations)*int(unsafe.Sizeof(stations[0])) + len(towns)*int(unsafe.Sizeof(towns[0]))
	for _, s := range states {
		bytes += len(s.code) + len(s.name) + len(s.zone15) + len(s.zone21) + len(s.rows)
	}
	for _, s := range stations {
		bytes += len(s.wban) + len(s.name) + len(s.state)
	}
	for _, s := range towns {
		bytes += len(s.name) + len(s.state)
	}
	t.Logf("%d bytes of tables", bytes)
	if bytes < 100e3 || bytes > 1e6 {
		t.Errorf("the tables take %d bytes, at most a million will do", bytes)
	}
}

// program builds one of a single file that prints a value of package climate, or
// nothing of it, and returns where it is.
func program(t testing.TB, with bool) string {
	t.Helper()
	text := "package main\n\nimport \"fmt\"\n\nfunc main() { fmt.Println(0) }\n"
	if with {
		text = "package main\n\nimport (\n\t\"fmt\"\n\n\t\"github.com/coldseam/coldseam/climate\"\n)\n\nfunc main() { fmt.Println(climate.SeaLevel, climate.County{}) }\n"
	}
	dir := t.TempDir()
	file, bin := filepath.Join(dir, "main.go"), filepath.Join(dir, "program")
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("go", "build", "-o", bin, file).CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	return bin
}

// TestNothingAtStart: importing the package runs nothing; what the Go runtime lists of
// the work of packages at start-up has none of ours.
func TestNothingAtStart(t *testing.T) {
	cmd := exec.Command(program(t, true))
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	var trace strings.Builder
	cmd.Stderr = &trace
	if err := cmd.Run(); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(trace.String(), "init internal/") {
		t.Fatalf("the runtime lists no start-up work at all:\n%s", trace.String())
	}
	for line := range strings.Lines(trace.String()) {
		if strings.Contains(line, "coldseam/climate") {
			t.Errorf("work at start-up: %s", line)
		}
	}
}

// BenchmarkStart times a program that imports the package from its start to its exit,
// and one that does not, in turn.
func BenchmarkStart(b *testing.B) {
	with, without := program(b, true), program(b, false)
	run := func(bin string) time.Duration {
		start := time.Now()
		if err := exec.Command(bin).Run(); err != nil {
			b.Fatal(err)
		}
		return time.Since(start)
	}
	var ours, none time.Duration
	for b.Loop() {
		none += run(without)
		ours += run(with)
	}
	b.ReportMetric(float64((ours-none).Microseconds())/1e3/float64(b.N), "ms-more")
	b.ReportMetric(float64(ours)/float64(none), "times-without")
}
