package rvalue

import (
	"strconv"
	"strings"
)

// ParseError says what is wrong with a text that should be a quantity.
type ParseError struct {
	Text   string // the whole text
	Offset int    // byte offset into Text of what is at fault, len(Text) if something is missing there
	Msg    string // what is wrong and what would do, to print without the package's name
}

// Error returns the message behind the package's name and the text.
func (e *ParseError) Error() string {
	return "rvalue: " + strconv.Quote(e.Text) + ": " + e.Msg
}

func fail(text string, offset int, msg ...string) error {
	return &ParseError{Text: text, Offset: offset, Msg: strings.Join(msg, "")}
}
