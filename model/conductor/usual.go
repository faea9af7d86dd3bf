package conductor

import "example.com/lugbook/model/unit"

// usualFuses are the fuses of the wire and circuit protector chart of FAA AC 43.13-1B, table
// 11-3, column fuse, thinnest wire first.
var usualFuses = []struct {
	gauge   unit.Gauge
	amperes float64
}{
	{unit.AWG(22), 5}, {unit.AWG(20), 5}, {unit.AWG(18), 10}, {unit.AWG(16), 10}, {unit.AWG(14), 15}, {unit.AWG(12), 20}, {unit.AWG(10), 30},
	{unit.AWG(8), 50}, {unit.AWG(6), 70}, {unit.AWG(4), 70}, {unit.AWG(2), 100}, {unit.AWG(1), 150}, {unit.AWG(0), 150},
}

// UsualFuse is the rating in amperes of the fuse that FAA AC 43.13-1B table 11-3 puts before a
// wire: that of the next thinner wire of the chart. It is false for a wire thinner than 22 AWG.
func UsualFuse(g unit.Gauge) (amperes float64, ok bool) {
	for _, row := range usualFuses {
		if g.Compare(row.gauge) < 0 {
			break
		}
		amperes, ok = row.amperes, true
	}
	return amperes, ok
}
