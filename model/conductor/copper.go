package conductor

import "example.com/lugbook/model/unit"

// Annealed copper, IEC 60028: resistivity at 20 C in ohm metres, and the temperature
// coefficient of its resistance per degree, referred to 20 C.
const (
	Resistivity20          = 1.7241e-8
	TemperatureCoefficient = 0.00393
)

// StrandedAdder is how much longer the strands of a cable are than the cable: 2 % for
// concentric lay, the practice of ASTM B8. With it the formula gives the stranded
// column of NEC chapter 9 table 8 within 0.5 %.
const StrandedAdder = 1.02

// AtTemperature refers a resistance of copper at 20 C to another temperature.
func AtTemperature(ohms20, celsius float64) float64 {
	return ohms20 * (1 + TemperatureCoefficient*(celsius-20))
}

// SolidOhmsPerMetre is the resistance of a solid copper wire of an area in mm2 at a
// temperature. The area must be above 0.
func SolidOhmsPerMetre(areaMM2, celsius float64) float64 {
	return AtTemperature(Resistivity20/(areaMM2*1e-6), celsius)
}

// OhmsPerMetre is the resistance of flexible cable at a temperature. For AWG it is
// the formula with StrandedAdder. For mm2 it is the greatest that IEC 60228 allows a
// class 5 conductor of that size, or the formula for sizes outside that table. It
// reports false if the gauge is not stated.
func OhmsPerMetre(gauge unit.Gauge, celsius float64) (float64, bool) {
	if gauge.IsZero() {
		return 0, false
	}
	if ohmsPerKM, ok := Class5(gauge); ok {
		return AtTemperature(ohmsPerKM/1000, celsius), true
	}
	return StrandedAdder * SolidOhmsPerMetre(gauge.AreaMM2(), celsius), true
}

// Resistance is the resistance in ohms of a length of flexible cable at a temperature.
// It reports false if the gauge or the length is not stated.
func Resistance(gauge unit.Gauge, length unit.Length, celsius float64) (float64, bool) {
	perMetre, ok := OhmsPerMetre(gauge, celsius)
	return perMetre * length.Metres(), ok && !length.IsZero()
}

// class5 is IEC 60228, class 5 (flexible), plain annealed copper: the greatest
// resistance at 20 C in ohms per kilometre by nominal area in mm2.
var class5 = []struct{ mm2, ohmsPerKM float64 }{
	{0.5, 39.0}, {0.75, 26.0}, {1, 19.5}, {1.5, 13.3}, {2.5, 7.98}, {4, 4.95}, {6, 3.30}, {10, 1.91},
	{16, 1.21}, {25, 0.780}, {35, 0.554}, {50, 0.386}, {70, 0.272}, {95, 0.206}, {120, 0.161},
}

// Class5 is the greatest resistance at 20 C, in ohms per kilometre, that IEC 60228
// allows a flexible conductor (class 5, plain copper) of a nominal metric size. It
// reports false for AWG sizes and for areas that the standard does not list.
func Class5(gauge unit.Gauge) (ohmsPerKM float64, ok bool) {
	if gauge.IsAWG() {
		return 0, false
	}
	for _, row := range class5 {
		if gauge.AreaMM2() == row.mm2 {
			return row.ohmsPerKM, true
		}
	}
	return 0, false
}

// MetricSizes lists the nominal sizes of IEC 60228 class 5 from 0.5 to 120 mm2.
func MetricSizes() []unit.Gauge {
	sizes := make([]unit.Gauge, len(class5))
	for i, row := range class5 {
		sizes[i] = unit.MM2(row.mm2)
	}
	return sizes
}
