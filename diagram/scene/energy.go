package scene

// Energy is what a state does to a wire.
type Energy uint8

// What a state does to wires.
const (
	NotShown Energy = iota // no state is painted
	Unjudged               // what the state does to the wire is not known
	Dead                   // joined to neither side of a source
	Return                 // joined to the minus side of a source
	Live                   // joined to the plus side of a source, or at a voltage against its minus side
)

// String is the word for it in a legend; empty if no state is painted.
func (e Energy) String() string { return energyWords[min(int(e), len(energyWords)-1)] }

var energyWords = [...]string{NotShown: "", Unjudged: "not judged", Dead: "dead", Return: "minus side", Live: "live"}

// Flow is what a wire does in the state that a page shows.
type Flow struct {
	Energy Energy
	Amps   float64 // along the path; against it if negative; 0 if the wire carries nothing worth telling
	Figure string  // what is worth writing at the wire, such as 187 A; may be empty

	Note   Label   // the figure, if it found room
	Arrows []Arrow // on the line, the way that the current goes; in a wire that is not judged, where a sign says so
}

// Carries reports whether the wire carries current.
func (f Flow) Carries() bool { return f.Amps != 0 }

// Arrow is a cell of a wire's line that shows which way the current goes.
type Arrow struct {
	At  Point
	Way Side
}

// Working is what a part does in the state that a page shows.
type Working struct {
	Word   string // closed, open, on, forward; empty if there is nothing to tell
	Active bool   // it departs from rest: closed, pulled in, on
}

// State is what a page shows of one state of the cart.
type State struct {
	Name, About string
	Wires       map[string]Flow    // by wire; Note and Arrows are found by [Page.In]
	Parts       map[string]Working // by part
	Remarks     []string           // lines for the legend
}
