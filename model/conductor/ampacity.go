package conductor

import (
	"fmt"
	"math"

	"example.com/lugbook/model/unit"
)

// TableAmbient is the ambient temperature in C that the ampacity table holds for, and
// EngineSpace the one that its factors for engine spaces stand for (33 CFR 183.425).
const (
	TableAmbient = 30
	EngineSpace  = 50
)

// columns are the insulation temperatures of the ampacity table in C, with the
// factor in engine spaces, 33 CFR 183.425 table 5, note 1.
var columns = []struct {
	celsius  int
	factor   float64
	recalled bool // put down from memory
}{
	{60, 0.58, true}, {75, 0.75, true}, {80, 0.78, true}, {90, 0.82, true},
	{105, 0.85, false}, {125, 0.89, true}, {200, 1.00, true},
}

// ampacities is 33 CFR 183.425 table 5: allowable amperes of copper conductors in an
// ambient of 30 C, by AWG number (0 to -3 are 1/0 to 4/0), thinnest first.
var ampacities = []struct {
	awg     int
	amperes [7]float64
}{
	{18, [7]float64{10, 10, 15, 20, 20, 25, 25}},
	{16, [7]float64{15, 15, 20, 25, 25, 30, 35}},
	{14, [7]float64{20, 20, 25, 30, 35, 40, 45}},
	{12, [7]float64{25, 25, 35, 40, 45, 50, 55}},
	{10, [7]float64{40, 40, 50, 55, 60, 70, 70}},
	{8, [7]float64{55, 65, 70, 70, 80, 90, 100}},
	{6, [7]float64{80, 95, 100, 100, 120, 125, 135}},
	{4, [7]float64{105, 125, 130, 135, 160, 170, 180}},
	{3, [7]float64{120, 145, 150, 155, 180, 195, 210}},
	{2, [7]float64{140, 170, 175, 180, 210, 225, 240}},
	{1, [7]float64{165, 195, 210, 210, 245, 265, 280}},
	{0, [7]float64{195, 230, 245, 245, 285, 305, 325}},
	{-1, [7]float64{225, 265, 285, 285, 330, 355, 370}},
	{-2, [7]float64{260, 310, 330, 330, 385, 410, 430}},
	{-3, [7]float64{300, 360, 385, 385, 445, 475, 510}},
}

// Allowance is the current that a conductor may carry, and how it was found.
type Allowance struct {
	Amperes float64    // after the ambient factor
	Table   float64    // before it, as printed in the table
	Row     unit.Gauge // AWG row of the table
	Column  int        // insulation temperature of the column in C
	Factor  float64    // for the ambient
}

// Ampacity is the current in amperes that a single copper conductor may carry all the
// time, by its insulation temperature and the ambient in C (33 CFR 183.425 table 5).
//
// A metric or odd size counts as the next smaller AWG size by area, an insulation
// temperature between two columns as the lower. Above 30 C the ambient factor is
// sqrt((insulation - ambient) / (insulation - 30)), the equation of NEC 310.15(B); from
// 50 C up it is at most the printed factor for engine spaces. An ambient below 30 C
// earns nothing. The error says what the table does not cover.
func Ampacity(gauge unit.Gauge, insulation, ambient float64) (Allowance, error) {
	if gauge.IsZero() {
		return Allowance{}, fmt.Errorf("the conductor size is not stated: state it to get an ampacity")
	}
	row, column := -1, -1
	for i, r := range ampacities {
		if unit.AWG(r.awg).Compare(gauge) <= 0 {
			row = i
		}
	}
	for i, c := range columns {
		if float64(c.celsius) <= insulation {
			column = i
		}
	}
	if row < 0 {
		return Allowance{}, fmt.Errorf("no ampacity is published for %s: the table begins at 18 AWG", gauge)
	}
	if column < 0 {
		return Allowance{}, fmt.Errorf("no ampacity is published for insulation of %g C: the table begins at 60 C", insulation)
	}
	factor := ambientFactor(column, ambient)
	table := ampacities[row].amperes[column]
	return Allowance{
		Amperes: table * factor, Table: table, Row: unit.AWG(ampacities[row].awg),
		Column: columns[column].celsius, Factor: factor,
	}, nil
}

func ambientFactor(column int, ambient float64) float64 {
	if ambient <= TableAmbient {
		return 1
	}
	insulation := float64(columns[column].celsius)
	factor := math.Sqrt(max(0, insulation-ambient) / (insulation - TableAmbient))
	if ambient >= EngineSpace {
		factor = min(factor, columns[column].factor)
	}
	return factor
}

// EngineSpaceFactor is the printed factor for engine spaces (50 C) of an insulation
// temperature that the table has a column for, 33 CFR 183.425 table 5 note 1. Recalled
// is true for the factors put down from memory: all but the one for 105 C.
func EngineSpaceFactor(insulation int) (factor float64, recalled, ok bool) {
	for _, c := range columns {
		if c.celsius == insulation {
			return c.factor, c.recalled, true
		}
	}
	return 0, false, false
}

// BundleFactor is what the ampacity of each of several current-carrying conductors in
// one bundle is multiplied by: 33 CFR 183.425 table 5 note 2, which holds for circuits
// of 50 V and more. Below that it is 1.
func BundleFactor(conductors int, nominalVolts float64) float64 {
	switch {
	case nominalVolts < HighCircuit || conductors < 3:
		return 1
	case conductors == 3:
		return 0.70
	case conductors <= 6:
		return 0.60
	case conductors <= 24:
		return 0.50
	}
	return 0.40
}

// LeastGauge is the thinnest conductor that may be laid: 16 AWG by itself, 18 AWG in a
// sheath with others if no more than 30 in stick out (33 CFR 183.425).
func LeastGauge(sheathed bool) unit.Gauge {
	if sheathed {
		return unit.AWG(18)
	}
	return unit.AWG(16)
}
