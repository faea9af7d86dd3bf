package opening

// ulClassK is the fuse of UL 248-9. The standard tests it at 135 and 200 %; the times are
// those of the branch circuit fuses.
var ulClassK = Gates{
	Name: "ul-248-9-k", Title: "class K fuse", Source: "UL 248-9, class K",
	Recalled: true, Caution: noFaultTimes, greatest: 600,
	rows: append(classKHolds(), branchRows...),
}

// ulClassKDelay is its time-delay type, which holds five times its rating for 8 s; that
// row is for 250 V and up to 30 A.
var ulClassKDelay = Gates{
	Name: "ul-248-9-k-delay", Title: "time-delay class K fuse", Source: "UL 248-9, class K, time delay",
	Recalled: true, Caution: noFaultTimes, greatest: 600,
	rows: append(append(classKHolds(), row{upTo: 30, times: 5, least: 8}), branchRows...),
}

// classKHolds is what the fuse carries after the test of its heat rise.
func classKHolds() []row {
	return []row{
		carries,
		{upTo: 200, times: 1.1, least: 15 * minute},
		{over: 200, times: 1.1, least: 30 * minute},
	}
}
