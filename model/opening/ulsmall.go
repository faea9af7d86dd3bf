package opening

// ulSmall is the miniature fuse of UL 248-14, to 10 A.
var ulSmall = Gates{
	Name: "ul-248-14-small", Title: "UL miniature fuse", Source: "UL 248-14, miniature", greatest: 10,
	rows: []row{
		carries,
		{times: 1.1, least: 4 * hour},
		{times: 1.35, most: 60 * minute},
		{times: 2, most: 2 * minute},
	},
}

// ulSmallSlow is its slow type, which holds twice its rating for some seconds.
var ulSmallSlow = Gates{
	Name: "ul-248-14-small-slow", Title: "slow UL miniature fuse", Source: "UL 248-14, miniature, time delay", greatest: 10,
	rows: []row{
		carries,
		{times: 1.1, least: 4 * hour},
		{times: 1.35, most: 60 * minute},
		{upTo: 3, times: 2, least: 5, most: 2 * minute},
		{over: 3, times: 2, least: 12, most: 2 * minute},
	},
}
