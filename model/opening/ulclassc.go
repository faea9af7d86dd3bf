package opening

// ulClassC is the fuse of UL 248-2, the relative of gG, to 1200 A.
var ulClassC = Gates{
	Name: "ul-248-2-c", Title: "class C fuse", Source: "UL 248-2, class C", greatest: 1200,
	Caution: "the standard's rows end at 160 % of the rating: take the times of a fault from the maker's curve",
	rows: append(classKHolds(),
		row{upTo: 60, times: 1.6, most: 60 * minute, recalled: true},
		row{over: 60, upTo: 200, times: 1.6, most: 120 * minute},
		row{over: 200, times: 1.6, most: 240 * minute},
	),
}
