package material

import "slices"

// Class says what kind of thing a material is.
type Class uint8

// The classes of material.
const (
	Fibre           Class = iota + 1 // batts, blankets, felts
	LooseFill                        // blown or poured
	Foam                             // boards of foam
	SprayFoam                        // foamed in place
	InsulationBoard                  // boards of anything else that insulates
	Wood                             // solid
	Panel                            // of wood, cement or paper
	Masonry                          // laid in mortar
	Concrete                         // cast
	Stone                            // as quarried
	Earth                            // unfired, and straw
	Plaster                          // wet-laid coats, inside and outside
	Gypsum                           // boards of gypsum
	Metal
	Glass
	Plastic // solid plastics, rubbers, sealants
	Membrane
	Siding
	Roofing
	Flooring
	AirBarrier
	Soil
)

var classNames = [...]string{
	Fibre: "fibre", LooseFill: "loose fill", Foam: "foam", SprayFoam: "spray foam", InsulationBoard: "insulation board",
	Wood: "wood", Panel: "panel", Masonry: "masonry", Concrete: "concrete", Stone: "stone", Earth: "earth",
	Plaster: "plaster", Gypsum: "gypsum", Metal: "metal", Glass: "glass", Plastic: "plastic", Membrane: "membrane",
	Siding: "siding", Roofing: "roofing", Flooring: "flooring", AirBarrier: "air barrier", Soil: "soil",
}

// String returns the class as the catalogue writes it, "loose fill"; "unsorted"
// for the zero value.
func (c Class) String() string {
	if int(c) >= len(classNames) || classNames[c] == "" {
		return "unsorted"
	}
	return classNames[c]
}

// Classes returns the names of all classes, that of Class(1) first.
func Classes() []string { return slices.Clone(classNames[1:]) }

// Insulates reports whether what the class holds is sold to insulate.
func (c Class) Insulates() bool {
	switch c {
	case Fibre, LooseFill, Foam, SprayFoam, InsulationBoard:
		return true
	}
	return false
}

// classNamed finds a class by what String returns.
func classNamed(s string) (Class, bool) {
	for c, name := range classNames {
		if name != "" && name == s {
			return Class(c), true
		}
	}
	return 0, false
}
