package target

import "fmt"

// Tightness returns the largest blower-door result that edition e allows in
// zone z, in air changes per hour at 50 Pa, and a remark on where the figure
// comes from and what else would do. A zone or edition that does not exist
// gives 0 and a note that says so.
func Tightness(z Zone, e Edition) (ach50 float64, note string) {
	if err := z.check(); err != nil {
		return 0, "climate zone: " + err.Error()
	}
	if err := e.check(); err != nil {
		return 0, err.Error()
	}
	switch e {
	case Edition2009:
		return 7, "or a visual inspection; seen (EEBA; professionalinspector.com)"
	case Edition2012, Edition2015, Edition2018:
		return byZone(z, 5, 3, 3), "seen (Home Innovation TechNote; Insulation Institute)"
	case Edition2021:
		return byZone(z, 5, 3, 3), "prescriptive limit, from memory; 5 caps every path in every zone; " +
			"small or attached dwellings may use 0.30 cfm/ft² (from memory; a Colorado page has 0.28)"
	}
	ach50 = byZone(z, 4, 3, 2.5)
	return ach50, fmt.Sprintf("from memory, low confidence; jaspector.com gives %g instead", byZone(z, 5, 3, 3))
}

// byZone picks by zones 0-2, 3-5 and 6-8.
func byZone(z Zone, hot, mild, cold float64) float64 {
	switch {
	case z.Number <= 2:
		return hot
	case z.Number <= 5:
		return mild
	}
	return cold
}
