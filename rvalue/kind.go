package rvalue

import "strings"

// scale is one unit of a kind, written as it is printed, with its size in the
// kind's own SI unit. The sizes are the exported constants, so that what is
// read equals what is calculated in Go: "3 1/2 in" is 3.5*Inch to the last bit.
type scale struct {
	unit string
	size float64
	key  unitKey
}

// kind is what the parsers know about one quantity.
type kind struct {
	name   string // with its article
	use    string // which units would do
	letter byte   // R or U, what a label before the number begins with
	low    bound
	zero   string  // why zero is refused, if there is more to say than the range
	scales []scale // the SI unit first; with a label, the inch-pound one next
}

// bound is the lower end of a kind's range.
type bound uint8

const (
	aboveZero bound = iota
	fromZero
	anySign
)

var (
	resistanceKind = newKind(kind{
		name: "a thermal resistance", use: "R-13, RSI 2.3, m²·K/W or h·ft²·°F/Btu", letter: 'R',
		zero: "a layer that resists nothing needs no entry",
		scales: []scale{
			{unit: "m²·K/W", size: 1},
			{unit: "h·ft²·°F/Btu", size: float64(RIP)},
		},
	})
	transmittanceKind = newKind(kind{
		name: "a thermal transmittance", use: "U-0.30, W/(m²·K) or Btu/(h·ft²·°F)", letter: 'U',
		scales: []scale{
			{unit: "W/(m²·K)", size: 1},
			{unit: "Btu/(h·ft²·°F)", size: float64(UIP)},
		},
	})
	conductivityKind = newKind(kind{
		name: "a conductivity", use: "W/(m·K), Btu·in/(h·ft²·°F) or Btu/(h·ft·°F)",
		scales: []scale{
			{unit: "W/(m·K)", size: 1},
			{unit: "Btu·in/(h·ft²·°F)", size: float64(BtuInchPerHourFoot2F)},
			{unit: "Btu/(h·ft·°F)", size: float64(PsiIP)},
		},
	})
	lengthKind = newKind(kind{
		name: "a length", use: "mm, cm, m, in or ft",
		scales: []scale{
			{unit: "m", size: 1},
			{unit: "mm", size: float64(Millimetre)},
			{unit: "cm", size: 0.01},
			{unit: "in", size: float64(Inch)},
			{unit: "ft", size: float64(Foot)},
		},
	})
	areaKind = newKind(kind{
		name: "an area", use: "m², ft² or two sides such as 31 ft x 8 ft 6 in",
		scales: []scale{
			{unit: "m²", size: 1},
			{unit: "ft²", size: float64(SquareFoot)},
			{unit: "cm²", size: 1e-4},
			{unit: "mm²", size: 1e-6},
			{unit: "in²", size: inch * inch},
		},
	})
	volumeKind = newKind(kind{
		name: "a volume", use: "m³, ft³ or three sides such as 31 ft x 24 ft x 8 ft",
		scales: []scale{
			{unit: "m³", size: 1},
			{unit: "ft³", size: float64(CubicFoot)},
		},
	})
	temperatureKind = newKind(kind{
		name: "a temperature", use: "°C, °F or K",
		scales: []scale{{unit: "°C"}, {unit: "°F"}, {unit: "K"}}, // with offsets: ParseTemperature
	})
	differenceKind = newKind(kind{
		name: "a temperature difference", use: "K, °C or °F", low: anySign,
		scales: []scale{
			{unit: "K", size: 1},
			{unit: "°C", size: 1},
			{unit: "°F", size: float64(FahrenheitDegree)},
		},
	})
	conductanceKind = newKind(kind{
		name: "a conductance", use: "W/K or Btu/(h·°F)", low: fromZero,
		scales: []scale{
			{unit: "W/K", size: 1},
			{unit: "Btu/(h·°F)", size: float64(BtuPerHourF)},
		},
	})
	linearKind = newKind(kind{
		name: "a linear transmittance", use: "W/(m·K) or Btu/(h·ft·°F)", low: anySign,
		scales: []scale{
			{unit: "W/(m·K)", size: 1},
			{unit: "Btu/(h·ft·°F)", size: float64(PsiIP)},
		},
	})
	permeanceKind = newKind(kind{
		name: "a vapour permeance", use: "perm or ng/(Pa·s·m²)", low: fromZero,
		scales: []scale{
			{unit: "kg/(Pa·s·m²)", size: 1},
			{unit: "ng/(Pa·s·m²)", size: float64(NanogramPerPascalSecondMetre2)},
			{unit: "perm", size: float64(Perm)},
		},
	})
	airFlowKind = newKind(kind{
		name: "an air flow", use: "cfm, ft³/min, m³/h or L/s", low: fromZero,
		scales: []scale{
			{unit: "m³/s", size: 1},
			{unit: "m³/h", size: float64(CubicMetrePerHour)},
			{unit: "L/s", size: 0.001},
			{unit: "ft³/min", size: float64(CubicFootPerMin)},
		},
	})
	speedKind = newKind(kind{
		name: "a speed", use: "mph, m/s or km/h", low: fromZero,
		scales: []scale{
			{unit: "m/s", size: 1},
			{unit: "mi/h", size: float64(MilePerHour)},
			{unit: "km/h", size: 1000 / hour},
		},
	})
	densityKind = newKind(kind{
		name: "a density", use: "kg/m³ or lb/ft³",
		scales: []scale{
			{unit: "kg/m³", size: 1},
			{unit: "lb/ft³", size: float64(PoundPerFoot3)},
		},
	})
	massKind = newKind(kind{
		name: "a mass", use: "kg or lb",
		scales: []scale{
			{unit: "kg", size: 1},
			{unit: "lb", size: float64(Pound)},
		},
	})
)

// allKinds serves to name the kind that a misplaced unit belongs to. Where two
// share a unit the first one is named.
var allKinds = []*kind{
	&lengthKind, &areaKind, &volumeKind, &temperatureKind, &resistanceKind, &transmittanceKind, &conductivityKind,
	&conductanceKind, &permeanceKind, &airFlowKind, &speedKind, &densityKind, &massKind, &differenceKind, &linearKind,
}

func newKind(k kind) kind {
	for i := range k.scales {
		key, ok := parseUnit(k.scales[i].unit)
		if !ok {
			panic("rvalue: the table of units has a bad unit: " + k.scales[i].unit)
		}
		k.scales[i].key = key
	}
	return k
}

// scale returns the unit of this kind that has the key, nil if none has.
func (k *kind) scale(key *unitKey) *scale {
	for i := range k.scales {
		if k.scales[i].key == *key {
			return &k.scales[i]
		}
	}
	return nil
}

// plain is the name of the kind without its article.
func (k *kind) plain() string {
	_, name, _ := strings.Cut(k.name, " ")
	return name
}
