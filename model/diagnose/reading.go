package diagnose

import (
	"errors"
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// readingForm says how a reading is written on one line.
const readingForm = `"STATE RED BLACK VALUE" such as "drive-forward sol.coil+ pack.NEG 0.1 V", or "STATE WIRE AMPERES" such as "drive-forward w12 14 A"`

// openWord is what an ohmmeter shows without continuity.
const openWord = "open"

// ParseReading reads one line: a state, the terminals of the red and the black probe, and
// what the meter showed, which may be the word open; or a state, a wire, and the amperes of a
// clamp round it. Whether the sheet has them is for [Case.Rank] to tell.
func ParseReading(text string, sheet model.SheetName) (model.Reading, error) {
	words := strings.Fields(text)
	fail := func(why string) (model.Reading, error) {
		return model.Reading{}, fmt.Errorf("reading %q: %s; write %s", text, why, readingForm)
	}
	if len(words) < 3 {
		return fail("too short")
	}
	r := model.Reading{Sheet: sheet, State: words[0]}
	value := words[2:]
	if strings.Contains(words[1], ".") {
		if err := errors.Join(r.Red.UnmarshalText([]byte(words[1])), r.Black.UnmarshalText([]byte(words[2]))); err != nil {
			return fail("no such form of terminal")
		}
		value = words[3:]
	} else {
		r.Wire = model.WireID(words[1])
	}
	shown := strings.Join(value, " ")
	if shown == openWord {
		r.Open = true
	} else {
		var err error
		if r.Value, err = unit.ParseAny(shown); err != nil {
			return fail(err.Error())
		}
	}
	switch d := r.Dimension(); {
	case r.Wire != "" && d != unit.Current:
		return fail("a clamp round a wire reads amperes")
	case r.Wire == "" && d != unit.Voltage && d != unit.Resistance:
		return fail("two probes read volts or ohms")
	case r.Wire == "" && r.Red == r.Black:
		return fail("both probes are on one terminal")
	}
	return r, nil
}
