package opening

// iec60269GPV is the fuse for photovoltaic systems of IEC 60269-6: made for high direct
// voltage, and by its conventional currents quicker on overload than gG.
var iec60269GPV = Gates{
	Name: "iec-60269-gpv", Title: "gPV fuse", Source: "IEC 60269-6, gPV", Recalled: true,
	Caution: "the standard sets no gates above the conventional current: take the times of a fault from the maker's curve",
	rows: []row{
		carries,
		{upTo: 63, times: 1.13, least: hour, recalled: true},
		{upTo: 63, times: 1.45, most: hour, recalled: true},
		{over: 63, upTo: 160, times: 1.13, least: 2 * hour, recalled: true},
		{over: 63, upTo: 160, times: 1.45, most: 2 * hour, recalled: true},
		{over: 160, upTo: 400, times: 1.13, least: 3 * hour, recalled: true},
		{over: 160, upTo: 400, times: 1.45, most: 3 * hour, recalled: true},
		{over: 400, times: 1.13, least: 4 * hour, recalled: true},
		{over: 400, times: 1.45, most: 4 * hour, recalled: true},
	},
}
