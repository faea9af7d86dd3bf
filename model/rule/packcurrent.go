package rule

import (
	"fmt"
	"strings"

	"example.com/lugbook/model/unit"
)

var packCurrent = Rule{
	ID: "pack-current", Title: "More current is asked of the pack than it gives",
	Family: Packs, Severity: Fault,
	About: "Compares what flows at rest, while cruising, driving for long and for seconds and braking with the pack's limits. " +
		"One finding for each pack, with each limit that is exceeded; a caution if typical figures decide.",
	Why: "A lead battery sags when it is asked for more than it likes; a lithium pack switches off. Its electronics count amperes and seconds and open, and the cart " +
		"stands in the middle of the slope with nothing to tell the driver why. Every such trip is a hard break of hundreds of amperes inside the pack.",
	Tell: "Read the continuous and the peak current, with its seconds, on the pack's label, and the current limit on the controller's. A pack that goes dead on a hill start and " +
		"wakes when the key is turned again has tripped. A clamp meter on the main cable shows the peak.",
	Blind: "It takes the controller's ratings for what is asked: a controller that is set lower must be recorded so. How long a peak lasts is taken for some seconds. What a charger " +
		"gives is charger-mismatch's matter.",
	Bad:   "a controller of 400 A peak on a pack whose electronics open at 300 A",
	Good:  "the controller's peak is set to 280 A",
	Wrong: Example{Of: packAndDrive, But: []string{"part ctrl", "part ctrl controller-series continuous-current=120A peak-current=400A"}},
	Right: Example{Of: packAndDrive},
	Basis: Basis{"a BMS opens on more than its limit, in a hill start or while braking", "the maker's limits; common practice, no source"},

	Remedy: "limit the controller's current to what the pack gives, or fit a pack that gives more",
	Run:    runPackCurrent,
}

// packAndDrive is a pack and a controller set to what the pack gives.
const packAndDrive = `
part pack lithium-pack-16 continuous-current=150A peak-current=300A
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part pre precharge-resistor
part ctrl controller-series continuous-current=120A peak-current=280A
part motor motor-series
part fu3 fuse-cartridge fuse-rating=10A
part key key-switch
part dio diode
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
wire m1 ctrl.B+ motor.A1 gauge=2AWG insulation=105C length=600mm
wire m2 motor.A2 motor.S1 gauge=2AWG insulation=105C length=200mm
wire m3 motor.S2 ctrl.M- gauge=2AWG insulation=105C length=600mm
wire k1 sol.L1 fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN ctrl.KSI gauge=16AWG insulation=105C length=2m
wire k4 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m
wire k5 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm
stack sol.L1 w2 k1 p1
stack sol.L2 w3 p2
stack ctrl.B+ w3 m1
stack pack.NEG w4 k5
stack sol.coil+ k4 d1
stack sol.coil- k5 d2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

func runPackCurrent(p *Pass) {
	if p.unsound() {
		return
	}
	for _, r := range p.support().Ranges {
		var words []string
		var worst Figure
		sure := false
		for _, row := range r.Rows {
			if row.Limit == 0 || row.Most <= row.Limit || row.What == "charging" {
				continue // what a charger gives is judged with the charger
			}
			asks := "gives %s %s and is asked for %s %s"
			if row.Into {
				asks = "takes %s of %s and gets %s %s"
			}
			words = append(words, fmt.Sprintf(asks, amps(row.Limit), row.Of, amps(row.Most), row.What))
			sure = sure || !row.Vague
			if f := (Figure{What: row.What, Value: unit.A(row.Most).Any(), Limit: unit.A(row.Limit).Any(), Decides: row.Of}); f.Beyond() > worst.Beyond() {
				worst = f
			}
		}
		if len(words) == 0 {
			continue
		}
		f := Finding{
			Message:  fmt.Sprintf("%s %s", r.Pack.Name, strings.Join(words, "; it ")),
			Figure:   worst,
			Subjects: append([]Subject{OfPart(r.Pack.Name)}, p.driveParts()...),
		}
		if !sure {
			f.Severity = Caution
			f.Message += unconfirmed
		}
		p.report(f)
	}
}
