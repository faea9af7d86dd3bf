package model

// Material is what a conductor or the face of a terminal is made of. The zero value means
// not recorded.
type Material string

// The materials of conductors and terminals.
const (
	Copper     Material = "copper"
	CopperClad Material = "copper-clad-aluminium"
	Aluminium  Material = "aluminium"
	Brass      Material = "brass"
	Steel      Material = "steel"
	Lead       Material = "lead"
	Tinned     Material = "tinned" // copper or brass under tin
)

// Names lists the words that a job file may use.
func (Material) Names() []string {
	return []string{string(Copper), string(CopperClad), string(Aluminium), string(Brass), string(Steel), string(Lead), string(Tinned)}
}

// Washer says where the innermost washer of a stack lies. The zero value means not recorded.
type Washer string

// Where a washer can lie.
const (
	WasherOutside Washer = "outside" // beyond all lugs, under the nut: where it belongs
	WasherBetween Washer = "between" // between two lugs
	WasherUnder   Washer = "under"   // between the seat and the first lug
)

// Names lists the words that a job file may use.
func (Washer) Names() []string {
	return []string{string(WasherOutside), string(WasherBetween), string(WasherUnder)}
}
