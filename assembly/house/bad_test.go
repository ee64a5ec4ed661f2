package house_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/coldseam/coldseam/assembly/house"
)

var update = flag.Bool("update", false, "write the messages of the bad files anew")

const testdata = "../../testdata/house/"

// files returns the files of a pattern below testdata; there must be some.
func files(t testing.TB, pattern string) []string {
	t.Helper()
	names, err := filepath.Glob(testdata + pattern)
	if err != nil || len(names) == 0 {
		t.Fatalf("no files %s: %v", pattern, err)
	}
	return names
}

func read(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestBadFiles compares every message with the text file beside the bad file.
func TestBadFiles(t *testing.T) {
	for _, name := range files(t, "bad/*/*.toml") {
		t.Run(filepath.Base(name), func(t *testing.T) {
			h, err := house.Decode(filepath.Base(name), read(t, name))
			if err == nil || h != nil {
				t.Fatalf("Decode took a bad file")
			}
			got := err.Error() + "\n"
			golden := strings.TrimSuffix(name, ".toml") + ".txt"
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if diff := cmp.Diff(string(read(t, golden)), got); diff != "" {
				t.Errorf("messages differ from %s (-want +got):\n%s", golden, diff)
			}
		})
	}
}

// TestErrorsInOrder checks of every bad file that its mistakes are sorted, lie
// in the file, and name a line that holds their column.
func TestErrorsInOrder(t *testing.T) {
	for _, name := range files(t, "bad/*/*.toml") {
		data := bytes.TrimPrefix(read(t, name), []byte("\ufeff"))
		lines := strings.Split(string(data), "\n")
		_, err := house.Decode("f", data)
		var errs house.Errors
		if !errors.As(err, &errs) {
			t.Fatalf("%s: the error is a %T, want Errors", name, err)
		}
		for i, e := range errs {
			if i > 0 && (e.Line < errs[i-1].Line || e.Line == errs[i-1].Line && e.Column < errs[i-1].Column) {
				t.Errorf("%s: mistake at %d:%d after one at %d:%d", name, e.Line, e.Column, errs[i-1].Line, errs[i-1].Column)
			}
			if e.Line < 1 || e.Line > len(lines) || strings.TrimSuffix(lines[e.Line-1], "\r") != e.Source {
				t.Errorf("%s: line %d is said to be %q", name, e.Line, e.Source)
			}
			if e.Column < 1 || e.Column > len([]rune(e.Source))+1 {
				t.Errorf("%s: column %d in %q", name, e.Column, e.Source)
			}
		}
	}
}

// noFiles are inputs that are no house files, with the whole message.
var noFiles = []struct {
	name string
	data string
	want string
}{
	{"a PNG image", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "f:1:1: this is no text file; a house file is TOML, as any editor writes it"},
	{"UTF-16", "\xff\xfez\x00o\x00", "f:1:1: this is UTF-16; save the file as UTF-8"},
	{"Latin 1", "name = \"x\"\nplace = \"K\xf6ln\"\n", "f:2:11: byte 0xF6 is not UTF-8; save the file as UTF-8\n  place = \"K\ufffdln\"\n            ^"},
	{"too large", strings.Repeat("# nothing\n", 110_000), "f:1:1: more than 1 MB; a house file is text, and a large house takes some 20 KB\n  # nothing\n  ^"},
	{"one line, too large", strings.Repeat("#", 2_000_000), "f:1:1: more than 1 MB; a house file is text, and a large house takes some 20 KB"},
	{"an array in an array without end", "part = " + strings.Repeat("[", 20_000), "f:1:10008: arrays and inline tables are nested more than the maximum of 10000 levels deep"},
}

func TestNoFiles(t *testing.T) {
	for _, tt := range noFiles {
		t.Run(tt.name, func(t *testing.T) {
			_, err := house.Decode("f", []byte(tt.data))
			if err == nil {
				t.Fatal("Decode took it")
			}
			if got := err.Error(); !strings.HasPrefix(got, tt.want) {
				t.Errorf("got  %.300q\nwant %q", got, tt.want)
			}
		})
	}
}

// TestEmptyFile checks that the message about an empty file shows a house that
// can be copied as it stands.
func TestEmptyFile(t *testing.T) {
	for _, data := range []string{"", "\n", "# only a comment\r\n", "\ufeff", "  \t"} {
		_, err := house.Decode("f", []byte(data))
		var errs house.Errors
		if !errors.As(err, &errs) || len(errs) != 1 {
			t.Fatalf("Decode(%q) = %v, want one mistake", data, err)
		}
		text, example, ok := strings.Cut(errs[0].Msg, "such as\n")
		if !ok || !strings.Contains(text, "nothing is in this file") {
			t.Fatalf("Decode(%q): %q shows no example", data, errs[0].Msg)
		}
		if n := strings.Count(example, "\n") + 1; n != 6 {
			t.Errorf("the example has %d lines, want 6", n)
		}
		h, err := house.Decode("f", []byte(example))
		if err != nil {
			t.Fatalf("the example of the message is no house: %v", err)
		}
		if _, err := h.Rank(); err != nil {
			t.Errorf("the example of the message cannot be ranked: %v", err)
		}
	}
}

// TestManyMistakes checks that a file of nothing but mistakes ends in a bounded
// list that says so.
func TestManyMistakes(t *testing.T) {
	var b strings.Builder
	for i := range 5000 {
		fmt.Fprintf(&b, "key%d = value\n", i)
	}
	_, err := house.Decode("f", []byte(b.String()))
	var errs house.Errors
	if !errors.As(err, &errs) || len(errs) != 100 {
		t.Fatalf("%d mistakes, want 100", len(errs))
	}
	if last := errs[99].Msg; !strings.HasSuffix(last, "; 100 mistakes, the rest of the file is not looked at") {
		t.Errorf("the last one does not say that there are more: %q", last)
	}
}

// TestTooMany checks the bounds of how much a file may describe.
func TestTooMany(t *testing.T) {
	for _, tt := range []struct {
		name, one string
		n         int
		want      string
	}{
		{"windows", "[window.w%d]\nu = \"U-0.3\"\n", 101, "f:203:9: window: more than 100; no house has so many"},
		{"parts", "[[part]]\nname = \"p%d\"\nkind = \"wall\"\nu = \"U-0.3\"\narea = \"9 ft2\"\n", 501, "f:2503:3: part: more than 500; no house has so many"},
	} {
		var b strings.Builder
		b.WriteString("zone = \"6A\"\n\n")
		for i := range tt.n {
			fmt.Fprintf(&b, tt.one, i)
		}
		_, err := house.Decode("f", []byte(b.String()))
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %s", tt.name, err, tt.want)
		}
	}
}

// TestLongLine checks that a long line is shown around its column only.
func TestLongLine(t *testing.T) {
	_, err := house.Decode("f", []byte("notes = '"+strings.Repeat("é", 5000)+"' x"))
	// At most 1000 bytes of message and two lines of 160 characters.
	if got := err.Error(); len(got) > 3000 || !strings.Contains(got, "^") {
		t.Errorf("message of %d bytes", len(got))
	}
}
