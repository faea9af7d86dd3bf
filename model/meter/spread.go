package meter

// spread is how far an input of the computation usually is from its figure, with where
// that comes from.
type spread struct {
	share  float64 // of the figure
	source string
}

// The spreads of the inputs. They are one standard tolerance each, combined as the root
// of the sum of squares, for they have nothing to do with each other.
var (
	copperSpread    = spread{0.085, "copper within 3 % of its nominal area and 20 C within 20 C, at 0.39 % a degree; IEC 60228 and IEC 60028, from memory"}
	windingSpread   = spread{0.10, "coils and resistors within 10 %, common practice, from memory"}
	loadSpread      = spread{0.20, "currents of loads within 20 % of the label, typical, from memory"}
	contactSpread   = spread{0.50, "contacts and fuses within half of a typical figure, from memory"}
	internalSpread  = spread{0.50, "internal resistance of a battery by age and charge, typical, from memory"}
	chargerSpread   = spread{0.01, "end voltage of a charger within 1 %, typical, from memory"}
	converterSpread = spread{0.05, "output of a reducer within 5 %, typical, from memory"}
	unknownSpread   = spread{1.00, "a usual figure stands for what nobody recorded"}
)

// jointSpread is how much more or less than 0.1 mohm a good lug joint may have: they are
// 0.05 to 0.2 mohm. Typical, from memory.
const jointSpread = 0.1e-3

// strays are what no sheet shows and no meter reading is free of: thermal voltages and
// leakage over dirt, the zero of a clamp, the resistance of test leads and the pressure on
// the probes. Common practice, no source.
const (
	strayVolts      = 0.1   // where a node is held through kilohms
	stiffStrayVolts = 0.005 // where it is held firmly
	strayAmps       = 0.2
	strayOhms       = 0.5
)

// faintAmps is the current below which an element has no bearing on a reading.
const faintAmps = 1e-4

// sideAmps and firmOhms tell what only hangs between the rails: a tenth of its current
// through that resistance is 10 mV at most.
const (
	sideAmps = 0.1
	firmOhms = 1
)

// telling is the share of a reading's whole spread from which an input is named.
const telling = 0.1
