package opening

// ul24814 is the supplementary fuse of UL 248-14, to 60 A.
var ul24814 = Gates{
	Name: "ul-248-14", Title: "supplementary fuse", Source: "UL 248-14, supplementary", greatest: 60,
	rows: []row{
		carries,
		{times: 1.35, most: 60 * minute},
		{upTo: 30, times: 2, most: 2 * minute},
		{over: 30, times: 2, most: 4 * minute},
	},
}
