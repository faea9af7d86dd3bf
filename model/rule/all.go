package rule

// All is the table of rules, in the order of reports: family by family, one line a rule.
var All = []Rule{
	// polarity
	batteryShorted,
	outputShorted,
	batteryReversed,
	packReversed,
	chargerReversed,
	controllerReversed,
	reducerInputReversed,
	reducerOutputReversed,
	reducerSwapped,
	diodeReversed,
	loadReversed,
	meterReversed,

	// voltage
	stringCount,
	overVoltage,
	underVoltage,

	// protection
	noMainFuse,
	tapUnfused,
	fuseTooLarge,
	feedsAddUp,
	fuseVolts,
	fuseInterrupting,
	fuseOpens,
	fuseTooFar,
	fuseInNegativeOnly,
	sourceExceedsWire,
	returnOverload,
	deviceTooSlow,
	notSelective,
	openingCurve,
	fuseTooSmall,
	contactOverload,
	notMadeForDC,

	// conductors
	wireTooThin,
	dropTooHigh,
	unequalParallels,
	wireTooWeak,
	placeTooHot,
	thinMotorLeads,
	damagedCable,
	wideLoop,
	terminalClass,
	notCopper,

	// control chain
	controlBypassed,
	coilAlwaysFed,
	contactorClosesEarly,
	keyInputLive,
	backfeed,
	noTowSwitch,
	drivesUnasked,
	doesNotDrive,
	throttleWiring,
	reverseWarning,
	coilMarginal,
	bothDirections,
	noRest,
	starvedLoad,

	// contactor support
	preCharge,
	preChargeTwice,
	controllerStaysCharged,
	coilSuppression,

	// charging
	chargerMismatch,
	chargesNothing,
	chargeComputerLeft,
	branchCircuit,
	coldCharging,

	// 12 V side
	partOfString,
	frameReturn,
	sharedNegative,
	wakeOnHotSide,
	reducerOverloaded,
	branchUnfused,

	// pack and metering
	packCurrent,
	standByDrain,
	brakesFullPack,
	shuntReversed,
	shuntBypassed,
	meterAlwaysOn,
	canTerminators,
	packsParallel,

	// frame and return
	packOnFrame,
	tractionThroughFrame,
	earthMissing,

	// studs and lugs
	stackOrder,
	stackCount,
	lugHole,
	lugBarrel,
	washerInPath,
	dissimilarMetals,
	wornJoint,
	studCover,
	torqueNotKnown,
	torqueTooHigh,

	// loose ends
	cutEndLive,
	cappedEndLive,
	untracedEndLive,
	deadEndLead,
	loneWire,
	unwiredPart,

	// mounting
	notSecured,
	unsupported,
	tightBend,
	noStrainRelief,
	unguardedEdge,

	// paper
	wireToMake,
	studUnphotographed,
	ratingNotRead,
	wireNotMarked,
	restsOnAssumption,
	hiddenCharacters,
}
