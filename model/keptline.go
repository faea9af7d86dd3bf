package model

import (
	"fmt"
	"strings"
)

// MarshalText writes where the line begins and its runs: 12 5 R20 D4.
func (w KeptWay) MarshalText() ([]byte, error) {
	if len(w) == 0 {
		return nil, nil
	}
	text := fmt.Appendf(nil, "%d %d", w[0].X, w[0].Y)
	for i := 1; i < len(w); i++ {
		dx, dy := w[i].X-w[i-1].X, w[i].Y-w[i-1].Y
		switch {
		case dx > 0:
			text = fmt.Appendf(text, " R%d", dx)
		case dx < 0:
			text = fmt.Appendf(text, " L%d", -dx)
		case dy > 0:
			text = fmt.Appendf(text, " D%d", dy)
		case dy < 0:
			text = fmt.Appendf(text, " U%d", -dy)
		}
	}
	return text, nil
}

// UnmarshalText reads what MarshalText writes.
func (w *KeptWay) UnmarshalText(text []byte) error {
	words := strings.Fields(string(text))
	if len(words) < 2 {
		return Expected("where it begins and its runs: 12 5 R20 D4")
	}
	var at KeptCorner
	if err := keptCells(words[:2], &at.X, &at.Y); err != nil {
		return err
	}
	*w = KeptWay{at}
	for _, word := range words[2:] {
		n, err := keptCell(word[1:])
		if err != nil {
			return err
		}
		switch word[0] {
		case 'R':
			at.X += n
		case 'L':
			at.X -= n
		case 'D':
			at.Y += n
		case 'U':
			at.Y -= n
		default:
			return Expected("runs R, L, U or D: 12 5 R20 D4")
		}
		if min(at.X, at.Y) < 0 || max(at.X, at.Y) > maxPlace {
			return Expected(PlaceRange)
		}
		*w = append(*w, at)
	}
	return nil
}

// IsZero reports whether nothing is recorded.
func (w KeptWay) IsZero() bool { return len(w) == 0 }

// FormHint describes the written form to the job file's schema.
func (KeptWay) FormHint() (pattern, example string) {
	return `^` + keptNumber + ` ` + keptNumber + `( [RLUD]` + keptNumber + `)*$`, "12 5 R20 D4"
}

// MarshalText writes place and number: 16 5 0, with U before the number beside an upright
// run; nothing for a wire without a label.
func (l KeptLabel) MarshalText() ([]byte, error) {
	if !l.Stands {
		return nil, nil
	}
	upright := ""
	if l.Upright {
		upright = "U"
	}
	return fmt.Appendf(nil, "%d %d %s%d", l.X, l.Y, upright, l.Text), nil
}

// UnmarshalText reads what MarshalText writes.
func (l *KeptLabel) UnmarshalText(text []byte) error {
	words := strings.Fields(string(text))
	if len(words) == 0 {
		*l = KeptLabel{}
		return nil
	}
	read := KeptLabel{Stands: true}
	last := len(words) - 1
	words[last], read.Upright = strings.CutPrefix(words[last], "U")
	if err := keptCells(words, &read.X, &read.Y, &read.Text); err != nil {
		return err
	}
	*l = read
	return nil
}

// IsZero reports whether the wire has no label.
func (l KeptLabel) IsZero() bool { return !l.Stands }

// FormHint describes the written form to the job file's schema.
func (KeptLabel) FormHint() (pattern, example string) {
	return `^` + keptNumber + ` ` + keptNumber + ` U?` + keptNumber + `$`, "16 5 0"
}
