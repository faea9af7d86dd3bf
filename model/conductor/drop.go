package conductor

// AreaForDrop is the area in mm2 of flexible copper cable that drops a voltage at a
// current, over a length in metres out and back, at a conductor temperature in C: the
// circular mil formula K I L / E of ABYC E-11, with K from the constants of copper.
// The voltage must be above 0.
func AreaForDrop(amperes, loopMetres, dropVolts, celsius float64) float64 {
	return StrandedAdder * SolidOhmsPerMetre(1, celsius) * amperes * loopMetres / dropVolts
}
