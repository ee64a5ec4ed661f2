package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// picturing refuses what --picture can not name.
func (s *solving) picturing() error {
	if !s.given("picture") {
		return nil
	}
	switch {
	case s.picture == "" || s.picture == "-":
		return usageError{fmt.Sprintf("--picture %q: name a file to draw to, such as wall.svg", s.picture)}
	case !strings.EqualFold(filepath.Ext(s.picture), ".svg"):
		return usageError{fmt.Sprintf("--picture %s: a picture is an SVG file, name one that ends in .svg", s.picture)}
	}
	return nil
}

// free refuses to draw over the file that is read, and over what is no picture.
func (s *solving) free(file string) error {
	fail := func(why string) error { return notOfInput{fmt.Errorf("picture %s: %s", file, why)} }
	info, err := os.Stat(file)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil
	case err != nil:
		return pictureError(file, err)
	case info.IsDir():
		return fail("this is a directory; name a file to draw to")
	}
	if input, err := os.Stat(s.args[0]); err == nil && os.SameFile(input, info) {
		return fail("this is the file that is read; draw to another")
	}
	if !info.Mode().IsRegular() {
		return fail("this is no plain file; name another to draw to")
	}
	f, err := os.Open(file)
	if err != nil {
		return pictureError(file, err)
	}
	defer f.Close()
	head, err := io.ReadAll(io.LimitReader(f, pictureHead))
	if err != nil {
		return pictureError(file, err)
	}
	if info.Size() > 0 && !(bytes.HasPrefix(head, []byte("<svg ")) && bytes.Contains(head, []byte("<title>Section with isotherms"))) {
		return fail("a file of that name is there and is no picture of a section; move it away, or draw to another")
	}
	return nil
}

// pictureHead is more than what stands before the title of a picture.
const pictureHead = 1000

// draw writes a picture.
func draw(file, svg string) error {
	if err := os.WriteFile(file, []byte(svg), 0o666); err != nil {
		return pictureError(file, err)
	}
	return nil
}

// pictureError says of a picture what the system says of its file.
func pictureError(file string, err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return notOfInput{fmt.Errorf("picture %s: %w", file, err)}
}

// notOfInput is an error that has nothing to do with the file that is read.
type notOfInput struct{ error }
