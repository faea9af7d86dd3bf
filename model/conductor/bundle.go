package conductor

// loomCurve is how much a wire among others may carry of what it carries by itself, by
// the number of wires in the bundle and how far all are loaded: the curve of
// MIL-W-5088L as digits.
var loomCurve = []struct {
	wires int
	at    [5]float64 // loaded to 20, 40, 60, 80, 100 %
}{
	{2, [5]float64{.9675, .92, .91, .87, .825}},
	{3, [5]float64{.935, .855, .815, .77, .725}},
	{5, [5]float64{.875, .76, .695, .65, .61}},
	{8, [5]float64{.795, .6675, .595, .5425, .5125}},
	{10, [5]float64{.755, .6225, .55, .5, .465}},
	{15, [5]float64{.67, .54, .465, .42, .385}},
}

// loomSteps is the number of loadings that the curve is given for, evenly up to 1.
const loomSteps = 5

// LoomFactor is what MIL-W-5088L leaves of a wire's ampacity in a bundle of wires that
// are loaded to a share of what each may carry: a second opinion beside BundleFactor,
// for it knows no voltage. Between the printed points it takes the lower. It reports
// false beyond 15 wires.
func LoomFactor(wires int, loading float64) (float64, bool) {
	if wires < 2 {
		return 1, true
	}
	for _, row := range loomCurve {
		if wires > row.wires {
			continue
		}
		for i, factor := range row.at {
			if loading <= float64(i+1)/loomSteps {
				return factor, true
			}
		}
		return row.at[loomSteps-1], true
	}
	return 0, false
}
