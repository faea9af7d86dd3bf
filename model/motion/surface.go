package motion

import "slices"

// Surface is a ground with its coefficient of rolling resistance, a band as printed.
type Surface struct {
	Name        string
	Title       string
	Least, Most float64
	Source      string
	Recalled    bool // no print was found: from memory or common practice
}

// surfaces are from printed tables for pneumatic tyres of cars and lorries. For small
// soft tyres of carts nothing was found in print.
var surfaces = []Surface{
	{"hard-road", "hard road, tyres well inflated", 0.008, 0.008, moyer, false},
	{"concrete", "concrete or new asphalt", 0.010, 0.015, toolbox, false},
	{"asphalt", "tar or asphalt, worn", 0.02, 0.02, toolbox + "; Carvill, Mechanical Engineer's Data Handbook", false},
	{"packed-gravel", "packed gravel", 0.012, 0.02, moyer + "; " + toolbox, false},
	{"loose-gravel", "loose worn gravel", 0.04, 0.08, toolbox + "; Carvill, Mechanical Engineer's Data Handbook", false},
	{"wet-gravel", "wet loose gravel", 0.06, 0.06, moyer, false},
	{"soil", "soil, medium hard", 0.08, 0.08, "Carvill, Mechanical Engineer's Data Handbook", false},
	{"sand", "sand", 0.1, 0.4, "Carvill, Mechanical Engineer's Data Handbook; " + toolbox, false},
	{"grass", "mown grass, small tyres", 0.03, 0.05, "from memory; no printed figure found", true},
}

const (
	toolbox = "engineering tables of rolling friction for car tyres"
	moyer   = "Moyer, in Marks' Standard Handbook for Mechanical Engineers"
)

// Surfaces lists the grounds, hardest first.
func Surfaces() []Surface { return slices.Clone(surfaces) }

// FindSurface is the ground of a name. It reports false if there is none.
func FindSurface(name string) (Surface, bool) {
	i := slices.IndexFunc(surfaces, func(s Surface) bool { return s.Name == name })
	if i < 0 {
		return Surface{}, false
	}
	return surfaces[i], true
}
