package tui

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// openWord is what an ohmmeter shows without continuity.
const openWord = "open"

// ohms is the unit of a resistance.
const ohms = "ohm"

// signedNumber is a number without a unit.
var signedNumber = regexp.MustCompile(`^[+-]?[0-9]+([.][0-9]+)?$`)

// read is the reading that the line says: a value, or the terminal of the black probe and a
// value.
func (p *probeLayer) read(d *desk) (model.Reading, error) {
	r := model.Reading{Sheet: d.sheetName, State: p.state, Wire: p.at.wire}
	if p.was != nil {
		r = *p.was
		r.Value, r.Open = unit.Any{}, false
	}
	if p.at.kind == terminalThing {
		r.Red, r.Black = p.at.at, p.black
	}
	text := strings.TrimSpace(p.line.Text())
	if text == "" {
		return r, errors.New("type what the meter shows, such as 51.2 V")
	}
	err := p.value(&r, text)
	if err == nil || p.at.kind != terminalThing {
		return p.whole(r, err)
	}
	word, rest, _ := strings.Cut(text, " ")
	at, none := d.terminalNamed(word, p.at.at)
	switch {
	case none != nil && startsNumber(word):
		return r, err
	case none != nil:
		return r, none
	}
	if r.Black = at; strings.TrimSpace(rest) == "" {
		return r, fmt.Errorf("black on %s: and what does the meter show?", lugline.Name(at))
	}
	return p.whole(r, p.value(&r, rest))
}

// whole is the reading, or what it still lacks.
func (p *probeLayer) whole(r model.Reading, err error) (model.Reading, error) {
	if err == nil && p.at.kind == terminalThing && r.Black.IsZero() {
		err = errors.New("say where the black probe is, before the value: b1- 51.2 V")
	}
	return r, err
}

// value puts a value into a reading.
func (p *probeLayer) value(r *model.Reading, text string) error {
	text = strings.TrimSpace(text)
	if strings.EqualFold(text, openWord) {
		r.Open = true
		return nil
	}
	if signedNumber.MatchString(text) {
		text += " " + p.unit
	}
	value, err := unit.ParseAny(strings.TrimPrefix(text, "+"))
	r.Value = value
	return err
}

func startsNumber(word string) bool {
	return word != "" && strings.ContainsRune("0123456789+-.", rune(word[0]))
}

// terminalNamed is the terminal that a word means, as on a lug line at another terminal.
func (d *desk) terminalNamed(word string, at model.TerminalRef) (model.TerminalRef, error) {
	var ref model.TerminalRef
	if ref.UnmarshalText([]byte(word)) == nil && ofTerminal(ref).on(d.sheet(), d.cat()) {
		return ref, nil
	}
	r := lugline.Parse(">"+word, lugline.Context{Sheet: d.sheet(), Catalogue: d.cat(), At: at})
	switch {
	case len(r.Among) > 0:
		return ref, fmt.Errorf("%s fits %s; type more of it", word, lugNames(r.Among))
	case r.Far.At.IsZero():
		return ref, errors.New(d.noStud(word))
	}
	return r.Far.At, nil
}

// readWhere says in short what was probed.
func readWhere(r *model.Reading) string {
	if r.Wire != "" {
		return string(r.Wire)
	}
	return lugline.Name(r.Red) + " against " + lugline.Name(r.Black)
}

// minding is what has to be minded before a reading is taken: common practice on carts.
func (d *desk) minding(name string, withOhms bool) string {
	if withOhms {
		return "power off, charger unplugged, capacitors below 5 V before ohms are read"
	}
	if s, ok := state.Find(d.states(), name); ok {
		if pedal, set := s.Position(model.Pedal); set && pedal == "down" {
			return "pedal down: drive wheels off the ground and chocked, nobody on the cart"
		}
	}
	return ""
}
