package model

import "strings"

// Loose says what a wire end that is on no terminal looks like.
type Loose string

// The loose ends.
const (
	Cut      Loose = "cut"      // bare open end
	Capped   Loose = "capped"   // insulated open end
	Untraced Loose = "untraced" // goes out of sight
)

// Names lists the words that a job file may use.
func (Loose) Names() []string { return []string{string(Cut), string(Capped), string(Untraced)} }

// End is one end of a wire: on a terminal, or loose and perhaps seen in a zone.
// Exactly one of At and Loose is set in a valid job.
type End struct {
	At    TerminalRef
	Loose Loose
	In    ZoneID // zone of a loose end, if known
}

// On is an end on a terminal.
func On(part PartID, terminal string) End {
	return End{At: TerminalRef{Part: part, Name: terminal}}
}

// LooseEnd is an end on no terminal.
func LooseEnd(l Loose) End { return End{Loose: l} }

// IsZero reports whether the end says nothing at all.
func (e End) IsZero() bool { return e == End{} }

// IsLoose reports whether the end is on no terminal.
func (e End) IsLoose() bool { return e.Loose != "" }

// String is the written form: sol.L1, cut, or cut in dash.
func (e End) String() string {
	if e.Loose == "" {
		return e.At.String()
	}
	if e.In == "" {
		return string(e.Loose)
	}
	return string(e.Loose) + " in " + string(e.In)
}

// MarshalText writes the end as String does.
func (e End) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText reads what String writes.
func (e *End) UnmarshalText(text []byte) error {
	word, zone, hasZone := strings.Cut(string(text), " in ")
	switch l := Loose(word); l {
	case Cut, Capped, Untraced:
		if hasZone && !ValidID(zone) {
			return Expected("a zone's id after 'in', such as cut in dash")
		}
		*e = End{Loose: l, In: ZoneID(zone)}
		return nil
	}
	var at TerminalRef
	if err := at.UnmarshalText(text); err != nil {
		return Expected("part.terminal such as sol.L1, or cut, capped, untraced (with a zone: cut in dash)")
	}
	*e = End{At: at}
	return nil
}

// FormHint describes the written form to the job file's schema.
func (End) FormHint() (pattern, example string) {
	return `^((cut|capped|untraced)( in [A-Za-z0-9_-]{1,64})?|[A-Za-z0-9_-]{1,64}\.[A-Za-z0-9_+-]{1,64})$`, "sol.L1"
}
