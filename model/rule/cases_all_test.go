package rule_test

import "slices"

// badExamples and goodExamples are the examples of all families, one line each.
var badExamples = slices.Concat(
	commonBad,
	conductorsBad,
	mountingBad,
	frameBad,
	chainBad,
	supplyBad,
	meteringBad,
	chargingBad,
	protectionBad,
	studsBad,
	endsBad,
	paperBad,
)

var goodExamples = slices.Concat(
	commonGood,
	conductorsGood,
	mountingGood,
	frameGood,
	chainGood,
	supplyGood,
	meteringGood,
	chargingGood,
	protectionGood,
	studsGood,
	endsGood,
	paperGood,
)
