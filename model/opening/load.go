package opening

// ContinuousShare is the share of its rating that a fuse is loaded with for long. Its
// rating is that of the test in open air at 25 C; in a warm enclosure it opens below it.
const ContinuousShare = 0.75

// LoadLimit is the current in amperes that a fuse of a rated current carries for long
// without nuisance opening, and where that comes from.
func LoadLimit(ratedAmps float64) (amps float64, source string) {
	return ContinuousShare * ratedAmps, "common practice at 25 C, no source: at most 75 % of the rating"
}
