package theme

// Role is what a piece of the screen means.
type Role uint8

// The roles. Each colour has a sign, a pattern or a word beside it, which the one who draws provides.
const (
	Text     Role = iota // everything without another role: the terminal's own foreground
	Dim                  // less important text: hints, completions, rulers
	Title                // headings, designators
	Key                  // a key in a hint
	Selected             // what the cursor is on
	Marked               // what a command will act on

	// The severities of findings.
	Danger
	Fault
	Caution
	Note

	// The lines of wires, by class.
	Traction
	Power
	Control
	Mains

	// What a state does to a wire.
	Live
	Carrying  // live, and carries current
	Returning // carries current on the minus side
	Dead

	// The differences of two sheets.
	Added
	Removed
	Changed

	roleCount
)

type attribute uint8

const (
	bold attribute = 1 << iota
	underline
	reverse
)

// look is how a role looks: its attributes at any depth, and its colour by ground where there are 256, and where
// there are sixteen.
type look struct {
	attributes           attribute
	dark, light, neutral index
	sixteen              index
	line                 bool // drawn as lines and marks only: 3:1 suffices
}

// looks holds the look of every role. The colours of the severities are chosen for contrast and for distance between
// each other in normal, protan, deutan and tritan vision. On an unknown ground too few colours have the contrast for
// that distance, so there the attributes and signs have to do it.
var looks = [roleCount]look{
	Text:     {0, plain, plain, plain, plain, false},
	Dim:      {0, 247, 241, 243, plain, false},
	Title:    {bold, plain, plain, plain, plain, false},
	Key:      {bold, plain, plain, plain, plain, false},
	Selected: {bold | reverse, plain, plain, plain, plain, false},
	Marked:   {bold | underline, plain, plain, plain, plain, false},

	Danger:  {bold | underline, 203, 125, 163, 1, false},
	Fault:   {bold, 171, 93, 98, 5, false},
	Caution: {underline, 226, 94, 131, plain, false},
	Note:    {0, 123, 17, 63, plain, false},

	Traction: {bold, plain, plain, plain, plain, true},
	Power:    {0, plain, plain, plain, plain, true},
	Control:  {0, 244, 244, 244, plain, true},
	Mains:    {0, 208, 166, 166, plain, true},

	Live:      {bold, 117, 25, 33, plain, true},
	Carrying:  {bold, 214, 130, 136, plain, true},
	Returning: {bold, plain, plain, plain, plain, true},
	Dead:      {0, 244, 244, 244, plain, true},

	Added:   {bold, 51, 25, 63, plain, true},
	Removed: {0, 174, 125, 131, plain, true},
	Changed: {underline, 222, 94, 98, plain, true},
}

// colour is the look's colour at a depth, or plain.
func (l look) colour(ground Ground, depth Depth) index {
	switch {
	case depth == Sixteen:
		return l.sixteen
	case depth != Indexed:
		return plain
	case ground == Dark:
		return l.dark
	case ground == Light:
		return l.light
	}
	return l.neutral
}
