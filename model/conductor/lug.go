package conductor

import "example.com/lugbook/model/unit"

// MostLugs is how many terminals may be secured to one stud: ABYC E-11 11.14.6.9 and
// FAA AC 43.13-1B 11-174b. More need a bar or a jumper to a second stud.
const MostLugs = 4

// Fit is how a lug's hole suits a stud.
type Fit string

// The fits, best first. ABYC E-11 11.14.6.10 wants the hole of the stud's own size.
const (
	Fits        Fit = "fits"                                        // made for that stud
	NearMatch   Fit = "made for the neighbouring size"              // passes with little play; inch on metric or the reverse
	Measure     Fit = "goes over the stud only if its hole is wide" // by the hole, not by the name
	OneLarger   Fit = "one size larger"                             // passes with more than Slack
	TooLarge    Fit = "more than one size larger"                   // bears on too little of the lug
	DoesNotPass Fit = "does not go over the stud"                   // its hole is too small
	NotKnown    Fit = ""                                            // a size is not stated
)

// Slack is the play of a hole over its stud, as a share of the stud's diameter, above
// which a lug counts as too large by a size; MostSlack the play above which it counts
// as too large by more. Own lines, no source.
const (
	Slack     = 0.1
	MostSlack = 1.0 / 3
)

const mmPerInch = 25.4

// holes are the clearance holes for bolts in mm: the fine and medium series of ISO 273,
// the close and normal fits of ASME B18.2.8 (M3 and the sizes in inches from memory,
// the inch sizes compared with the drills that the standard lists in mm).
var holes = []struct {
	stud         string
	close, usual float64
}{
	{"M3", 3.2, 3.4}, {"#6", 0.154 * mmPerInch, 0.170 * mmPerInch},
	{"M4", 4.3, 4.5}, {"#8", 0.180 * mmPerInch, 0.196 * mmPerInch},
	{"#10", 0.206 * mmPerInch, 0.221 * mmPerInch}, {"M5", 5.3, 5.5},
	{"M6", 6.4, 6.6}, {"1/4 in", 0.266 * mmPerInch, 0.281 * mmPerInch},
	{"5/16 in", 0.328 * mmPerInch, 0.344 * mmPerInch}, {"M8", 8.4, 9},
	{"3/8 in", 0.391 * mmPerInch, 0.406 * mmPerInch}, {"M10", 10.5, 11},
	{"7/16 in", 0.453 * mmPerInch, 0.469 * mmPerInch}, {"M12", 13, 13.5},
	{"1/2 in", 0.531 * mmPerInch, 0.562 * mmPerInch},
}

// Holes are the clearance holes in mm for a stud, close and usual: ISO 273 fine and
// medium, ASME B18.2.8 close and normal. A lug's hole lies about between them.
func Holes(size unit.Stud) (tight, usual float64, ok bool) {
	for _, h := range holes {
		if h.stud == size.String() {
			return h.close, h.usual, true
		}
	}
	return 0, 0, false
}

// FitOf says how a lug made for one stud size suits a stud of a size. It goes by the
// diameter of the hole, which is taken as midway between the close and the usual one,
// and the play by the close one, the least that the lug can have.
func FitOf(lug, stud unit.Stud) Fit {
	tight, usual, ok := Holes(lug)
	diameter := stud.DiameterMM()
	if !ok || stud.IsZero() {
		return NotKnown
	}
	play := tight/diameter - 1
	switch {
	case lug == stud:
		return Fits
	case (tight+usual)/2 < diameter:
		return DoesNotPass
	case play < 0:
		return Measure
	case play <= Slack:
		return NearMatch
	case play <= MostSlack:
		return OneLarger
	}
	return TooLarge
}

// lugStuds are the studs that crimp lugs are commonly made for, by the thickest
// conductor of each group. From memory of what is usual in the trade.
var lugStuds = []struct {
	upTo        unit.Gauge
	least, most float64 // diameter of the stud in mm
}{
	{unit.AWG(16), 3, 9.6}, {unit.AWG(14), 3, 10}, {unit.AWG(10), 3.5, 12.7}, {unit.AWG(6), 4.8, 12.7},
	{unit.AWG(2), 6, 12.7}, {unit.AWG(-1), 6.35, 12.7}, {unit.AWG(-3), 7.9, 12.7},
}

// LugMade reports whether crimp lugs for a conductor are commonly made with a hole for
// a stud. From memory of what is usual in the trade; ask the shop's own supplier.
func LugMade(gauge unit.Gauge, stud unit.Stud) bool {
	for _, row := range lugStuds {
		if gauge.Compare(row.upTo) <= 0 {
			return stud.DiameterMM() >= row.least && stud.DiameterMM() <= row.most
		}
	}
	return gauge.AreaMM2() <= thickestMM2 && stud.DiameterMM() >= lugStuds[len(lugStuds)-1].least
}

// thickestMM2 is the thickest metric conductor that lugs are counted on for.
const thickestMM2 = 120
