package motion

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

const numberPattern = `^\s*([+-]?(?:[0-9]{1,7}(?:\.[0-9]{1,6})?|\.[0-9]{1,6}))\s*`

var (
	measureForm = regexp.MustCompile(numberPattern + `([A-Za-z/%]*)\s*$`)
	ratioForm   = regexp.MustCompile(`^\s*1\s*(?:in|:)\s*([0-9]{1,4}(?:\.[0-9]{1,3})?)\s*$`)
)

// The spellings of the units, with what one is worth in SI.
var (
	massUnits  = map[string]float64{"kg": 1, "t": 1000, "lb": kgPerPound, "lbs": kgPerPound}
	speedUnits = map[string]float64{
		"km/h": 1000.0 / 3600, "kmh": 1000.0 / 3600, "kph": 1000.0 / 3600, "mph": metresPerMile / 3600, "m/s": 1,
	}
)

const (
	kgPerPound    = 0.45359237 // by definition
	metresPerMile = 1609.344   // by definition
)

// The largest values that are read: beyond any cart.
const (
	mostMass  = 1e5 // kg
	mostSpeed = 100 // m/s
)

// ParseMass reads a mass such as 780 kg or 1700 lb, in kilograms.
func ParseMass(text string) (float64, error) {
	kg, ok := measure(text, massUnits)
	if !ok || kg <= 0 || kg > mostMass {
		return 0, fmt.Errorf("%q is not a mass: expected one such as 780 kg or 1700 lb", text)
	}
	return kg, nil
}

// ParseSpeed reads a speed such as 15 km/h, 9 mph or 4 m/s, in metres per second.
func ParseSpeed(text string) (float64, error) {
	speed, ok := measure(text, speedUnits)
	if !ok || speed <= 0 || speed > mostSpeed {
		return 0, fmt.Errorf("%q is not a speed: expected one such as 15 km/h, 9 mph or 4 m/s", text)
	}
	return speed, nil
}

// ParseGrade reads a grade such as 12 % or 1 in 8, as rise over run. Negative is
// downhill.
func ParseGrade(text string) (float64, error) {
	if m := ratioForm.FindStringSubmatch(text); m != nil {
		if run, err := strconv.ParseFloat(m[1], 64); err == nil && run >= 1 {
			return 1 / run, nil
		}
	}
	grade, ok := measure(text, map[string]float64{"%": 0.01})
	if !ok || grade < -1 || grade > 1 {
		return 0, fmt.Errorf("%q is not a grade: expected one such as 12 %% or 1 in 8", text)
	}
	return grade, nil
}

// measure reads a number with one of the units.
func measure(text string, units map[string]float64) (float64, bool) {
	m := measureForm.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	worth, ok := units[strings.ToLower(m[2])]
	n, err := strconv.ParseFloat(m[1], 64)
	return n * worth, ok && err == nil
}
