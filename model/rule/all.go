package rule

// All is the table of rules, in the order of reports.
var All = []Rule{
	batteryShorted, batteryReversed, packReversed, stringCount,
	chargerReversed, controllerReversed, reducerInputReversed, reducerOutputReversed, reducerSwapped,
	diodeReversed, loadReversed, meterReversed, shuntReversed, overVoltage, underVoltage,

	noMainFuse, tapUnfused, fuseTooLarge, feedsAddUp, fuseVolts, fuseInterrupting,
	fuseTooFar, fuseInNegativeOnly, sourceExceedsWire, returnOverload, deviceTooSlow, notSelective, openingCurve,

	wireTooThin, dropTooHigh,

	drivesUnasked, doesNotDrive, noRest, starvedLoad, packOnFrame,

	preCharge, coilSuppression, chargerMismatch, packCurrent, standByDrain,

	stackOrder, stackCount, lugHole, studCover,

	cutEndLive, cappedEndLive, untracedEndLive,
}
