package season_test

import (
	"testing"

	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/rvalue"
)

// TestUnits: NIST SP 811, Appendix B: the kilowatt-hour is 3.6 MJ exactly, the
// International Table therm 1.055 056 E+08 J, the ton of refrigeration 3.516 853 kW,
// the Btu an hour 0.293 071 1 W; the pound 0.453 592 37 kg exactly.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		name            string
		got, want, half float64
	}{
		{"kWh in MJ", float64(season.KilowattHour) / 1e6, 3.6, 0},
		{"therm in MJ", float64(season.Therm) / 1e6, 105.5056, 0.00005},
		{"kWh in Btu", season.KilowattHour.Btu(), 3412.142, 0.0005},
		{"therm in kWh", season.Therm.KWh(), 29.30711, 0.000005},
		{"MMBtu in therm", season.MMBtu.Therms(), 10, rounding},
		{"MMBtu in kWh", season.MMBtu.KWh(), 293.0711, 0.00005},
		{"MMBtu in Btu", season.MMBtu.Btu(), 1e6, 1e-9},
		{"kWh in MMBtu", season.KilowattHour.MMBtu(), 0.003412142, 0.5e-9},
		{"Btu/h in W", season.BtuPerHour.SI(), 0.2930711, 0.00000005},
		{"ton in kW", season.Ton.SI() / 1000, 3.516853, 0.0000005},
		{"ton in Btu/h", season.Ton.IP(), 12000, 1e-9},
		{"kg in lb", season.Kilogram.IP(), 2.204623, 0.0000005},
		{"lb/MMBtu in kg/kWh", season.PoundPerMMBtu.SI(), 0.45359237 * 0.003412142, 1e-9},
		{"lb/kWh in lb/MMBtu", season.PoundPerKWh.IP(), 293.0711, 0.00005},
	} {
		near(t, c.name, c.got, c.want, c.half)
	}
}

func TestPrinting(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{(62.3456 * season.MMBtu).In(rvalue.IP), "62.3 MMBtu"},
		{(12345.6 * season.KilowattHour).In(rvalue.SI), "12346 kWh"},
		{(0.5 * season.KilowattHour).String(), "0.500 kWh"},
		{season.Energy(0).In(rvalue.IP), "0 MMBtu"},
		{(40325 * season.BtuPerHour).In(rvalue.IP), "40325 Btu/h"},
		{(850 * season.Watt).String(), "850 W"},
		{(-9.987 * season.Watt).String(), "-9.99 W"},
		{(9081 * season.Pound).In(rvalue.IP), "9081 lb"},
		{(9081 * season.Pound).String(), "4119 kg"},
		{(117 * season.PoundPerMMBtu).In(rvalue.IP), "117 lb/MMBtu"},
		{(117 * season.PoundPerMMBtu).String(), "0.181 kg/kWh"},
	} {
		if c.got != c.want {
			t.Errorf("printed %q, want %q", c.got, c.want)
		}
	}
}
