package opening

// ulClassT is the small current-limiting fuse of UL 248-15. Its gates are those of the
// branch circuit fuses; its let-through is not among them.
var ulClassT = Gates{
	Name: "ul-248-15-t", Title: "class T fuse", Source: "UL 248-15, class T",
	Recalled: true, Caution: noFaultTimes, greatest: 600,
	rows: append([]row{carries}, branchRows...),
}
