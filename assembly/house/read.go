package house

import (
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// house reads the whole tree into h.
func (d *decoder) house(root *table) {
	s := &section{d: d, t: root}
	d.site(s)
	d.air(s)
	d.season(s)
	d.materials(s)
	d.assemblies(s)
	d.windows(s)
	d.buffers(s)
	d.parts(s)
	d.sections(s)
	d.bridges(s)
	s.done()
	d.tryAll()
	if len(d.errs) == 0 {
		d.solveSections()
	}
}

// filled records a value that was filled in.
func (d *decoder) filled(key, value, why string) {
	d.h.Defaults = append(d.h.Defaults, Default{key, value, why})
}

// site reads where the house stands and how results are printed.
func (d *decoder) site(s *section) {
	h, ok := d.h, false
	if h.Name, ok = s.text("name"); !ok {
		h.Name = "unnamed house"
	}
	h.Place, _ = s.text("place")
	h.Edition = target.Default
	if e := s.get("edition"); e != nil {
		text := e.value.text
		if e.value.kind == integer {
			text = e.value.raw
		}
		var err error
		if h.Edition, err = target.ParseEdition(text); err != nil {
			s.fail("edition", "%s", plain(err))
			h.Edition = target.Default // to look at the rest by
		}
	} else if !s.has("edition") {
		d.filled("edition", h.Edition.String(), "the latest edition whose table was seen on a page")
	}
	d.months(s)
	d.zone(s)
	if h.Altitude, ok = quantity(s, "altitude", "700 ft", altitude); !ok && !s.has("altitude") {
		d.filled("altitude", "sea level", "none is given")
	}
	h.Units = rvalue.IP
	if i, ok := s.choice("units", []string{"ip", "si"}); ok && i == 1 {
		h.Units = rvalue.SI
	}
	if i, ok := s.choice("films", []string{"ashrae", "iso 6946"}); ok {
		h.Films = []surface.Set{surface.ASHRAE, surface.ISO6946}[i]
	} else if !s.has("films") {
		d.filled("films", h.Films.String(), "surface films of the ASHRAE Handbook, and its choice of method")
	}
	if i, ok := s.choice("soil", soils); ok {
		h.Soil = soilConductivity[i]
	}
	h.Cold, _ = s.flag("cold")
	if numeric, _ := s.flag("numeric"); numeric {
		h.Numeric = true
	}
	h.Notes, _ = s.text("notes")
}

// soils are the kinds of ground of ISO 13370.
var (
	soils            = []string{"clay or silt", "sand or gravel", "rock"}
	soilConductivity = []rvalue.Conductivity{envelope.ClayOrSilt, envelope.SandOrGravel, envelope.Rock}
)

// zone reads the climate zone, or looks up that of the place, or tells it by the
// file's own months.
func (d *decoder) zone(s *section) {
	if text, ok := s.text("zone"); ok {
		var err error
		if d.h.Zone, err = target.ParseZone(text); err != nil {
			s.fail("zone", "%s", plain(err))
		}
		return
	}
	switch {
	case s.has("zone") || s.has("place") && d.h.Place == "":
		return // not readable
	case d.h.Place == "" && s.has("months"):
		d.zoneByMonths(s, "no place is given")
		return
	case d.h.Place == "":
		s.missing("place", "the place is missing, whose climate zone says what the energy code asks of the parts; write such as place = \"St. Louis County, MN\" or zone = \"7\", or the months of a place elsewhere")
		return
	}
	if z, err := target.ParseZone(d.h.Place); err == nil {
		d.h.Zone = z
		return
	}
	z, county, err := zoneAt(d.h.Place, d.h.Edition)
	if err != nil && s.has("months") {
		d.zoneByMonths(s, "the place is no county of the United States")
		return
	}
	if err != nil {
		s.fail("place", "%s; or write the climate zone, such as zone = \"6A\", or twelve monthly means in months", strings.TrimPrefix(plain(err), "place "))
		return
	}
	d.h.Zone = z
	why := "the zone of " + county.String() + ", county table of PNNL report PNNL-33270"
	if county.Note != "" {
		why += "; " + county.Note
	}
	d.filled("zone", z.String(), why)
}

// zoneByMonths fills in the zone that the file's own months have; of months that could
// not be read the mistake is told already.
func (d *decoder) zoneByMonths(s *section, since string) {
	if len(d.h.Months) != 12 {
		return
	}
	n, err := climate.Given{Mean: d.h.Months}.Normals()
	var z climate.Zone
	if err == nil {
		z, err = n.Zone(int(d.h.Edition))
	}
	if err != nil {
		s.fail("months", "%s", plain(err))
		return
	}
	d.h.Zone = target.Zone(z)
	d.filled("zone", d.h.Zone.String(), "by the months, since "+since+" (thermal criteria of ASHRAE 169, degree days at 18 °C and 10 °C); a letter for moisture would take the rain")
}

// zoneAt looks up the climate zone of a place by an edition of the code.
func zoneAt(place string, e target.Edition) (target.Zone, climate.County, error) {
	county, err := climate.Parse(place)
	if err != nil {
		return target.Zone{}, county, err
	}
	z, err := county.Zone(int(e))
	return target.Zone(z), county, err
}

// highest is the altitude of La Rinconada, the highest at which people live
// year-round, in round figures.
const highest = 5100 * rvalue.Metre

// altitude reads a height above the sea at which a house may stand.
func altitude(text string) (rvalue.Length, error) {
	v, err := climate.ParseElevation(text)
	if err == nil && v > highest {
		return 0, &rvalue.ParseError{Text: text, Msg: "no house stands at this altitude, write one from -430 m to 5100 m"}
	}
	return v, err
}

// air reads the air inside, outside, and what leaks between them.
func (d *decoder) air(s *section) {
	d.h.Indoors.Temperature, d.h.Outdoors.Temperature = assembly.DefaultIndoors, assembly.DefaultOutdoors
	in, out := s.sub("indoors"), s.sub("outdoors")
	if in != nil {
		if t, ok := quantity(in, "temperature", "68 °F", rvalue.ParseTemperature); ok {
			d.h.Indoors.Temperature = in.within("temperature", t, 5, 40)
		}
		if rh, ok := quantity(in, "humidity", "35 %", rvalue.ParseShare); ok {
			d.h.Indoors.Humidity = rh
		}
		in.done()
	}
	if in == nil && !s.has("indoors") || in != nil && !in.has("temperature") {
		d.filled("indoors.temperature", rvalue.Both(d.h.Indoors.Temperature), "a usual winter setting, common practice, no source")
	}
	if out != nil {
		if t, ok := quantity(out, "temperature", "32 °F", rvalue.ParseTemperature); ok {
			d.h.Outdoors.Temperature = out.within("temperature", t, -60, 50)
		}
		if w, ok := quantity(out, "wind", "15 mph", someWind); ok {
			d.h.Outdoors.Wind = w
		}
		if t, ok := quantity(out, "design", "-10 °F", rvalue.ParseTemperature); ok {
			d.h.Outdoors.Design = out.within("design", t, -60, 30)
		}
		if d.h.Outdoors.Design >= d.h.Indoors.Temperature {
			out.fail("design", "%s is not colder than the rooms at %s; give the local heating design temperature", rvalue.Both(d.h.Outdoors.Design), rvalue.Both(d.h.Indoors.Temperature))
		}
		if d.h.Outdoors.Temperature >= d.h.Indoors.Temperature && out.has("temperature") {
			out.fail("temperature", "%s is not colder than the rooms at %s; give a winter temperature", rvalue.Both(d.h.Outdoors.Temperature), rvalue.Both(d.h.Indoors.Temperature))
		}
		out.done()
	}
	if out == nil && !s.has("outdoors") || out != nil && !out.has("temperature") {
		d.filled("outdoors.temperature", rvalue.Both(d.h.Outdoors.Temperature), "a mild winter day, for the temperatures in the walls; it changes R-values little")
	}
	if out == nil && !s.has("outdoors") || out != nil && !out.has("wind") {
		d.filled("outdoors.wind", "winter wind", "that of the surface films' source")
	}
	d.leakage(s)
}

// within refuses a temperature outside a range in °C.
func (s *section) within(key string, t rvalue.Temperature, low, high float64) rvalue.Temperature {
	if c := t.Celsius(); c < low || c > high {
		s.fail(key, "%q is no such temperature of a house; write one from %.0f °C to %.0f °C", s.t.index[key].value.text, low, high)
	}
	return t
}

// mostACH50 is more air changes per hour at 50 Pa than any house has that stands.
const mostACH50 = 100

func (d *decoder) leakage(s *section) {
	l := s.sub("leakage")
	if l == nil {
		if !s.has("leakage") {
			d.filled("leakage", "left out of the sums", `nothing is known of it; a blower-door figure, or a word such as tightness = "drafty", would rank the drafts too`)
		}
		return
	}
	r := &Leakage{Storeys: 1}
	d.h.Leakage = r
	r.Volume, _ = quantity(l, "volume", "7400 ft3", rvalue.ParseVolume)
	r.ACH50, _ = l.number("ach50", 0.1, mostACH50)
	r.Flow50, _ = quantity(l, "flow50", "1200 cfm", someFlow)
	words := envelope.Tightnesses()
	if i, ok := l.choice("tightness", words); ok {
		r.Tightness = words[i]
		n, err := envelope.Described(r.Tightness)
		if err != nil {
			l.fail("tightness", "%s", plain(err))
		}
		d.filled("leakage.ach50", fmt.Sprintf("%.3g", n), fmt.Sprintf("for %q: %s", r.Tightness, envelope.TightnessSource))
	}
	if r.Flow50 > 0 && r.Volume > 0 && r.Flow50 > envelope.ACH50(mostACH50, r.Volume) {
		l.fail("flow50", "%s is more than %d air changes per hour of %s; check both", rvalue.Both(r.Flow50), mostACH50, rvalue.Both(r.Volume))
	}
	l.oneOf("the figure of the leakage", []string{"ach50", "flow50", "tightness"})
	if !l.has("flow50") {
		l.missing("volume", "the volume of the heated rooms is missing, of which air changes are counted; write such as volume = \"7400 ft3\"")
	} else if !l.has("volume") {
		d.filled("leakage.volume", "not given", "without it the code's limit of air changes cannot be held against the flow")
	}
	if v, ok := l.number("storeys", 1, 3); ok {
		r.Storeys = v
	} else if !l.has("storeys") {
		d.filled("leakage.storeys", "1", "none is given")
	}
	if i, ok := l.choice("shelter", []string{"normal", "sheltered", "exposed"}); ok {
		r.Shelter = []envelope.Shelter{envelope.NormalShelter, envelope.WellSheltered, envelope.Exposed}[i]
	} else if !l.has("shelter") {
		d.filled("leakage.shelter", "normal", "none is given")
	}
	l.done()
	if n, err := envelope.Divide(0, r.Storeys, r.Shelter); err == nil {
		d.filled("leakage.divisor", fmt.Sprintf("%.1f", n), "the flow at 50 Pa over the winter's mean flow: the Lawrence Berkeley infiltration factor by storeys and shelter, its climate belt taken as the second of four, from memory")
	}
}

// someWind reads a wind above zero.
func someWind(text string) (rvalue.Speed, error) {
	v, err := rvalue.ParseSpeed(text)
	if err == nil && v == 0 {
		return 0, &rvalue.ParseError{Text: text, Msg: `no wind at all; write the winter wind such as "7 mph", or leave it out for the films' own`}
	}
	return v, err
}

// someFlow reads an air flow above zero.
func someFlow(text string) (rvalue.AirFlow, error) {
	v, err := rvalue.ParseAirFlow(text)
	if err == nil && v == 0 {
		return 0, &rvalue.ParseError{Text: text, Msg: "no flow at all; every house leaks some"}
	}
	return v, err
}

// oneOf asks for exactly one of several keys.
func (s *section) oneOf(what string, keys []string) {
	var given []string
	for _, k := range keys {
		if s.has(k) {
			given = append(given, k)
		}
	}
	switch len(given) {
	case 0:
		s.missing("", "%s is missing; write %s", what, orList(keys))
	case 1:
	default:
		s.fail(given[1], "%s and %s are both given; write one of them", given[0], given[1])
	}
}
