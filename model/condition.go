package model

// Condition is how a thing was found. No condition recorded means that nothing
// wrong was seen.
type Condition string

// The conditions that a technician records.
const (
	Corroded  Condition = "corroded"
	Burnt     Condition = "burnt"
	Chafed    Condition = "chafed"
	LooseFit  Condition = "loose"
	Frayed    Condition = "frayed" // strands spread or insulation worn at the lug
	Broken    Condition = "broken-strands"
	Spliced   Condition = "spliced"
	Dirty     Condition = "dirty"
	WrongLug  Condition = "wrong-lug"
	HeatMark  Condition = "heat-mark"
	Melted    Condition = "melted"
	Bypassed  Condition = "bypassed"
	DoesntAct Condition = "does-not-work"
)

// Names lists the words that a job file may use.
func (Condition) Names() []string {
	return []string{
		string(Corroded), string(Burnt), string(Chafed), string(LooseFit), string(Frayed), string(Broken),
		string(Spliced), string(Dirty), string(WrongLug), string(HeatMark), string(Melted), string(Bypassed), string(DoesntAct),
	}
}

// Confidence says how well a thing is known. The zero value means not said.
type Confidence string

// The degrees of confidence.
const (
	Traced    Confidence = "traced"   // followed by hand or proved with a meter
	Assumed   Confidence = "assumed"  // by look, habit or the model it once was
	NotTraced Confidence = "untraced" // not followed yet
)

// Names lists the words that a job file may use.
func (Confidence) Names() []string {
	return []string{string(Traced), string(Assumed), string(NotTraced)}
}
