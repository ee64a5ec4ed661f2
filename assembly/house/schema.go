package house

import (
	_ "embed"
	"slices"
)

//go:embed house.schema.json
var schema []byte

//go:embed drawing.schema.json
var drawingSchema []byte

// Schema returns the JSON Schema of the house file, for editors. It keeps to
// what drafts 4 to 7 have in common; a file that it refuses is refused by
// Decode too, while Decode finds more: units, layer texts, references.
func Schema() []byte { return slices.Clone(schema) }

// DrawingSchema returns the JSON Schema of a drawn section, to the same rules.
func DrawingSchema() []byte { return slices.Clone(drawingSchema) }
