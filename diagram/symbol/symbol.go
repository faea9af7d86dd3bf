package symbol

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Symbol is the drawing of one kind of part.
type Symbol struct {
	Name    string // as in drawings: fuse
	Title   string // in words
	Strokes []Stroke
	core    [2]string
	turned  bool
}

// Op is what a stroke draws.
type Op byte

// The strokes.
const (
	Line    Op = 'L' // open line through Points
	Dashed  Op = 'H' // dashed line through Points
	Outline Op = 'G' // closed line through Points
	Filled  Op = 'F' // filled area within Points
	Box     Op = 'R' // open box from Points[0] to Points[1]
	Bar     Op = 'B' // filled box from Points[0] to Points[1]
	Circle  Op = 'C' // open circle around Points[0]
	Disc    Op = 'D' // filled circle around Points[0]
	Arcs    Op = 'A' // half circles through Points, each clockwise
	Letters Op = 'T' // Text centred on Points[0]
)

// Point is a place in units, y downwards.
type Point struct{ X, Y int }

// Stroke is one piece of a symbol.
type Stroke struct {
	Op     Op
	Points []Point
	Radius int
	Text   string
}

// Lookup finds a symbol by name; false if there is none of that name.
func Lookup(name string) (Symbol, bool) {
	for _, row := range table {
		if row.name == name {
			strokes, err := parse(row.strokes)
			return Symbol{Name: row.name, Title: row.title, Strokes: strokes, core: [2]string{row.core, row.ascii}}, err == nil
		}
	}
	return Symbol{}, false
}

// Flat is the symbol that stands for this one in a room of one row, where it would be too
// small to be made out; itself if it is flat.
func (s Symbol) Flat() Symbol {
	if one, ok := Lookup(flat[s.Name]); ok {
		return one
	}
	return s
}

// Names lists the symbols in the order of the table.
func Names() []string {
	names := make([]string, len(table))
	for i, row := range table {
		names[i] = row.name
	}
	return names
}

// Row renders the symbol in one row of at most width letters, with leads to both
// hands where there is room: ──(M)──. It is empty if the symbol has no honest
// rendering so small, or none of that width.
func (s Symbol) Row(width int, ascii bool) string {
	core, lead := s.core[0], "─"
	if ascii {
		core, lead = s.core[1], "-"
	}
	n := utf8.RuneCountInString(core)
	if n == 0 || n > width {
		return ""
	}
	left := (width - n) / 2
	return strings.Repeat(lead, left) + core + strings.Repeat(lead, width-n-left)
}

// parse reads strokes in the notation of the table.
func parse(notation string) ([]Stroke, error) {
	var strokes []Stroke
	for part := range strings.SplitSeq(notation, ";") {
		part = strings.TrimSpace(part)
		if leads, ok := strings.CutPrefix(part, "="); ok {
			a, b, _ := strings.Cut(leads, ":")
			x, y, err := pair(a + "," + b)
			if err != nil {
				return nil, err
			}
			strokes = append(strokes, Stroke{Op: Line, Points: []Point{{0, H / 2}, {x, H / 2}}}, Stroke{Op: Line, Points: []Point{{y, H / 2}, {W, H / 2}}})
			continue
		}
		op, args, _ := strings.Cut(part, " ")
		s, err := stroke(op, args)
		if err != nil {
			return nil, fmt.Errorf("stroke %q: %w", part, err)
		}
		strokes = append(strokes, s)
	}
	return strokes, nil
}

func stroke(op, args string) (Stroke, error) {
	if len(op) != 1 {
		return Stroke{}, fmt.Errorf("unknown stroke %q", op)
	}
	s := Stroke{Op: Op(op[0])}
	switch s.Op {
	case Line, Dashed, Outline, Filled, Arcs:
		for _, p := range strings.Fields(args) {
			if err := s.addPoint(p); err != nil {
				return Stroke{}, err
			}
		}
		return s, nil
	case Box, Bar:
		corner, size, err := halves(args)
		if err != nil {
			return Stroke{}, err
		}
		s.Points = []Point{corner, {corner.X + size.X, corner.Y + size.Y}}
		return s, nil
	case Circle, Disc:
		at := strings.LastIndexByte(args, ',')
		if at < 0 {
			return Stroke{}, fmt.Errorf("no radius in %q", args)
		}
		radius, err := strconv.Atoi(args[at+1:])
		if err != nil {
			return Stroke{}, err
		}
		s.Radius = radius
		return s, s.addPoint(args[:at])
	case Letters:
		at, letters, _ := strings.Cut(args, " ")
		s.Text = letters
		return s, s.addPoint(at)
	default:
		return Stroke{}, fmt.Errorf("unknown stroke %q", op)
	}
}

func (s *Stroke) addPoint(text string) error {
	x, y, err := pair(text)
	s.Points = append(s.Points, Point{x, y})
	return err
}

// halves reads four numbers as two points.
func halves(text string) (a, b Point, err error) {
	fields := strings.Split(text, ",")
	if len(fields) != 4 {
		return a, b, fmt.Errorf("expected four numbers, have %q", text)
	}
	if a.X, a.Y, err = pair(fields[0] + "," + fields[1]); err != nil {
		return a, b, err
	}
	b.X, b.Y, err = pair(fields[2] + "," + fields[3])
	return a, b, err
}

func pair(text string) (x, y int, err error) {
	first, second, _ := strings.Cut(text, ",")
	if x, err = strconv.Atoi(first); err != nil {
		return 0, 0, err
	}
	y, err = strconv.Atoi(second)
	return x, y, err
}
