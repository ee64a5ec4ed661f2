package climate

import "github.com/coldseam/coldseam/rvalue"

// Station is a weather station of the embedded normals.
type Station struct {
	WBAN     string // the Weather Bureau's number
	Name     string // "Duluth", "Los Angeles AP"
	State    string // postal code
	County   int    // FIPS number of the county it stands in; 0 on islands outside the county table
	Lat, Lon float64
	row      *stationRow
}

// stationRow is a line of stations_data.go, in the units given there.
type stationRow struct {
	wban, name, state string
	county            int32
	lat, lon          int32
	elevation         int32
	hdd, cdd          int16
	mean, swing, rain [12]int16
	humidity          [24]int8
}

func (r *stationRow) station() Station {
	return Station{
		WBAN: r.wban, Name: r.name, State: r.state, County: int(r.county),
		Lat: float64(r.lat) / 1e4, Lon: float64(r.lon) / 1e4, row: r,
	}
}

// Stations calls yield for every station until it returns false; it is an
// iter.Seq[Station].
func Stations(yield func(Station) bool) {
	for i := range stations {
		if !yield(stations[i].station()) {
			return
		}
	}
}

// Elevation returns the height of the station above the sea.
func (s Station) Elevation() rvalue.Length {
	return rvalue.Length(float64(s.row.elevation) / 10) // dm to m
}

// Normals returns the station's normals of 1981 to 2010. Vapour is an estimate, and
// only there where the source has the humidity: the mean of the vapour at the
// morning's relative humidity and the mean daily minimum, and at the afternoon's and
// the mean daily maximum.
func (s Station) Normals() Normals {
	n := Normals{
		HDD65:     DegreeDays(s.row.hdd) * FahrenheitDay,
		CDD65:     DegreeDays(s.row.cdd) * FahrenheitDay,
		Published: true, Latitude: s.Lat, Elevation: s.Elevation(),
	}
	for i := range n.Mean {
		mean := float64(s.row.mean[i]) / 10
		swing := float64(s.row.swing[i]) / 10
		n.Mean[i] = rvalue.FromFahrenheit(mean)
		n.Swing[i] = rvalue.TemperatureDifference(swing) * rvalue.FahrenheitDegree
		n.Rain[i] = float64(s.row.rain[i]) / 100 * 25.4
		if morning := s.row.humidity[i]; morning > 0 {
			low := rvalue.FromFahrenheit(mean - swing/2).Celsius()
			high := rvalue.FromFahrenheit(mean + swing/2).Celsius()
			n.Vapour[i] = (float64(morning)*si.saturation(low) + float64(s.row.humidity[12+i])*si.saturation(high)) / 200
		}
	}
	return n
}
