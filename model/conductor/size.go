package conductor

import "example.com/lugbook/model/unit"

// ForAmpacity is the thinnest AWG size that may carry a current in amperes all the
// time, by insulation temperature and ambient in C. It reports false if even 4/0 is
// too thin.
func ForAmpacity(amperes, insulation, ambient float64) (unit.Gauge, bool) {
	for _, size := range unit.AWGSizes() {
		if a, err := Ampacity(size, insulation, ambient); err == nil && a.Amperes >= amperes {
			return size, true
		}
	}
	return unit.Gauge{}, false
}

// ForDrop is the thinnest AWG size of flexible cable that drops no more than a
// voltage at a current, over a length in metres out and back, at a conductor
// temperature in C. It reports false if even 4/0 drops more.
func ForDrop(amperes, loopMetres, dropVolts, celsius float64) (unit.Gauge, bool) {
	for _, size := range unit.AWGSizes() {
		perMetre, ok := OhmsPerMetre(size, celsius)
		if ok && amperes*loopMetres*perMetre <= dropVolts {
			return size, true
		}
	}
	return unit.Gauge{}, false
}

// AreaForDrop is the area in mm2 of flexible copper cable that drops a voltage at a
// current, over a length in metres out and back, at a conductor temperature in C: the
// circular mil formula K I L / E of ABYC E-11, with K from the constants of copper.
// The voltage must be above 0.
func AreaForDrop(amperes, loopMetres, dropVolts, celsius float64) float64 {
	return StrandedAdder * SolidOhmsPerMetre(1, celsius) * amperes * loopMetres / dropVolts
}

// WorkingCelsius is the temperature in C that a conductor settles at with a current in
// amperes, by what it may carry at that ambient and the temperature that this takes it
// to: heat goes with the square of the current. Beyond the ampacity it is above the
// insulation's limit. The ampacity must be above 0.
func WorkingCelsius(amperes, ampacity, insulation, ambient float64) float64 {
	return ambient + (insulation-ambient)*(amperes/ampacity)*(amperes/ampacity)
}
