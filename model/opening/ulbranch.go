package opening

// branchRows are the opening times that the parts of UL 248 for branch circuit fuses
// share, to 600 A: 135 % of the rating, and 200 %.
var branchRows = []row{
	{upTo: 60, times: 1.35, most: 60 * minute, recalled: true},
	{over: 60, times: 1.35, most: 120 * minute, recalled: true},
	{upTo: 30, times: 2, most: 2 * minute, recalled: true},
	{over: 30, upTo: 60, times: 2, most: 4 * minute, recalled: true},
	{over: 60, upTo: 100, times: 2, most: 6 * minute, recalled: true},
	{over: 100, upTo: 200, times: 2, most: 8 * minute, recalled: true},
	{over: 200, upTo: 400, times: 2, most: 10 * minute, recalled: true},
	{over: 400, times: 2, most: 12 * minute, recalled: true},
}

// ulBranch is any branch circuit fuse of UL 248, classes J, R and the like.
var ulBranch = Gates{
	Name: "ul-248-branch", Title: "UL branch circuit fuse", Source: "UL 248, branch circuit classes",
	Recalled: true, Caution: noFaultTimes, greatest: 600,
	rows: append([]row{carries}, branchRows...),
}

const noFaultTimes = "the standard's rows end at twice the rating: take the times of a fault from the maker's curve"
