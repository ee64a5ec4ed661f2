package house

import (
	"testing"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Each source holds a Z; the place found for the Z of the text must be the
// place of the Z in the source.
var escapedTexts = []struct{ name, source string }{
	{"plain", `"abcZ"`},
	{"literal", `'5 1/2" Z'`},
	{"escaped quotes", `"a \"b\" Z"`},
	{"all short escapes", `"\b\t\n\f\r\e\"\\Z"`},
	{"unicode escapes", `"\u00e9\U0001F600\x41\u20ACZ"`},
	{"characters of several bytes", `"é€😀Z"`},
	{"a backslash that is none", `'a\u00e9Z'`},
	{"multiline", "\"\"\"\nab\ncd Z\"\"\""},
	{"multiline, first break kept out, carriage return", "\"\"\"\r\nab\r\ncd Z\"\"\""},
	{"multiline, line joined", "\"\"\"ab\\\n   \n  cd \\t Z\"\"\""},
	{"multiline, line joined with blanks behind the backslash", "\"\"\"ab\\  \n   Z\"\"\""},
	{"multiline literal", "'''\nab\n\\ cdZ'''"},
	{"multiline with quotes at its end", `"""ab Z"""""`},
	{"multiline of one line break", "\"\"\"\n\nZ\"\"\""},
}

func TestOffsetInText(t *testing.T) {
	for _, tt := range escapedTexts {
		t.Run(tt.name, func(t *testing.T) {
			var p unstable.Parser
			file := "key = " + tt.source
			p.Reset([]byte(file))
			if !p.NextExpression() {
				t.Fatalf("%s is not TOML: %v", file, p.Error())
			}
			v := p.Expression().Value()
			n := &node{kind: text, at: int(v.Raw.Offset), raw: string(p.Raw(v.Raw)), text: string(v.Data)}
			decoded := 0
			for p := range pieces(n.raw) {
				decoded = p.decoded
			}
			if decoded != len(n.text) {
				t.Errorf("pieces of %s are %d bytes of text, want %d", tt.source, decoded, len(n.text))
			}
			for i := range n.text {
				if n.text[i] != 'Z' {
					continue
				}
				if at := n.offset(i); file[at] != 'Z' {
					t.Errorf("Z of %q found at %d, where stands %q", n.text, at, file[at:])
				}
			}
		})
	}
}
