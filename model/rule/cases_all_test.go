package rule_test

import "slices"

// badExamples and goodExamples are the examples of all families, one line each.
var badExamples = slices.Concat(
	commonBad,
	conductorsBad,
	frameBad,
	chainBad,
	supplyBad,
	meteringBad,
	chargingBad,
	studsBad,
)

var goodExamples = slices.Concat(
	commonGood,
	conductorsGood,
	frameGood,
	chainGood,
	supplyGood,
	meteringGood,
	chargingGood,
	studsGood,
)
