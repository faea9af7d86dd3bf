package rule

import (
	"fmt"

	"example.com/lugbook/model/unit"
)

var torqueTooHigh = Rule{
	ID: "torque-too-high", Title: "A recorded torque is more than a steel bolt takes",
	Family: Studs, Severity: Fault,
	About: "Compares each recorded torque with the most that a table gives for a steel bolt of that size. No terminal of a cart is of better " +
		"stuff than that, so more than the table is a slip: mostly a figure in lbf in that was written as N m.",
	Why: "Torque stretches the stud like a spring. Past its limit the thread strips or the stud breaks off, usually while the last nut of the " +
		"day goes on, and on a pack it takes the terminal with it. A figure that is nine times too high is the commonest slip there is: 80 lbf in " +
		"is 9 N m, and 80 N m is the end of an M8 stud.",
	Tell: "Look up the figure once more and read its unit. 1 N m is 8.85 lbf in and 0.74 lbf ft. A battery post takes a few newton metres; a " +
		"steel 5/16 in or M8 bolt twice or three times as much.",
	Blind: "It is no check that a torque is right: a battery post takes far less than this limit. Sizes that the tables do not hold (M3, M4, M5, " +
		"#6) are not judged; nor is a torque that is too low.",
	Bad:   "80 N m at an M8 stud of the pack",
	Good:  "9 N m there",
	Wrong: Example{Of: studExample, But: []string{"at pack.POS", "at pack.POS cover=fitted torque=80_N_m"}},
	Right: Example{Of: studExample, But: []string{"at pack.POS", "at pack.POS cover=fitted torque=9_N_m"}},
	Basis: Basis{"the largest torque that the tables give for a steel bolt with that thread: only an upper limit of what can be meant",
		"FAA AC 43.13-1B table 7-1 (fine thread, tension nuts); US Army TM 9-2320-362-14&P table F-1 (metric)"},
	Remedy: "read the figure and its unit again on the part's label or sheet",
	Run:    runTorqueTooHigh,
}

func runTorqueTooHigh(p *Pass) {
	for _, s := range p.studs() {
		record := p.Sheet.Terminal(s.at)
		most, ok := boltTorque(s.size)
		if record == nil || !ok || record.Torque.NewtonMetres() <= most {
			continue
		}
		limit := unit.Nm(most)
		p.report(Finding{
			Message: fmt.Sprintf("%s at the %s stud %s; a steel bolt of that size takes %s N m at most, a battery post far less",
				record.Torque, s.size, s.at, number(most)),
			Subjects: []Subject{OfTerminal(s.at)},
			Figure:   Figure{What: "torque", Value: record.Torque.Any(), Limit: limit.Any(), Decides: "a steel bolt of that size"},
		})
	}
}

// poundInch is one lbf in in newton metres.
const poundInch = 0.1129848

// boltTorques are the largest torques of steel bolts. Inch sizes: FAA AC 43.13-1B table 7-1,
// fine thread, tension nuts, in lbf in. Metric sizes: US Army TM 9-2320-362-14&P table F-1,
// the lower grade, in N m.
var boltTorques = []struct {
	stud string
	most float64 // N m
}{
	{"#8", 15 * poundInch}, {"#10", 25 * poundInch}, {"1/4 in", 70 * poundInch}, {"5/16 in", 140 * poundInch},
	{"3/8 in", 190 * poundInch}, {"7/16 in", 500 * poundInch}, {"1/2 in", 690 * poundInch},
	{"M6", 14}, {"M8", 27}, {"M10", 54}, {"M12", 95},
}

// boltTorque is the largest torque in N m that a table gives for a steel bolt of a size; false
// if none does.
func boltTorque(size unit.Stud) (most float64, ok bool) {
	for _, b := range boltTorques {
		if b.stud == size.String() {
			return b.most, true
		}
	}
	return 0, false
}
