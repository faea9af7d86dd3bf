package conductor

import "example.com/lugbook/model/unit"

// MostLugs is how many terminals may be secured to one stud: ABYC E-11 11.14.6.9 and
// FAA AC 43.13-1B 11-174b. More need a bar or a jumper to a second stud.
const MostLugs = 4

// Fit is how a lug's hole suits a stud.
type Fit string

// The fits, best first. ABYC E-11 11.14.6.10 wants the hole of the stud's own size.
const (
	Fits        Fit = "fits"                           // made for that stud
	NearMatch   Fit = "made for the neighbouring size" // passes; inch on metric or the reverse
	OneLarger   Fit = "one size larger"                // passes with play
	TooLarge    Fit = "more than one size larger"      // bears on too little of the lug
	DoesNotPass Fit = "does not go over the stud"      // its hole is too small
	NotKnown    Fit = ""                               // a size is not stated
)

// holes are the clearance holes of lugs by stud size in mm: ISO 273 fine series and
// the close fits of ASME B18.2.8, from memory. Sizes with the same grade are taken
// for each other in practice.
var holes = []struct {
	stud  string
	hole  float64
	grade int
}{
	{"M3", 3.2, 0}, {"#6", 3.7, 1}, {"M4", 4.3, 2}, {"#8", 4.5, 2}, {"#10", 4.98, 3}, {"M5", 5.3, 3},
	{"M6", 6.4, 4}, {"1/4 in", 6.5, 4}, {"5/16 in", 8.2, 5}, {"M8", 8.4, 5}, {"3/8 in", 9.8, 6}, {"M10", 10.5, 6},
	{"7/16 in", 11.5, 7}, {"M12", 13, 8}, {"1/2 in", 13.1, 8},
}

// FitOf says how a lug made for one stud size suits a stud of a size.
func FitOf(lug, stud unit.Stud) Fit {
	hole, lugGrade, lugKnown := holeFor(lug)
	_, studGrade, studKnown := holeFor(stud)
	switch {
	case !lugKnown || !studKnown:
		return NotKnown
	case lug == stud:
		return Fits
	case hole < stud.DiameterMM():
		return DoesNotPass
	case lugGrade == studGrade:
		return NearMatch
	case lugGrade == studGrade+1:
		return OneLarger
	}
	return TooLarge
}

// holeFor finds the clearance hole in mm of a lug for a stud size, and its grade.
func holeFor(size unit.Stud) (hole float64, grade int, ok bool) {
	for _, h := range holes {
		if h.stud == size.String() {
			return h.hole, h.grade, true
		}
	}
	return 0, 0, false
}
