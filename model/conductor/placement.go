package conductor

import "example.com/lugbook/model/unit"

// Placement is how far along a conductor from its source the protective device may sit.
type Placement struct {
	Within   unit.Length
	When     string // what the conductor must be for it
	Basis    string // regulation or standard, with its clause
	Recalled bool   // the clause was not read in print: confirm it before relying on it
}

// The limits, nearest first. The exception for cranking motors does not apply to a
// traction feed.
var (
	AtSource = Placement{
		Within: unit.Inches(7), When: "any conductor", Basis: "33 CFR 183.455(b)",
	}
	InSheath = Placement{
		Within: unit.Inches(40), When: "in a sheath or enclosure all the way to the device", Basis: "33 CFR 183.455(b)",
	}
	OffBattery = Placement{
		Within: unit.Inches(72), When: "connected directly to a battery terminal, and in a sheath or enclosure all the way to the device",
		Basis: "ABYC E-11 11.10.2.8.1; 33 CFR 183.460", Recalled: true,
	}
)

// PlacementFor is the limit for a conductor: sheathed if it runs in a sheath or
// enclosure all the way to the device, offBattery if it starts at a battery terminal.
func PlacementFor(sheathed, offBattery bool) Placement {
	switch {
	case sheathed && offBattery:
		return OffBattery
	case sheathed:
		return InSheath
	}
	return AtSource
}
