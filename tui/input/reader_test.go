//go:build unix

package input

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

const (
	// endless is a patience that no test waits out, so a busy machine cannot tear a sequence.
	endless = time.Hour
	// gap is the delay a slow link puts into a sequence.
	gap = 15 * time.Millisecond
)

// sequence is one message as a terminal sends it.
type sequence struct{ bytes, message string }

// sequences is what terminals send, with the message it has to become.
func sequences() []sequence {
	all := []sequence{
		{"\x1b[A", "key up"}, {"\x1b[B", "key down"}, {"\x1b[C", "key right"}, {"\x1b[D", "key left"},
		{"\x1bOA", "key up"}, {"\x1bOD", "key left"}, {"\x1b\x1b[A", "key alt+up"},
		{"\x1b[a", "key shift+up"}, {"\x1b[OA", "key shift+up"}, {"\x1b[Oc", "key alt+ctrl+right"},
		{"\x1b[H", "key home"}, {"\x1b[F", "key end"}, {"\x1b[1~", "key home"}, {"\x1b[4~", "key end"},
		{"\x1b[7~", "key home"}, {"\x1b[8^", "key ctrl+end"}, {"\x1b[7@", "key ctrl+shift+home"},
		{"\x1b[7$", "key shift+home"},
		{"\x1b[2~", "key insert"}, {"\x1b[3~", "key delete"}, {"\x1b[3;3~", "key alt+delete"},
		{"\x1b[5~", "key pgup"}, {"\x1b[6;5~", "key ctrl+pgdown"}, {"\x1b[5^", "key ctrl+pgup"},
		{"\x1b[Z", "key shift+tab"},
		{"\x1bOP", "key f1"}, {"\x1bOS", "key f4"}, {"\x1b[[A", "key f1"}, {"\x1b[[E", "key f5"},
		{"\x1b[11~", "key f1"}, {"\x1b[15~", "key f5"}, {"\x1b[24~", "key f12"}, {"\x1b[34~", "key f20"},
		{"\x1b[24;3~", "key alt+f12"}, {"\x1b[1;2P", "key f13"}, {"\x1b[15;2~", "key f17"},
		{"\x1bj", "key alt+j"}, {"\x1b\r", "key alt+enter"}, {"\x1bé", "key alt+é"},
		{"\x1b[<0;1;1M", "mouse left press 0,0"}, {"\x1b[<0;120;40m", "mouse left release 119,39"},
		{"\x1b[<35;1000;1000M", "mouse motion 999,999"}, {"\x1b[<65;80;24M", "mouse wheel down 79,23"},
		{"\x1b[<16;12;7M", "mouse ctrl+left press 11,6"},
		{"\x1b[M !!", "mouse left press 0,0"}, {"\x1b[M#\xf0\x80", "mouse release 207,95"},
		{"é", "key é"}, {"Ω", "key Ω"}, {"€", "key €"}, {"😀", "key 😀"},
		{"\x1b[200~k6 b2+\x1b[201~", "key [k6 b2+]"},
		{"\x1b[200~é\x1b[A\x1b]11;\x1b[2\x1b[201~", "key [é\x1b[A\x1b]11;\x1b[2]"},
		{"\x1b]11;rgb:1e1e/1e1e/1e1e\x1b\\", ""}, {"\x1b]11;rgb:ffff/ffff/ffff\a", ""}, {"\x1b]4;1;x\x1b[A", "key up"},
	}
	modifiers := []string{2: "shift+", 3: "alt+", 5: "ctrl+", 6: "ctrl+shift+", 7: "alt+ctrl+", 8: "alt+ctrl+shift+"}
	names := []string{"up", "down", "right", "left", "home", "end"}
	for number, prefix := range modifiers {
		for i, final := range "ABCDHF" {
			if prefix != "" {
				all = append(all, sequence{fmt.Sprintf("\x1b[1;%d%c", number, final), "key " + prefix + names[i]})
			}
		}
	}
	return all
}

// rehearsal is a probe that is fed one sequence in several ways, all sequences side by side to save time.
type rehearsal struct {
	sequence
	running program
	written chan struct{}
}

// rehearse starts a probe per sequence and writes to each what pieces says: per round the pieces, the gap of a slow
// link after each, and Enter.
func rehearse(t *testing.T, pieces func(bytes string) (rounds [][]string)) {
	t.Helper()
	var all []rehearsal
	for _, one := range sequences() {
		r := rehearsal{sequence: one, running: start(t, endless, nil), written: make(chan struct{})}
		all = append(all, r)
		go func() {
			defer close(r.written)
			for _, round := range pieces(r.bytes) {
				for _, piece := range append(round, "\r") {
					_, _ = r.running.keyboard.WriteString(piece)
					time.Sleep(gap)
				}
			}
		}()
	}
	for _, r := range all {
		var want []string
		if r.message != "" {
			want = []string{r.message}
		}
		for i, round := range pieces(r.bytes) {
			require.Equal(t, want, r.running.until(t, "key enter"), "round %d: %q", i, round)
		}
		<-r.written
	}
}

// Every sequence, cut at every byte with the gap of a slow link, becomes its message and nothing else.
func TestCutAtEveryByte(t *testing.T) {
	rehearse(t, func(bytes string) (rounds [][]string) {
		for cut := 1; cut < len(bytes); cut++ {
			rounds = append(rounds, []string{bytes[:cut], bytes[cut:]})
		}
		return rounds
	})
}

func TestByteByByte(t *testing.T) {
	rehearse(t, func(bytes string) [][]string {
		var round []string
		for i := range len(bytes) {
			round = append(round, bytes[i:i+1])
		}
		return [][]string{round}
	})
}

// All in one stream, at many offsets: nothing may depend on where a read ends.
func TestOneStream(t *testing.T) {
	var stream strings.Builder
	var want []string
	for offset := range 20 {
		stream.WriteString(strings.Repeat("\t", offset))
		want = append(want, slices.Repeat([]string{"key tab"}, offset)...)
		for _, one := range sequences() {
			stream.WriteString(one.bytes)
			if one.message != "" {
				want = append(want, one.message)
			}
		}
	}
	running := start(t, endless, nil)
	running.press(t, stream.String()+"\r")
	got := running.until(t, "key enter")
	for i := range min(len(want), len(got)) {
		require.Equal(t, want[i], got[i], "message %d", i)
	}
	require.Len(t, got, len(want))
}

// Bubble Tea knows a focus report only at the end of a read, so these stand alone, and the loss of focus, which
// could go on as an arrow, waits for the patience.
func TestFocus(t *testing.T) {
	running := start(t, patience, nil)
	running.press(t, "\x1b[I")
	require.Empty(t, running.until(t, "tea.FocusMsg"))
	running.press(t, "\x1b[O")
	require.Empty(t, running.until(t, "tea.BlurMsg"))
}

// A flood of mouse reports, at every offset against the read buffer that a report can have.
func TestMouseFlood(t *testing.T) {
	const motions = 960
	for offset := range 20 {
		var flood strings.Builder
		flood.WriteString(strings.Repeat("\t", offset))
		for i := range motions {
			fmt.Fprintf(&flood, "\x1b[<35;%d;%dM", 1+i%160, 1+i%48)
		}
		flood.WriteString("\r")
		running := start(t, endless, nil)
		running.press(t, flood.String())
		got := running.until(t, "key enter")
		require.Len(t, got, offset+motions, "offset %d", offset)
		for i, one := range got[offset:] {
			require.Equal(t, fmt.Sprintf("mouse motion %d,%d", i%160, i%48), one, "offset %d", offset)
		}
	}
}

func TestKeysOfOneRead(t *testing.T) {
	running := start(t, endless, nil)
	running.press(t, "jjj\r")
	require.Equal(t, []string{"key j", "key j", "key j"}, running.until(t, "key enter"))
}

// A lone Esc is a key; it comes when the patience is over. So does an Alt key that could be the start of a sequence.
func TestLoneEscape(t *testing.T) {
	running := start(t, patience, nil)
	for _, one := range []sequence{
		{"\x1b", "key esc"}, {"\x1b[", "key alt+["}, {"\x1bO", "key alt+O"}, {"\x1b]", "key alt+]"}, {"\x1b\x1b", "key alt+esc"},
	} {
		running.press(t, one.bytes)
		require.Empty(t, running.until(t, one.message))
	}
	require.GreaterOrEqual(t, patience, 30*time.Millisecond)
	require.LessOrEqual(t, patience, 50*time.Millisecond)
}

// Half an answer of the terminal that never goes on is no text.
func TestUnfinishedAnswerIsDropped(t *testing.T) {
	running := start(t, time.Millisecond, nil)
	running.press(t, "\x1b]11;rgb:1e1e")
	time.Sleep(gap)
	running.press(t, "\r")
	require.Empty(t, running.until(t, "key enter"))
}

func TestLongPasteStaysWhole(t *testing.T) {
	text := strings.Repeat("r4 sl é €\n", 600)
	running := start(t, endless, nil)
	go func() {
		for _, piece := range []string{"\x1b[20", "0~" + text[:1001], text[1001:], "\x1b[201", "~\r"} {
			_, _ = running.keyboard.WriteString(piece)
			time.Sleep(gap)
		}
	}()
	require.Equal(t, []string{"key [" + text + "]"}, running.until(t, "key enter"))
}

// What was typed before the program listened comes first, and an unfinished end of it is completed.
func TestTypedAhead(t *testing.T) {
	typed := strings.Repeat("k6 b2+", 50) + "\x1b["
	running := start(t, endless, []byte(typed))
	running.press(t, "Aq\r")
	got := running.until(t, "key enter")
	require.Len(t, got, 302)
	require.Equal(t, []string{"key k", "key 6", "key  ", "key b"}, got[:4])
	require.Equal(t, []string{"key up", "key q"}, got[300:])
}

// A buffer without room for a message gets the bytes as they come; the end of the file is passed on.
func TestPlainRead(t *testing.T) {
	in, keyboard, err := os.Pipe()
	require.NoError(t, err)
	reader := Wrap(in, nil)
	_, err = keyboard.WriteString("\x1b]1")
	require.NoError(t, err)
	small := make([]byte, 2)
	n, err := reader.Read(small)
	require.NoError(t, err)
	require.Equal(t, "\x1b]", string(small[:n]))

	require.NoError(t, keyboard.Close())
	large := make([]byte, 256)
	n, err = reader.Read(large)
	require.NoError(t, err)
	require.Equal(t, "1", string(large[:n]))
	_, err = reader.Read(large)
	require.ErrorIs(t, err, io.EOF)
}
