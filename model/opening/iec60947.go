package opening

// iec60947 is the breaker of IEC 60947-2. The standard sets its overload release; the
// instantaneous one is set by its maker.
var iec60947 = Gates{
	Name: "iec-60947-2", Title: "industrial circuit breaker", Source: "IEC 60947-2", breaker: true,
	Caution: "the standard sets the overload release alone: take the instantaneous one from the maker's curve",
	rows: []row{
		carries,
		{upTo: 63, times: 1.05, least: hour},
		{upTo: 63, times: 1.3, most: hour},
		{over: 63, times: 1.05, least: 2 * hour},
		{over: 63, times: 1.3, most: 2 * hour},
	},
}
