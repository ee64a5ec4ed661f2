// Package season says what a mean year of heat costs a house where it stands, and
// what a fix would save: it joins the ranking of an envelope (package envelope) with
// the prepared weather of a place (package climate).
//
//	y, err := season.House{Ranking: ranking, Weather: &weather, Plant: …}.Year()
//	y.Heating.Heat, y.Heating.Money      // of the house, and in y.Rows of each part
//	s, err := y.Meeting(row)             // less a year if that row just met its target
//	p, err := s.Payback(4000)
//	l, err := y.Load(0)                  // what the heater must deliver in the cold
//
// # Method
//
// Degree days at the house's own base (ASHRAE Handbook of Fundamentals, the
// variable-base degree-day method). The outdoor temperature at which the gains make
// up for the loss, t_balance = t_indoors − gains/UA, is the base, and the heat of the
// season is 24 h/d · UA · DD(t_balance).
//
// Every row of the ranking gets the heat of its UA at the same base. The gains are so
// shared out in proportion to UA, and the rows sum to the house to the last bit. What
// goes away when a row is fixed is another question: the gains stay, the house
// balances at a lower temperature and is heated on fewer days. [Year.Meeting],
// [Year.Saving] and [Year.After] therefore compute the house twice, before and after.
// They save more than the row's part of the heat that its UA was of, and two fixes
// together save a little less than each alone in all.
//
// # Plant and fuel
//
// Furnaces, boilers and stoves go by their efficiency (AFUE), resistance gives what it
// takes, a heat pump has one COP for the season, an HSPF or HSPF2, or a line of COP by
// outdoor temperature, which is followed through the place's year of daily means. If
// the line also has capacities, resistance helps out where they are too small. No heat
// pump is taken that would beat Carnot; its source is the outdoor air, which
// is the easier bound for one with its source in the ground as well.
//
// What is not given has a default, with its source and date in [Year.Defaults]: prices
// are US residential averages of years that are stated there, and move. Heating oil,
// wood, pellets and district heat have none: give it, or the money stays unknown.
// Money is a plain number in the [House]'s Currency.
//
// # Trust
//
// [Trust] is an interval about a figure: what package climate measured of degree days
// from monthly means and from the nearest station, and default gains that may be off
// by half. For a predicted saving its low end is that times 0.39, the share of
// predicted savings that a randomised trial measured. How well the parts are known,
// and how people live, is not in it.
//
// # What it does not cover
//
// Heat storage and setbacks of the thermostat at night. Ducts and pipes outside the
// heated rooms, fans, pumps and pilot lights: lower the efficiency for them. Hot water.
// The sun by month and orientation, as gains are one mean of the season. Wind and
// cold that leak more air on the coldest days: the UA of leakage is the season's mean,
// in the design load too. Ground floors follow the outdoor air at once, though the
// soil lags by months. Frost on a heat pump's coil, beyond what its line says, and the
// cold of the night, as days count by their mean. Standing charges, tariffs by hour
// and by step, interest and rising prices. Carbon dioxide is that of burning, or of
// generation at the US average, without what fuel costs to bring.
// [Cooling] leaves out sun and moisture and so is a lower bound or an order of size.
//
// Combustion appliances in a house that is made tighter need a check of their draft
// by a licensed trade.
package season
