package harness

import (
	"math"

	"example.com/lugbook/model"
)

// What a wire gets beyond the runs for lugs that are made anew: twice at each end, each
// time the barrel's depth and a cut. Two further lugs at each end is the slack that FAA AC
// 43.13-1B 11-118 asks for; the cut of 5 mm is our choice.
const (
	newLugs  = 2
	cutAgain = 0.005
)

// Steps that lengths are rounded up to, in metres: main cables and others. Our choice.
const (
	mainStep  = 0.025
	otherStep = 0.010
)

// mainArea is the conductor area in mm2 from which a wire is a main cable: 6 AWG.
const mainArea = 13

// barrels are the depths of the barrels of lugs by the largest conductor in mm2 that they
// are made for, in metres. Usual figures, from memory; the lug in hand prevails.
var barrels = []struct{ area, depth float64 }{
	{2.2, 0.007}, {5.5, 0.009}, {9, 0.012}, {14, 0.014}, {22, 0.015}, {34, 0.017}, {54, 0.020}, {68, 0.022}, {120, 0.025},
}

// slack is what the ends of a wire that are on terminals take when their lugs are made
// anew, in metres; 0 if the gauge is not recorded.
func slack(w *model.Wire) float64 {
	area := w.Gauge.AreaMM2()
	if area == 0 {
		return 0
	}
	depth := barrels[len(barrels)-1].depth
	for _, b := range barrels {
		if area <= b.area {
			depth = b.depth
			break
		}
	}
	lugs := 0
	for _, e := range w.Ends() {
		if !e.IsLoose() {
			lugs += newLugs
		}
	}
	return float64(lugs) * (depth + cutAgain)
}

// roundUp is a length rounded up to what is cut.
func roundUp(metres float64, w *model.Wire) float64 {
	step := otherStep
	if w.Gauge.AreaMM2() >= mainArea {
		step = mainStep
	}
	return math.Ceil(metres/step-1e-9) * step
}
