package circuit

import (
	"fmt"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// simulator is the program of ngspice. Without it the test is skipped, and says so.
func simulator(t *testing.T) string {
	t.Helper()
	program, err := exec.LookPath("ngspice")
	if err != nil {
		t.Skip("SKIPPED: ngspice is not installed, so only its stored results were compared (Debian: apt-get install ngspice)")
	}
	return program
}

const spiceOptions = ".options reltol=1e-10 abstol=1e-13 vntol=1e-10 gmin=1e-15 itl1=2000"

// spice runs the simulator on a netlist and gives the voltages of its nodes against 0.
func spice(t *testing.T, program string, n *netlist, start map[string]float64) map[string]float64 {
	t.Helper()
	var deck strings.Builder
	fmt.Fprintln(&deck, "* netlist of a test\n"+spiceOptions)
	for _, row := range n.rows {
		deck.WriteString(n.spiceLine(row))
	}
	for name, v := range start {
		fmt.Fprintf(&deck, ".nodeset v(%s)=%g\n", name, v)
	}
	fmt.Fprintln(&deck, ".control\nset numdgt=14\nop")
	for name := range n.nodes {
		if name != "0" {
			fmt.Fprintf(&deck, "print v(%s)\n", name)
		}
	}
	fmt.Fprintln(&deck, "quit\n.endc\n.end")
	cmd := exec.CommandContext(t.Context(), program, "-b")
	cmd.Stdin = strings.NewReader(deck.String())
	out, err := cmd.CombinedOutput()
	found := map[string]float64{}
	for line := range strings.Lines(string(out)) {
		what, value, ok := strings.Cut(line, " = ")
		name, isNode := strings.CutPrefix(what, "v(")
		if ok && isNode {
			v, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
			require.NoError(t, err, line)
			found[strings.TrimSuffix(name, ")")] = v
		}
	}
	require.Len(t, found, len(n.nodes)-1, "the simulator's words: %s %v\n%s", out, err, deck.String())
	return found
}

// spiceLine writes one element for the simulator.
func (n *netlist) spiceLine(row []string) string {
	name, a, b := row[0], row[2], row[3]
	f := func(i int) float64 { return n.figure(row[i]) }
	leak := fmt.Sprintf("R%s_leak %s %s %g\n", name, a, b, LeakOhms)
	inside := func(plus, minus string, volts, ohms float64) string {
		return fmt.Sprintf("V%s_emf %s_i %s %.15g\nR%s_emf %s_i %s %.15g\n", name, name, minus, volts, name, name, plus, max(ohms, 1e-9))
	}
	switch row[1] {
	case "r":
		return fmt.Sprintf("R%s %s %s %.15g\n", name, a, b, f(4))
	case "v":
		return inside(a, b, f(4), f(5))
	case "i":
		return fmt.Sprintf("I%s %s %s %.15g\n", name, a, b, f(4))
	case "d":
		return fmt.Sprintf("B%s %s %s I=V(%s,%s)>%.15g ? (V(%s,%s)-%.15g)/%.15g : 0\n", name, a, b, a, b, f(4), a, b, f(4), f(5))
	case "l":
		return fmt.Sprintf("B%s %s %s I=%.15g-V(%s,%s)/%g\n", name, a, b, f(4), a, b, LeakOhms) + leak
	case "p":
		return fmt.Sprintf("B%s %s %s I=%.15g/V(%s,%s)-V(%s,%s)/%g\n", name, a, b, f(4), a, b, a, b, LeakOhms) + leak
	case "k":
		return fmt.Sprintf("R%s %s %s %.15g\n", name, a, b, f(4))
	case "no", "nc":
		return n.spiceContact(row)
	}
	return inside(row[4], row[5], f(6), f(7)) + leak + fmt.Sprintf(
		"B%s %s %s I=(%.15g-V(%s,%s)*I(V%s_emf)/%.15g)/V(%s,%s)-V(%s,%s)/%g\n",
		name, a, b, f(9), row[4], row[5], name, f(8), a, b, a, b, LeakOhms)
}

// spiceContact is a switch by the voltage of the coil; one that rests closed is driven by its reverse.
func (n *netlist) spiceContact(row []string) string {
	for _, coil := range n.rows {
		if coil[0] != row[5] {
			continue
		}
		plus, minus := coil[2], coil[3]
		middle, half := (n.figure(coil[5])+n.figure(coil[6]))/2, (n.figure(coil[5])-n.figure(coil[6]))/2
		state := "OFF"
		if row[1] == "nc" {
			plus, minus, middle, state = minus, plus, -middle, "ON"
		}
		return fmt.Sprintf("S%s %s %s %s %s sw_%s %s\n.model sw_%s SW(vt=%.15g vh=%.15g ron=%.15g roff=1e12)\n",
			row[0], row[2], row[3], plus, minus, row[0], state, row[0], middle, half, n.figure(row[4]))
	}
	require.Fail(n.t, "no such coil", row)
	return ""
}
