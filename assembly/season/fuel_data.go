package season

// content is the heat in a unit of fuel, higher heating value.
type content struct {
	unit         Unit
	heat         Energy
	text         string
	source, date string
}

// fuelDefault is what is taken for a fuel when nothing is said. The texts stand
// ready so that nothing has to be printed for a figure that nobody reads.
type fuelDefault struct {
	unit                               Unit // in which it is mostly sold
	price                              float64
	priceOf, priceText                 string
	priceSource, priceDate             string // no source: there is no default
	heatOf                             string
	heat                               []content
	co2                                Emission
	co2Of, co2Text, co2Source, co2Date string
}

const (
	noSource = "common practice, no source"
	eiaCO2   = "EIA, carbon dioxide emissions coefficients"
	eiaHeat  = "a page quoting EIA's heat contents"
)

// fuelDefaults are US residential averages. A forecast of 11.69 $ per mcf of gas
// for the winter after is newer, but it was not paid. For heating oil and wood no
// price of these years was found.
var fuelDefaults = [...]fuelDefault{
	NaturalGas: {
		unit: PerMcf, price: 14.85, priceOf: "price of gas", priceText: "14.85 $ per mcf",
		priceSource: "EIA, Today in Energy, 19 Oct 2023: US residential average", priceDate: "winter Nov 2022 to Mar 2023",
		heatOf: "heat content of gas",
		// 1025 Btu/ft³ in 2012 (EIA), 1026 by default (40 CFR 98, subpart NN).
		heat: []content{{PerMcf, 1.037 * MMBtu, "1037 Btu per ft³", eiaHeat, "2020"}},
		co2:  117.00 * PoundPerMMBtu, co2Of: "carbon dioxide of gas", co2Text: "117.00 lb per million Btu", co2Source: eiaCO2, co2Date: "Feb 2016",
	},
	Propane: {
		unit: PerGallon, price: 2.674, priceOf: "price of propane", priceText: "2.674 $ per gallon",
		priceSource: "EIA, Heating Oil and Propane Update: US residential average", priceDate: "30 Mar 2026",
		heatOf: "heat content of propane",
		heat:   []content{{PerGallon, 91452 * Btu, "91452 Btu per gallon", eiaHeat, "2020"}},
		co2:    139.05 * PoundPerMMBtu, co2Of: "carbon dioxide of propane", co2Text: "139.05 lb per million Btu", co2Source: eiaCO2, co2Date: "Feb 2016",
	},
	HeatingOil: {
		unit:   PerGallon,
		heatOf: "heat content of heating oil",
		heat:   []content{{PerGallon, 138500 * Btu, "138500 Btu per gallon", eiaHeat, "2018 to 2020"}},
		// 40 CFR 98, Table C-1, has 1.1 % more.
		co2: 161.30 * PoundPerMMBtu, co2Of: "carbon dioxide of heating oil", co2Text: "161.30 lb per million Btu", co2Source: eiaCO2, co2Date: "Feb 2016",
	},
	Electricity: {
		unit: PerKWh, price: 0.1798, priceOf: "price of electricity", priceText: "0.1798 $ per kWh",
		priceSource: "a page quoting EIA: US residential average (Louisiana 0.1239, Hawaii 0.3974)", priceDate: "Oct 2025",
		co2: 0.81 * PoundPerKWh, co2Of: "carbon dioxide of electricity", co2Text: "0.81 lb per kWh",
		co2Source: "EIA, frequently asked questions: US average of generation", co2Date: "2023",
	},
	Wood: {
		unit:   PerCord,
		heatOf: "heat content of wood",
		heat:   []content{{PerCord, 20 * MMBtu, "20 million Btu per cord", "EIA, nominal; wet or soft wood has less", ""}},
		co2:    93.80 * KilogramPerMMBtu, co2Of: "carbon dioxide of wood", co2Text: "93.80 kg per million Btu",
		co2Source: "40 CFR 98, Table C-1, wood and wood residuals, from memory",
	},
	Pellets: {
		unit:   PerTon,
		heatOf: "heat content of pellets",
		heat:   []content{{PerTon, 16 * MMBtu, "16 million Btu per ton", noSource, ""}},
		co2:    93.80 * KilogramPerMMBtu, co2Of: "carbon dioxide of pellets", co2Text: "93.80 kg per million Btu",
		co2Source: "40 CFR 98, Table C-1, wood and wood residuals, from memory",
	},
	DistrictHeat: {unit: PerMMBtu},
}
