// Package basis holds the limits that a job is judged by where standards differ or where a
// limit is our choice: one table, each row with its reason. A job chooses a basis and may
// set limits of its own above it.
package basis

import (
	"slices"

	"example.com/lugbook/model/unit"
)

// Limit is one row of the table.
type Limit struct {
	Name   string // as a job file writes it
	Means  string // what it limits, in words
	Base   string // the limit with its unit by the base table
	Source string // where the base table has it from: a standard with its clause, or common practice, no source
	House  string // the stricter limit of the house rule; empty where it has none of its own
	Why    string // the reason of the house rule

	base, house unit.Any
}

// Names of the limits that rules ask for.
const (
	FuseShare         = "fuse-share-below-50v"
	FuseShareHigh     = "fuse-share-from-50v"
	FuseNextSize      = "fuse-next-size"
	FuseDistance      = "fuse-distance"
	FuseSheathed      = "fuse-distance-sheathed"
	FuseOffBattery    = "fuse-distance-battery-sheathed"
	FuseLoad          = "fuse-load"
	ContactLoad       = "contact-load"
	ReducerLoad       = "reducer-load"
	BranchLoad        = "branch-load"
	BranchesPerFuse   = "branches-per-fuse"
	CriticalDrop      = "critical-drop"
	OrdinaryDrop      = "ordinary-drop"
	DriveDrop         = "drive-drop"
	CoilHot           = "coil-hot"
	LugsPerStud       = "lugs-per-stud"
	StackCurrent      = "stack-current"
	StackSpread       = "stack-spread"
	BarrelSpread      = "barrel-spread"
	BarrelRange       = "barrel-range"
	SupportInterval   = "support-interval"
	SupportAtBattery  = "support-at-battery"
	SupportElsewhere  = "support-elsewhere"
	BendRadius        = "bend-radius"
	LoopDistance      = "loop-distance"
	ParallelSpread    = "parallel-spread"
	RestDaysFault     = "rest-days-fault"
	RestDaysCaution   = "rest-days-caution"
	FullPackShare     = "full-pack-share"
	TerminatorLeast   = "terminator-least"
	TerminatorMost    = "terminator-most"
	IsolationPerVolt  = "isolation-per-volt"
	TerminalClass     = "terminal-class"
	SystemVoltage     = "system-voltage"
	GrossVoltage      = "gross-voltage"
	CoilVoltage       = "coil-voltage"
	LeastVoltage      = "least-voltage"
	TerminalClassHigh = "terminal-class-high"
)

// practice is the source of what everyone in the trade does and nobody has printed.
const practice = "common practice, no source"

// limits is the table.
var limits = read([]Limit{
	{Name: FuseShare, Means: "rating of a fuse or breaker over the ampacity of its wire, circuits under 50 V",
		Base: "150 %", Source: "33 CFR 183.455(c)(1)", House: "100 %", Why: "FAA AC 43.13-1B 11-48: the device opens before the wire's rating is exceeded"},
	{Name: FuseShareHigh, Means: "rating of a fuse or breaker over the ampacity of its wire, circuits of 50 V and more",
		Base: "100 %", Source: "33 CFR 183.455(c)(2)"},
	{Name: FuseNextSize, Means: "the next standard size above that share is allowed up to this share, circuits of 50 V and more",
		Base: "150 %", Source: "33 CFR 183.455(c)(2)", House: "100 %", Why: "FAA AC 43.13-1B 11-48 knows no next size up"},
	{Name: FuseDistance, Means: "length along the conductor from its source to its fuse",
		Base: "7 in", Source: "33 CFR 183.455(b)"},
	{Name: FuseSheathed, Means: "the same in a sheath or enclosure all the way",
		Base: "40 in", Source: "33 CFR 183.455(b)"},
	{Name: FuseOffBattery, Means: "the same in a sheath, straight from a battery terminal",
		Base: "72 in", Source: "ABYC E-11 11.10.2.8.1; 33 CFR 183.460, from memory", House: "40 in", Why: "a cart leaves no reason for a longer unprotected cable, and the clause was not read in print"},
	{Name: FuseLoad, Means: "continuous current over the rating of the fuse that carries it",
		Base: "100 %", Source: practice, House: "80 %", Why: "a fuse in a warm place opens below its rating; NEC 210.20(A) asks 125 % for continuous loads"},
	{Name: ContactLoad, Means: "continuous current over the rating of a contact, plug, bar or shunt",
		Base: "100 %", Source: practice, House: "80 %", Why: "contacts age: a margin keeps them cool"},
	{Name: ReducerLoad, Means: "sum of the loads over the output rating of a reducer",
		Base: "100 %", Source: practice, House: "80 %", Why: "a reducer at its limit runs hot in a closed bay"},
	{Name: BranchesPerFuse, Means: "branches of the 12 V side behind one fuse that their wires stand",
		Base: "2 pcs", Source: practice, House: "1 pcs", Why: "one fuse, one thing that goes dark: it is found by the fuse list"},
	{Name: BranchLoad, Means: "current of a charger's plug over the rating of the AC branch circuit",
		Base: "80 %", Source: "NEC 210.23(A)(1)"},
	{Name: CriticalDrop, Means: "voltage lost on the way to lamps, electronics and supplies",
		Base: "3 %", Source: "ABYC E-11 11.14.2.6"},
	{Name: OrdinaryDrop, Means: "voltage lost on the way to other loads",
		Base: "10 %", Source: "ABYC E-11 11.14.2.6", House: "5 %", Why: "NEC 210.19 informational note: 5 % in all"},
	{Name: DriveDrop, Means: "voltage lost on the way to the drive at its continuous rating",
		Base: "5 %", Source: "NEC 215.2 informational note, from memory", House: "3 %", Why: "what is lost in cables is range and heat"},
	{Name: CoilHot, Means: "resistance of a hot coil above its cold one",
		Base: "40 %", Source: "a coil about 100 C above the bench; 0.393 % a degree, IEC 60028, from memory"},
	{Name: LugsPerStud, Means: "lugs on one stud",
		Base: "4 pcs", Source: "ABYC E-11 11.14.6.9; FAA AC 43.13-1B 11-174", House: "3 pcs", Why: "four lugs of traction cable leave no thread"},
	{Name: StackCurrent, Means: "current from which a joint counts as one of the main circuit: its place in a stack goes by current, and its condition matters more",
		Base: "20 A", Source: "ABYC E-11 11.14.5: up to 20 A a terminal may be held by friction alone", House: "10 A", Why: "a poor joint of 10 mohm turns 1 W into heat at 10 A"},
	{Name: StackSpread, Means: "share by which the currents of two lugs may differ and still count as the same",
		Base: "100 %", Source: practice, House: "25 %", Why: "the current is the reason for the order, the size only its usual sign"},
	{Name: BarrelSpread, Means: "share by which the conductor that a lug's barrel is made for may differ in area from the wire in it",
		Base: "25 %", Source: "ASTM B258: the next gauge number differs by 26 % in area", House: "10 %", Why: "crimp dies are made for one standard of sizes"},
	{Name: BarrelRange, Means: "area of the thickest over that of the thinnest wire that one barrel up to 10 AWG takes",
		Base: "260 %", Source: "crimp terminals for 22 to 18 AWG, four gauge numbers, from memory"},
	{Name: SupportInterval, Means: "stretch of a wire between two supports",
		Base: "18 in", Source: "ABYC E-11 11.14.6.8"},
	{Name: SupportAtBattery, Means: "the first stretch of a battery cable from its terminal",
		Base: "36 in", Source: "ABYC E-11 11.14.6.8", House: "18 in", Why: "a cart shakes more than a boat"},
	{Name: SupportElsewhere, Means: "stretch of a wire between two supports up to which it is a note only",
		Base: "24 in", Source: "FAA AC 43.13-1B 11-96; 46 CFR 183.340(b)(4)", House: "18 in", Why: "a cart shakes more than a boat"},
	{Name: BendRadius, Means: "bend radius over the outside diameter of a cable",
		Base: "10 times", Source: "US Army TM 1-1500-204-23-4"},
	{Name: LoopDistance, Means: "length by which the way of a positive and its negative may differ",
		Base: "1 m", Source: practice},
	{Name: ParallelSpread, Means: "share by which the resistances of parallel cables may differ",
		Base: "10 %", Source: practice, House: "5 %", Why: "the better cable carries the rest of the worse one"},
	{Name: RestDaysFault, Means: "days at rest until the usable charge is gone, least before it is a fault",
		Base: "7 days", Source: practice},
	{Name: RestDaysCaution, Means: "days at rest until the usable charge is gone, least without a word",
		Base: "60 days", Source: practice, House: "90 days", Why: "a winter is three months"},
	{Name: FullPackShare, Means: "braking current over what a full pack takes",
		Base: "100 %", Source: practice},
	{Name: TerminatorLeast, Means: "least resistance between CAN-H and CAN-L",
		Base: "50 ohm", Source: "ISO 11898-2: two of 120 ohm in parallel are 60 ohm, from memory"},
	{Name: TerminatorMost, Means: "most resistance between CAN-H and CAN-L",
		Base: "70 ohm", Source: "ISO 11898-2: two of 120 ohm in parallel are 60 ohm, from memory"},
	{Name: IsolationPerVolt, Means: "resistance from pack to frame for each volt",
		Base: "100 ohm", Source: "UN R100 for d.c. circuits, from memory", House: "500 ohm", Why: "UN R100 asks that where a.c. and d.c. are joined, from memory"},
	{Name: SystemVoltage, Means: "share by which a string is off the system voltage, least before it is a fault",
		Base: "10 %", Source: "common practice, no source: 51.2 V on a 48 V cart is off by 7 %, a string with one of ten batteries missing by 10 %"},
	{Name: GrossVoltage, Means: "voltage of the source over that of the device, least before the device burns rather than wears",
		Base: "150 %", Source: "common practice, no source: it parts 12, 36, 48 and 72 V where they differ by more than one class"},
	{Name: CoilVoltage, Means: "voltage of the source over the nominal voltage of a coil",
		Base: "125 %", Source: "common practice, no source: 51.2 V on a 48 V coil is 7 % more, the next class down a third", House: "110 %", Why: "relay makers allow a tenth above the nominal voltage for long, from memory"},
	{Name: LeastVoltage, Means: "voltage of the source over the nominal voltage of a device that states no least voltage",
		Base: "60 %", Source: "common practice, no source: contactors pull in at 65 to 75 %"},
	{Name: TerminalClass, Means: "temperature of a terminal that is not marked otherwise, circuits up to 100 A",
		Base: "60 C", Source: "NEC 110.14(C), from memory"},
	{Name: TerminalClassHigh, Means: "temperature of a terminal that is not marked otherwise, circuits above 100 A",
		Base: "75 C", Source: "NEC 110.14(C), from memory"},
})

// read reads the quantities of a table. One that can't be read stays zero.
func read(table []Limit) []Limit {
	for i := range table {
		l := &table[i]
		l.base, _ = unit.ParseAny(l.Base)
		l.house, _ = unit.ParseAny(l.House)
	}
	return table
}

// Limits lists the table.
func Limits() []Limit { return slices.Clone(limits) }

// Find is the limit of that name; false if there is none.
func Find(name string) (Limit, bool) {
	for i := range limits {
		if limits[i].Name == name {
			return limits[i], true
		}
	}
	return Limit{}, false
}

// Of is the limit by a basis, which house tells from the base table, with where it is from.
func (l Limit) Of(house bool) (value unit.Any, source string) {
	if house && l.House != "" {
		return l.house, "house rule: " + l.Why
	}
	return l.base, l.Source
}
