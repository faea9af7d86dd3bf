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
