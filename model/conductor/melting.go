package conductor

import "math"

// MeltingAmps is the current in amperes that in the end melts a bare copper wire of a
// diameter in mm in open air, I = 10244 d^1.5 with d in inches (W. H. Preece, 1884 to 1888,
// as printed in handbooks of electronics). It is no limit to protect by: insulation is
// gone long before.
func MeltingAmps(diameterMM float64) float64 {
	return 10244 * math.Pow(diameterMM/mmPerInch, 1.5)
}
