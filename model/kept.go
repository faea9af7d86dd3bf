package model

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Kept is one page of a drawing of a sheet as it stood when the job was saved. A later
// drawing begins from it, so that the drawing that somebody knows is the one they find.
// What it says of parts and wires that are gone is passed over.
type Kept struct {
	For    string      `yaml:"for,required" doc:"what the page was made for: screen, or a paper and the number of the page"`
	Frames []KeptFrame `yaml:"frames,keyed,flow" doc:"the frames of the zones"`
	Boxes  []KeptBox   `yaml:"boxes,keyed,flow" doc:"the boxes of the parts, and the marks at ends of wires without a part"`
	Lines  []KeptLine  `yaml:"lines,keyed,flow" doc:"the lines of the wires"`
}

// KeptFrame is the frame of a zone.
type KeptFrame struct {
	Zone ZoneID   `yaml:",key"`
	At   KeptRect `yaml:"at,required" doc:"column and row of the top left corner, and how far the bottom right one is from there"`
}

// KeptBox is the box of a part or a mark.
type KeptBox struct {
	ID    string    `yaml:",key"`
	At    KeptRect  `yaml:"at,required" doc:"column and row of the top left corner, and how far the bottom right one is from there"`
	Ports KeptPorts `yaml:"ports" doc:"the places where wires end: name, then side and cells from the top or left"`
}

// KeptLine is the line of a wire.
type KeptLine struct {
	Wire  WireID    `yaml:",key"`
	Way   KeptWay   `yaml:"way,required" doc:"column and row where it begins, then runs to the right, left, up or down"`
	Label KeptLabel `yaml:"label" doc:"column and row of its label, and which of its texts"`
}

// KeptRect is a rectangle of cells: the corner, and the distance to the opposite corner.
type KeptRect struct{ X, Y, W, H int }

// KeptPorts are places on the border of a box.
type KeptPorts []KeptPort

// KeptPort is a place on the border of a box: Side is N, E, S or W, Offset counts from the
// left or the top.
type KeptPort struct {
	ID     string
	Side   byte
	Offset int
}

// KeptWay is the corners of a line, each level or upright with the one before.
type KeptWay []KeptCorner

// KeptCorner is a cell of the drawing.
type KeptCorner struct{ X, Y int }

// KeptLabel is where a label stands: the cell of its first letter and which text of the
// wire it is, from 0. A label that stands beside an upright run is so marked.
type KeptLabel struct {
	X, Y, Text int
	Upright    bool
	Stands     bool // false for a wire without a label
}

func (s Kept) clone() Kept {
	s.Frames = slices.Clone(s.Frames)
	s.Boxes = cloneEach(s.Boxes, func(b KeptBox) KeptBox { b.Ports = slices.Clone(b.Ports); return b })
	s.Lines = cloneEach(s.Lines, func(l KeptLine) KeptLine { l.Way = slices.Clone(l.Way); return l })
	return s
}

// keptCell reads a column or row, which must be on a drawing.
func keptCell(word string) (int, error) {
	n, err := strconv.Atoi(word)
	if err != nil || n < 0 || n > maxPlace || word != strconv.Itoa(n) {
		return 0, Expected(PlaceRange)
	}
	return n, nil
}

// keptCells reads so many columns or rows.
func keptCells(words []string, into ...*int) error {
	if len(words) != len(into) {
		return Expected(fmt.Sprintf("%d numbers", len(into)))
	}
	for i, word := range words {
		n, err := keptCell(word)
		if err != nil {
			return err
		}
		*into[i] = n
	}
	return nil
}

const keptNumber = `(0|[1-9]\d{0,4})`

// MarshalText writes four numbers: 12 4 21 9.
func (r KeptRect) MarshalText() ([]byte, error) {
	return fmt.Appendf(nil, "%d %d %d %d", r.X, r.Y, r.W, r.H), nil
}

// UnmarshalText reads what MarshalText writes.
func (r *KeptRect) UnmarshalText(text []byte) error {
	return keptCells(strings.Fields(string(text)), &r.X, &r.Y, &r.W, &r.H)
}

// IsZero reports whether nothing is recorded.
func (r KeptRect) IsZero() bool { return r == KeptRect{} }

// FormHint describes the written form to the job file's schema.
func (KeptRect) FormHint() (pattern, example string) {
	return `^` + keptNumber + `( ` + keptNumber + `){3}$`, "12 4 21 9"
}

// MarshalText writes name, side and offset of each: L1/w14 E3 coil+/k5 W5.
func (p KeptPorts) MarshalText() ([]byte, error) {
	var words []string
	for _, q := range p {
		words = append(words, q.ID, string(q.Side)+strconv.Itoa(q.Offset))
	}
	return []byte(strings.Join(words, " ")), nil
}

// UnmarshalText reads what MarshalText writes.
func (p *KeptPorts) UnmarshalText(text []byte) error {
	words := strings.Fields(string(text))
	if len(words)%2 != 0 {
		return Expected("pairs such as L1/w14 E3")
	}
	*p = nil
	for i := 0; i < len(words); i += 2 {
		place := words[i+1]
		if !strings.Contains("NESW", place[:1]) {
			return Expected("a side N, E, S or W before the cells: L1/w14 E3")
		}
		n, err := keptCell(place[1:])
		if err != nil {
			return err
		}
		*p = append(*p, KeptPort{words[i], place[0], n})
	}
	return nil
}

// IsZero reports whether nothing is recorded.
func (p KeptPorts) IsZero() bool { return len(p) == 0 }

// FormHint describes the written form to the job file's schema.
func (KeptPorts) FormHint() (pattern, example string) {
	return `^(\S+ [NESW]` + keptNumber + `( |$))*$`, "L1/w14 E3 coil+/k5 W5"
}
