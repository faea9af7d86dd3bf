package input

// scanner recognises where the messages of a terminal's byte stream end: escape sequences of ECMA-48 (CSI, SS3),
// the mouse reports of xterm, the function keys of the Linux console, UTF-8 runes and bracketed paste.
// It keeps no bytes, only the state, one byte after the other.
//
// Sources: ECMA-48 section 5.4 for control sequences, "XTerm Control Sequences" for mouse reports, bracketed
// paste and colour replies, console_codes(4) for the Linux console.
type scanner struct {
	state  state
	need   int  // bytes still to come of a rune or of a sequence of fixed length
	count  int  // bytes seen of the sequence or string
	marker int  // bytes seen of the mark that starts or ends a paste
	closed bool // an operating system command has just ended with ESC, a backslash belongs to it
}

type state uint8

const (
	ground  state = iota
	escape        // after ESC
	control       // after ESC [
	single        // after ESC O
	fixed         // in a sequence that ends after a known number of bytes
	rest          // in a rune
	command       // after ESC ]: an operating system command, here always the answer to a question
	paste         // between the paste marks
)

// verdict says what a byte means for the bytes held so far.
type verdict uint8

const (
	hold    verdict = iota // it belongs to something unfinished
	whole                  // it finishes a message
	swallow                // it finishes something that is no message
	again                  // it does not belong: what is held ends here; feed the byte once more
	discard                // what is held is no message; feed the byte once more
)

const (
	esc = 0x1b
	bel = 0x07

	pasteStart = "\x1b[200~"
	pasteEnd   = "\x1b[201~"

	// maxSequence is the length at which a control sequence is taken for garbage; mouse reports have 18 bytes at most.
	maxSequence = 48
	// maxCommand is the same for the answer to a question; a colour reply has some 30 bytes.
	maxCommand = 4096
)

// open reports whether the bytes so far end within a message.
func (s *scanner) open() bool {
	return s.state != ground && s.state != paste
}

// expire tells the scanner that nothing more came. It reports whether the bytes held are to be delivered:
// a lone ESC is a key, half an answer to a question is not.
func (s *scanner) expire() (deliver bool) {
	deliver = s.state != command || s.count == 0
	if s.state == escape && s.closed {
		deliver = false
	}
	if s.state != paste {
		*s = scanner{}
	}
	return deliver
}

// feed takes the next byte.
func (s *scanner) feed(b byte) verdict {
	switch s.state {
	case escape:
		return s.afterEscape(b)
	case control:
		return s.inControl(b)
	case single:
		return s.inSingle(b)
	case fixed:
		return s.inFixed(b)
	case rest:
		return s.inRune(b)
	case command:
		return s.inCommand(b)
	case paste:
		return s.inPaste(b)
	default:
		return s.begin(b)
	}
}

// end leaves the sequence and passes the verdict on.
func (s *scanner) end(v verdict) verdict {
	*s = scanner{}
	return v
}

func (s *scanner) begin(b byte) verdict {
	closed := s.closed
	*s = scanner{}
	switch {
	case b == esc:
		s.state, s.count, s.closed = escape, 1, closed
		return hold
	case b >= 0xc2 && b <= 0xf4:
		s.state, s.need = rest, continuations(b)
		return hold
	}
	return whole
}

// continuations is the number of bytes that follow a lead byte (RFC 3629).
func continuations(lead byte) int {
	switch {
	case lead < 0xe0:
		return 1
	case lead < 0xf0:
		return 2
	}
	return 3
}

func (s *scanner) afterEscape(b byte) verdict {
	if s.closed {
		s.closed = false
		if b == '\\' {
			return s.end(swallow)
		}
	}
	switch {
	case b == '[':
		s.state, s.count, s.marker = control, 0, 2
	case b == 'O':
		s.state, s.count = single, 0
	case b == ']':
		s.state, s.count = command, 0
	case b == esc && s.count == 1: // Alt and a key that is itself a sequence
		s.count = 2
	case b == esc:
		return s.end(again)
	case b >= 0xc2 && b <= 0xf4: // Alt and a letter beyond ASCII
		s.state, s.need = rest, continuations(b)
	default:
		return s.end(whole)
	}
	return hold
}

func (s *scanner) inControl(b byte) verdict {
	s.count++
	if s.marker < len(pasteStart) && b == pasteStart[s.marker] {
		s.marker++
	} else {
		s.marker = len(pasteStart) + 1 // not this one
	}
	switch {
	case b < ' ' || b > '~':
		return s.end(again)
	case s.count == 1 && b == 'M': // mouse report of the old form: button, column, row
		s.state, s.need = fixed, 3
	case s.count == 1 && b == '[': // function key of the Linux console
		s.state, s.need = fixed, 1
	case s.count == 1 && b == 'O': // focus lost, or an arrow of an application keypad
		s.state, s.need = fixed, 1
	case b == '~' && s.marker == len(pasteStart):
		*s = scanner{state: paste}
		return whole
	case b >= '@', s.count > maxSequence:
		return s.end(whole)
	}
	return hold
}

func (s *scanner) inSingle(b byte) verdict {
	s.count++
	switch {
	case b < ' ' || b > '~':
		return s.end(again)
	case b >= '0' && b <= ';' && s.count <= maxSequence: // modifiers
		return hold
	}
	return s.end(whole)
}

func (s *scanner) inFixed(b byte) verdict {
	if b < ' ' {
		return s.end(again)
	}
	if s.need--; s.need > 0 {
		return hold
	}
	return s.end(whole)
}

func (s *scanner) inRune(b byte) verdict {
	if b < 0x80 || b > 0xbf {
		return s.end(again)
	}
	if s.need--; s.need > 0 {
		return hold
	}
	return s.end(whole)
}

// inCommand runs through the answer to a question. All answers begin with a number, so anything else is a key
// pressed together with Alt.
func (s *scanner) inCommand(b byte) verdict {
	if s.count == 0 && (b < '0' || b > '9') {
		return s.end(again)
	}
	s.count++
	switch {
	case b == bel, s.count > maxCommand:
		return s.end(swallow)
	case b == esc:
		*s = scanner{closed: true}
		return discard
	case b < ' ':
		return s.end(discard)
	}
	return hold
}

// inPaste lets everything through and looks for the closing mark only: pasted text may contain anything.
func (s *scanner) inPaste(b byte) verdict {
	switch {
	case b == pasteEnd[s.marker]:
		s.marker++
	case b == esc:
		s.marker = 1
	default:
		s.marker = 0
	}
	if s.marker == len(pasteEnd) {
		return s.end(whole)
	}
	return whole
}
