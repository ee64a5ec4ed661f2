package window

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite testdata/window_SCORE.md")

// table counts the cells of one published table.
type table struct {
	name, kind string // kind: its mark
	tried, met int
	worst      float64 // difference, in the table's unit
	missed     []string
	whole      string // why cells are missed, when one reason explains all of them
}

// cell compares ours with a printed figure, which counts as met when ours is
// within half of its last digit. What is missed must be explained by why, here
// or on the whole table, and what is met must not be.
func (s *table) cell(t *testing.T, name string, ours float64, printed, why string) {
	t.Helper()
	want := number(t, printed)
	s.tried++
	off := ours - want
	if math.Abs(off) > math.Abs(s.worst) {
		s.worst = off
	}
	if math.Abs(off) <= lastDigit(printed)/2+rounding {
		s.met++
		if why != "" {
			t.Errorf("%s, %s: met, though it is said to be missed since %s", s.name, name, why)
		}
		return
	}
	if s.whole != "" {
		return
	}
	if why == "" {
		t.Errorf("%s, %s: ours %.4f, printed %s, and no reason is given", s.name, name, ours, printed)
	}
	s.missed = append(s.missed, fmt.Sprintf("| %s | %s | %s | %.3f | %s |", s.name, name, printed, ours, why))
}

// rounding is what converting units may do to a figure on the edge of rounding.
const rounding = 1e-9

// lastDigit returns one unit of the last printed digit.
func lastDigit(printed string) float64 {
	_, decimals, _ := strings.Cut(printed, ".")
	return math.Pow(10, -float64(len(decimals)))
}

// TestScore holds the package against every published table at hand and the
// counts against the recorded file, so that no figure there goes stale.
func TestScore(t *testing.T) {
	tables := []func(*testing.T) *table{
		scoreISOGlass, scoreFrench, scoreFrenchLevel, scoreFrenchSecond, scoreSingle, scoreDeclared, scoreTilted, scoreRoomSide, scoreStillGas,
		scoreASHRAEFull, scoreASHRAE, scoreASHRAEWindy, scoreAcrylic, scoreFoil,
		scoreISOWhole, scoreEdge, scoreWhole, scorePsi, scoreFrames, scoreFace, scoreSweat, scoreSweatSolved, scoreTrade, scoreOlder,
	}
	var b strings.Builder
	b.WriteString(`# How near package window comes to published tables

Written by TestScore (go test ./assembly/window -run TestScore -update); the test fails when it is out of date. A cell is met when
ours is within half a unit of the last digit printed. *Own arithmetic* was done by us outside this code and is printed nowhere: it
guards the code and proves no formula.

| table | how known | cells tried | met | largest difference, ours less printed |
|---|---|---:|---:|---:|
`)
	var missed []string
	for _, f := range tables {
		s := f(t)
		fmt.Fprintf(&b, "| %s | %s | %d | %d | %+.3f |\n", s.name, s.kind, s.tried, s.met, s.worst)
		missed = append(missed, s.missed...)
		if s.whole != "" {
			missed = append(missed, fmt.Sprintf("| %s | %d cells | | | %s |", s.name, s.tried-s.met, s.whole))
		}
	}
	b.WriteString("\n## What is missed, and why\n\n| table | cell | printed | ours | why |\n|---|---|---:|---:|---|\n")
	b.WriteString(strings.Join(missed, "\n") + "\n")
	newerGases(t, &b)
	const path = "../../testdata/window_SCORE.md"
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), b.String()); diff != "" {
		t.Errorf("%s: (-recorded +measured)\n%s", path, diff)
	}
}
