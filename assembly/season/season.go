package season

import (
	"errors"
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// House is a house in its place, with what heats it.
type House struct {
	Ranking *envelope.Ranking // kept by the Year, so it must not be changed afterwards
	Weather *climate.Prepared
	Indoors rvalue.Temperature // mean through the heating season, 0 to 40 °C; 0: 68 °F

	// Gains are the mean heat for nothing; nil: by Floor, Bedrooms and the windows
	// of the Ranking. Floor 0 is 1500 ft², Bedrooms 0 is 3.
	Gains    *Gains
	Floor    rvalue.Area
	Bedrooms int

	Fuel  Fuel  // its zero value is the plant's fuel, else gas
	Plant Plant // its zero value is what mostly goes with the fuel

	Cooling  *Cooling // nil: none
	Currency string   // of all money; "" is "$"

	// From says how near the Weather is, for the Trust. See FromOf.
	From From
}

// Use is what a year takes, of the whole house or a part of it.
type Use struct {
	Heat   Energy  // delivered to the rooms; for cooling, taken out of them
	Bought Energy  // as fuel (higher heating value) or electricity
	Units  float64 // the same in units of the price, see Year.Unit
	Money  float64 // in Year.Currency; 0 where no price is known
	CO2    Mass    // 0 where no factor is known
}

func (u Use) plus(v Use) Use {
	return Use{u.Heat + v.Heat, u.Bought + v.Bought, u.Units + v.Units, u.Money + v.Money, u.CO2 + v.CO2}
}

func (u Use) minus(v Use) Use {
	return Use{u.Heat - v.Heat, u.Bought - v.Bought, u.Units - v.Units, u.Money - v.Money, u.CO2 - v.CO2}
}

// Row is the year of one row of the ranking.
type Row struct {
	Name    string
	In      string // the part that an opening sits in
	UA      rvalue.Conductance
	Share   float64 // of the whole heat, which is that of the UA
	Heating Use
	Cooling Use
}

// Year is what a mean year of a house takes.
type Year struct {
	Rows    []Row // in the order of the ranking
	Heating Use   // the sum of the rows, in their order
	Cooling Use   // the same; zero without cooling

	UA         rvalue.Conductance
	Indoors    rvalue.Temperature
	Gains      Gains
	Balance    rvalue.Temperature // above this outdoor mean of a day the gains are enough
	DegreeDays climate.DegreeDays // heating degree days at Balance

	CoolingBase       rvalue.Temperature // 0 without cooling
	CoolingDegreeDays climate.DegreeDays

	Fuel        FuelKind
	Plant       PlantKind
	Performance float64 // heat delivered over energy bought, through the season
	Backup      float64 // share of the heat from resistance because the heat pump is too small

	Unit        Unit // of Use.Units in Heating
	CoolingUnit Unit // of Use.Units in Cooling; 0 without cooling
	Currency    string
	MoneyKnown  bool // prices of all that is bought are; else their Money is 0
	CO2Known    bool
	Trust       Trust // of the heat, and of all that follows from it

	Defaults []Default
	Remarks  []envelope.Remark

	house  House // with everything filled in
	supply supply
	power  supply // electricity for cooling
}

const (
	dollar = "$"
	day    = 24 * hour // s
	// lowest base that package climate sums degree days at; it never gets as cold.
	lowestBase = -60.0 // °C
)

// Method says what a Year goes by.
const Method = "heat is UA times the degree days at the house's balance temperature, indoors less gains over UA (ASHRAE Handbook—Fundamentals, variable-base degree days; days from monthly means by Schoenau and Kehrig)"

// usualIndoors is the indoor temperature when none is given.
var usualIndoors = rvalue.FromFahrenheit(68)

// Year computes what a mean year takes: the house's balance temperature
//
//	t_balance = t_indoors − gains/UA
//
// (ASHRAE Handbook of Fundamentals, variable-base degree-day method), the degree days
// at it, and the heat UA·DD through the house. Each row's heat is UA of the row times
// the same degree days, so the gains are shared out among the rows in proportion to
// their UA, and the rows sum to the house.
//
// The error tells what is impossible: an efficiency over 100 %, a COP below 1 or over
// Carnot's, a negative price, gains or temperatures out of range. A price or emission
// that is not known is no error: MoneyKnown or CO2Known is false and a remark says so.
func (h House) Year() (*Year, error) {
	if err := h.check(); err != nil {
		return nil, err
	}
	y := &Year{Currency: h.Currency, Defaults: make([]Default, 0, 8)}
	if strings.TrimSpace(y.Currency) == "" {
		y.Currency = dollar
	}
	if h.Indoors == 0 {
		h.Indoors = usualIndoors
		y.Defaults = append(y.Defaults, Default{Code: "indoors", What: "indoor temperature", Value: "68 °F", Source: noSource})
	}
	var err error
	if y.Gains, err = h.gains(&y.Defaults); err != nil {
		return nil, err
	}
	if h.Fuel.Kind == 0 {
		if h.Fuel != (Fuel{}) {
			return nil, errors.New("season: a price, heat content or emission of no fuel; name the fuel too")
		}
		h.Fuel.Kind = NaturalGas
		if h.Plant.Kind == Resistance || h.Plant.Kind == HeatPump {
			h.Fuel.Kind = Electricity
		} else if h.Plant.Kind == HeatExchanger {
			h.Fuel.Kind = DistrictHeat
		}
		y.Defaults = append(y.Defaults, Default{Code: "fuel", What: "fuel", Value: h.Fuel.Kind.String(), Source: noSource})
	}
	if y.supply, err = h.Fuel.supply(y.Currency, &y.Defaults, y.remark); err != nil {
		return nil, err
	}
	if h.Plant, err = h.Plant.fill(h.Fuel.Kind, &y.Defaults, y.remark); err != nil {
		return nil, err
	}
	if err := y.fillCooling(&h); err != nil {
		return nil, err
	}
	y.house = h
	y.Indoors, y.Fuel, y.Plant, y.Unit = h.Indoors, h.Fuel.Kind, h.Plant.Kind, y.supply.unit
	y.MoneyKnown, y.CO2Known = y.supply.moneyKnown, y.supply.co2Known
	if h.Cooling != nil {
		y.CoolingUnit = y.power.unit
		y.MoneyKnown, y.CO2Known = y.MoneyKnown && y.power.moneyKnown, y.CO2Known && y.power.co2Known
	}
	return y, y.fillRows()
}

func (h *House) check() error {
	switch {
	case h.Ranking == nil || len(h.Ranking.Rows) == 0:
		return errors.New("season: no ranking, take one from envelope.Rank")
	case h.Weather == nil || h.Weather.Scale() == 0:
		return errors.New("season: no weather, prepare a place's normals")
	case h.Indoors != 0 && !(h.Indoors.Celsius() >= 0 && h.Indoors.Celsius() <= 40):
		return fmt.Errorf("season: an indoor temperature of %s °C, give 0 to 40 °C", figure(h.Indoors.Celsius()))
	case h.From > OwnStation:
		return fmt.Errorf("season: no such nearness of weather, %d", h.From)
	}
	for i := range h.Ranking.Rows {
		if ua := h.Ranking.Rows[i].UA.SI(); !finite(ua) {
			return fmt.Errorf("season: %q has a UA of %v W/K, it must be finite", h.Ranking.Rows[i].Name, ua)
		}
	}
	return nil
}

func (y *Year) remark(code, text string) {
	y.Remarks = append(y.Remarks, envelope.Remark{Code: code, Text: text})
}

// state is how a house of a certain UA goes through the year.
type state struct {
	ua        rvalue.Conductance
	balance   rvalue.Temperature
	heating   climate.DegreeDays
	cooling   climate.DegreeDays
	plant     performance
	cooled    bool
	coolRatio float64
}

// at returns the state of the house with another UA, its gains and plant as they are.
func (y *Year) at(ua rvalue.Conductance) (state, error) {
	if v := ua.SI(); !(v > 0) || !finite(v) {
		return state{}, fmt.Errorf("season: the rows add up to %v W/K, it must be positive and finite", v)
	}
	s := state{ua: ua, balance: balance(y.house.Indoors, ua, y.Gains.Internal+y.Gains.Solar)}
	dd, err := y.house.Weather.Year(s.balance)
	if err != nil {
		return state{}, err
	}
	s.heating = dd.Heating
	if s.plant, err = y.house.Plant.perform(y.house.Weather, ua, y.house.Indoors, s.balance); err != nil {
		return state{}, err
	}
	if c := y.house.Cooling; c != nil {
		dd, err := y.house.Weather.Year(c.Base)
		if err != nil {
			return state{}, err
		}
		s.cooled, s.cooling, s.coolRatio = true, dd.Cooling, c.ratio()
	}
	return s, nil
}

// balance returns the outdoor temperature at which the gains make up for the loss.
// Where they would do so below any weather, it is that bound.
func balance(indoors rvalue.Temperature, ua rvalue.Conductance, gains Power) rvalue.Temperature {
	// ASHRAE Handbook of Fundamentals, balance point: t_bal = t_i − q_gain/K_tot
	drop := rvalue.TemperatureDifference(gains.SI()/ua.SI()) * rvalue.Kelvin
	return max(indoors.Add(-drop), rvalue.FromCelsius(lowestBase))
}

// through returns the heat that a conductance lets through over degree days.
func through(ua rvalue.Conductance, dd climate.DegreeDays) Energy {
	// Degree-day method: E = 24 h/d · UA · DD
	return Energy(ua.SI()*dd.SI()*day) * Joule
}

// uses returns what a conductance takes in a house of state s.
func (y *Year) uses(s *state, ua rvalue.Conductance) (heating, cooling Use) {
	heating = y.supply.use(through(ua, s.heating), s.plant.factor)
	if s.cooled {
		cooling = y.power.use(through(ua, s.cooling), s.coolRatio)
	}
	return heating, cooling
}

// fillRows computes the rows and sums them up.
func (y *Year) fillRows() error {
	from := y.house.Ranking.Rows
	for i := range from {
		y.UA += from[i].UA
	}
	s, err := y.at(y.UA)
	if err != nil {
		return err
	}
	y.Balance, y.DegreeDays, y.Performance, y.Backup = s.balance, s.heating, s.plant.factor, s.plant.backup
	if s.cooled {
		y.CoolingBase, y.CoolingDegreeDays = y.house.Cooling.Base, s.cooling
	}
	y.Rows = make([]Row, len(from))
	for i := range from {
		r := &y.Rows[i]
		r.Name, r.In, r.UA = from[i].Name, from[i].In, from[i].UA
		r.Share = r.UA.SI() / y.UA.SI()
		r.Heating, r.Cooling = y.uses(&s, r.UA)
		y.Heating, y.Cooling = y.Heating.plus(r.Heating), y.Cooling.plus(r.Cooling)
	}
	if y.Plant == HeatPump && y.Performance > highCOP {
		y.remark("cop-high", fmt.Sprintf("a seasonal COP of %s is more than heat pumps on sale reach (%s); check the figure", figure(y.Performance), noSource))
	}
	if y.Backup > 0 {
		y.remark("backup", fmt.Sprintf("the heat pump is too small on the coldest days: resistance gives %s %% of the heat", figure(100*y.Backup)))
	}
	if y.Balance.Celsius() <= lowestBase {
		y.remark("no-heating", "the gains alone keep the house warm in any weather; check the gains and the parts")
	}
	y.Trust, err = y.trust(&s)
	return err
}
