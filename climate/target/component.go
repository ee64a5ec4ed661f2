package target

import "fmt"

// Component is a kind of part of the envelope, as the code's tables divide it.
// The zero Component is none and is refused.
type Component uint8

// Components, in the order in which [All] returns them.
const (
	Ceiling          Component = iota + 1 // under a ventilated attic
	CathedralCeiling                      // without an attic above it
	Wall                                  // above-grade wood frame
	MassWall                              // above-grade masonry, concrete, adobe
	Floor                                 // framed, over unheated space or outdoors
	BasementWall                          // of a heated basement
	CrawlWall                             // of an unvented crawl space
	Slab                                  // on grade, its edge
	Window                                // vertical fenestration
	Skylight
	Door // the code counts doors as fenestration
)

var componentNames = [...]string{
	Ceiling:          "ceiling",
	CathedralCeiling: "ceiling without attic",
	Wall:             "frame wall",
	MassWall:         "mass wall",
	Floor:            "floor",
	BasementWall:     "basement wall",
	CrawlWall:        "crawl-space wall",
	Slab:             "slab edge",
	Window:           "window",
	Skylight:         "skylight",
	Door:             "door",
}

// String returns the plain name of c.
func (c Component) String() string {
	if c.check() != nil {
		return fmt.Sprintf("Component(%d)", uint8(c))
	}
	return componentNames[c]
}

func (c Component) check() error {
	if c == 0 || int(c) >= len(componentNames) {
		return fmt.Errorf("no component %d; use one of target.Ceiling to target.Door", uint8(c))
	}
	return nil
}

// fenestration reports whether c reads the code's fenestration columns.
func (c Component) fenestration() bool { return c == Window || c == Skylight || c == Door }

// UDecimals returns the decimals with which the code's tables print a U-factor of
// c in Btu/(h·ft²·°F): two for fenestration, three for the rest.
func (c Component) UDecimals() int {
	if c.fenestration() {
		return 2
	}
	return 3
}
