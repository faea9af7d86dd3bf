package opening

// iec60127Fast is the quick-acting miniature fuse of IEC 60127-2, 0.125 to 10 A.
var iec60127Fast = Gates{
	Name: "iec-60127-2-fast", Title: "quick-acting miniature fuse", Source: "IEC 60127-2, quick-acting", greatest: 10,
	rows: []row{
		carries,
		{times: 1.5, least: hour},
		{times: 2.1, most: 30 * minute},
		{times: 2.75, least: 0.05, most: 2},
		{times: 4, least: 0.01, most: 0.3},
		{times: 10, most: 0.02},
	},
}
