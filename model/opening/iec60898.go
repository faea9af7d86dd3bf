package opening

import "strings"

// instantaneous are the multiples of the rating between which a breaker's magnetic
// release begins to act within 0.1 s.
type instantaneous struct{ holds, opens float64 }

// iec60898B, iec60898C and iec60898D are the breakers of IEC 60898-1, to 125 A, at a
// reference of 30 C. They are made for alternating current: on direct current the
// magnetic release needs more, so its upper limit is no bound there.
var (
	iec60898B = breaker("B", instantaneous{3, 5})
	iec60898C = breaker("C", instantaneous{5, 10})
	iec60898D = breaker("D", instantaneous{10, 20})
)

// iec60898DCB and iec60898DCC are the breakers of IEC 60898-2, for alternating and direct
// current, with their limits on direct current.
var (
	iec60898DCB = directBreaker("B", instantaneous{4, 7})
	iec60898DCC = directBreaker("C", instantaneous{7, 15})
)

func breaker(letter string, at instantaneous) Gates {
	return Gates{
		Name: "iec-60898-1-" + strings.ToLower(letter), Title: "type " + letter + " circuit breaker", Source: "IEC 60898-1, type " + letter,
		breaker: true, greatest: 125,
		Caution: "made for alternating current: on direct current the instantaneous release opens at more than the standard says, if the breaker may be used there at all",
		rows: append(thermalRows(),
			row{times: at.holds, least: 0.1},
			row{times: at.opens, most: 0.1, ac: true},
		),
	}
}

func directBreaker(letter string, at instantaneous) Gates {
	rows := append(thermalRows(), row{times: at.holds, least: 0.1}, row{times: at.opens, most: 0.1})
	for i := range rows {
		rows[i].recalled = true
	}
	return Gates{
		Name: "iec-60898-2-" + strings.ToLower(letter), Title: "type " + letter + " d.c. circuit breaker", Source: "IEC 60898-2, type " + letter,
		Recalled: true, breaker: true, greatest: 125,
		rows: rows,
	}
}

// thermalRows are those of the thermal release. Above 63 A the conventional time of 2 h is
// from memory.
func thermalRows() []row {
	return []row{
		carries,
		{times: 1.13, least: hour},
		{upTo: 63, times: 1.45, most: hour},
		{over: 63, times: 1.45, most: 2 * hour, recalled: true},
		{upTo: 32, times: 2.55, least: 1, most: 60},
		{over: 32, times: 2.55, least: 1, most: 120},
	}
}
